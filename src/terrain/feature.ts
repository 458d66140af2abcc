import type { FieldTable } from '../field.ts';
import type { Bank } from './bank.ts';
import * as bank from './bank.ts';
import type { Ditch } from './ditch.ts';
import * as ditch from './ditch.ts';
import type { Hole } from './hole.ts';
import * as hole from './hole.ts';
import type { Hump } from './hump.ts';
import * as hump from './hump.ts';
import type { Ledge } from './ledge.ts';
import * as ledge from './ledge.ts';
import type { Log } from './log.ts';
import * as log from './log.ts';
import type { Rock } from './rock.ts';
import * as rock from './rock.ts';
import type { Rut } from './rut.ts';
import * as rut from './rut.ts';
import type { SoftPatch } from './softPatch.ts';
import { softPatchFields } from './softPatch.ts';
import type { Water } from './water.ts';
import { waterFields } from './water.ts';

/** One shape in the ground, in the obstacle frame: origin at the pin, x along the recorded direction, y left. */
export type Feature = Rut | Hole | Ledge | Ditch | Hump | Log | Rock | Bank | Water | SoftPatch;

export type FeatureKind = Feature['kind'];

export const featureFields: Readonly<Record<FeatureKind, FieldTable>> = {
  rut: rut.rutFields,
  hole: hole.holeFields,
  ledge: ledge.ledgeFields,
  ditch: ditch.ditchFields,
  hump: hump.humpFields,
  log: log.logFields,
  rock: rock.rockFields,
  bank: bank.bankFields,
  water: waterFields,
  softPatch: softPatchFields,
};

/**
 * Shapes are laid in three layers. Steps, humps and banks (`base`) add up; of the cuts (ruts, holes, ditches) the deepest
 * counts, and of the bumps (rocks, logs) the tallest stands in it.
 */
interface Shape<F> {
  readonly layer: 'base' | 'cut' | 'bump';
  heightM(this: void, feature: F, x: number, y: number): number;
  reachM(this: void, feature: F, y: number): readonly [number, number];
}

const SHAPES: { readonly [K in FeatureKind]: Shape<Extract<Feature, { kind: K }>> | null } = {
  ledge: { layer: 'base', ...ledge },
  hump: { layer: 'base', ...hump },
  bank: { layer: 'base', ...bank },
  rut: { layer: 'cut', ...rut },
  hole: { layer: 'cut', ...hole },
  ditch: { layer: 'cut', ...ditch },
  log: { layer: 'bump', ...log },
  rock: { layer: 'bump', ...rock },
  water: null,
  softPatch: null,
};

function shapeOf(feature: Feature): Shape<Feature> | null {
  return SHAPES[feature.kind];
}

/** Surface height normal to the reference plane, metres. */
export function heightM(features: readonly Feature[], x: number, y: number): number {
  let base = 0;
  let cut = 0;
  let bump = 0;
  for (const feature of features) {
    const shape = shapeOf(feature);
    if (shape === null) continue;
    const height = shape.heightM(feature, x, y);
    if (shape.layer === 'base') base += height;
    else if (shape.layer === 'cut') cut = Math.min(cut, height);
    else bump = Math.max(bump, height);
  }
  return base + cut + bump;
}

/** Kept from call to call: the cuts and the bumps along one line. */
let cuts = new Float64Array(0);
let bumps = new Float64Array(0);

/** Fills in heights along y = `y` at places from `fromM`, `stepM` apart: what `heightM` gives, asked only where a shape reaches. */
export function heightsAlong(
  features: readonly Feature[],
  y: number,
  fromM: number,
  stepM: number,
  heights: Float64Array,
): void {
  const count = heights.length;
  heights.fill(0);
  if (cuts.length < count) {
    cuts = new Float64Array(count);
    bumps = new Float64Array(count);
  }
  let first = count;
  let last = -1;
  for (const feature of features) {
    const shape = shapeOf(feature);
    if (shape === null) continue;
    const [start, end] = shape.reachM(feature, y);
    const from = Math.max(0, Math.floor((start - fromM) / stepM));
    const to = Math.min(count - 1, Math.ceil((end - fromM) / stepM));
    if (to < from) continue;
    if (shape.layer !== 'base') {
      first = Math.min(first, from);
      last = Math.max(last, to);
    }
    for (let i = from; i <= to; i++) {
      const height = shape.heightM(feature, fromM + i * stepM, y);
      if (shape.layer === 'base') heights[i] += height;
      else if (shape.layer === 'cut') cuts[i] = Math.min(cuts[i], height);
      else bumps[i] = Math.max(bumps[i], height);
    }
  }
  for (let i = first; i <= last; i++) heights[i] += cuts[i] + bumps[i];
  cuts.fill(0, first, last + 1);
  bumps.fill(0, first, last + 1);
}
