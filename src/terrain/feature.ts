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
import type { Places } from './shape.ts';
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
  /** Its height at each of some places along a line; asked only where it reaches. A loop a shape, as it is much faster. */
  lay(this: void, feature: F, places: Places): void;
  /** Where along a line at `y` it changes the ground, metres. */
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

/** The size by which a shape may stand out of the plane; the others lie in it. */
const STANDS_OUT: Readonly<Partial<Record<FeatureKind, string>>> = {
  ledge: 'riseM',
  hump: 'heightM',
  bank: 'heightM',
  log: 'diameterM',
  rock: 'heightM',
};

/** A height above the reference plane that no place of the ground is above, metres. */
export function topM(features: readonly Feature[]): number {
  let top = 0;
  for (const feature of features) {
    const size = STANDS_OUT[feature.kind];
    if (size !== undefined) top += Math.max(0, (feature as unknown as Record<string, number>)[size]);
  }
  return top;
}

/** Kept from call to call: one shape, and of all of them the cuts and the bumps, along one line. */
const places: Places = { y: NaN, fromM: NaN, stepM: NaN, first: 0, last: -1, heightsM: new Float64Array(1) };
let cuts = new Float64Array(1);
let bumps = new Float64Array(1);

/** Fills in surface heights normal to the reference plane, metres, along y = `y` at places from `fromM`, `stepM` apart. */
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
    places.heightsM = new Float64Array(count);
    cuts = new Float64Array(count);
    bumps = new Float64Array(count);
  }
  places.y = y;
  places.fromM = fromM;
  places.stepM = stepM;
  let first = count;
  let last = -1;
  for (const feature of features) {
    const shape = shapeOf(feature);
    if (shape === null) continue;
    const [start, end] = shape.reachM(feature, y);
    const from = Math.max(0, Math.floor((start - fromM) / stepM));
    const to = Math.min(count - 1, Math.ceil((end - fromM) / stepM));
    if (to < from) continue;
    places.first = from;
    places.last = to;
    shape.lay(feature, places);
    if (shape.layer !== 'base') {
      first = Math.min(first, from);
      last = Math.max(last, to);
    }
    put(shape.layer, from, to, heights);
  }
  for (let i = first; i <= last; i++) heights[i] += cuts[i] + bumps[i];
  cuts.fill(0, first, last + 1);
  bumps.fill(0, first, last + 1);
}

/** Puts one shape to the others of its layer. */
function put(layer: Shape<Feature>['layer'], from: number, to: number, heights: Float64Array): void {
  const one = places.heightsM;
  if (layer === 'base') for (let i = from; i <= to; i++) heights[i] += one[i];
  else if (layer === 'cut') for (let i = from; i <= to; i++) cuts[i] = Math.min(cuts[i], one[i]);
  else for (let i = from; i <= to; i++) bumps[i] = Math.max(bumps[i], one[i]);
}

/** Kept from call to call: the height at one place. */
const there = new Float64Array(1);

/** Surface height normal to the reference plane, metres. */
export function heightM(features: readonly Feature[], x: number, y: number): number {
  heightsAlong(features, y, x, 1, there);
  return there[0];
}
