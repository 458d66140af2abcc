import type { FieldTable } from '../field.ts';
import type { Bank } from './bank.ts';
import { bankFields, heightM as bankM } from './bank.ts';
import type { Ditch } from './ditch.ts';
import { ditchFields, heightM as ditchM } from './ditch.ts';
import type { Hole } from './hole.ts';
import { heightM as holeM, holeFields } from './hole.ts';
import type { Hump } from './hump.ts';
import { heightM as humpM, humpFields } from './hump.ts';
import type { Ledge } from './ledge.ts';
import { heightM as ledgeM, ledgeFields } from './ledge.ts';
import type { Log } from './log.ts';
import { heightM as logM, logFields } from './log.ts';
import type { Rock } from './rock.ts';
import { heightM as rockM, rockFields } from './rock.ts';
import type { Rut } from './rut.ts';
import { heightM as rutM, rutFields } from './rut.ts';
import type { SoftPatch } from './softPatch.ts';
import { softPatchFields } from './softPatch.ts';
import type { Water } from './water.ts';
import { waterFields } from './water.ts';

/** One shape in the ground, in the obstacle frame: origin at the pin, x along the recorded direction, y left. */
export type Feature = Rut | Hole | Ledge | Ditch | Hump | Log | Rock | Bank | Water | SoftPatch;

export type FeatureKind = Feature['kind'];

export const featureFields: Readonly<Record<FeatureKind, FieldTable>> = {
  rut: rutFields,
  hole: holeFields,
  ledge: ledgeFields,
  ditch: ditchFields,
  hump: humpFields,
  log: logFields,
  rock: rockFields,
  bank: bankFields,
  water: waterFields,
  softPatch: softPatchFields,
};

/**
 * Surface height normal to the reference plane, metres. Steps, humps and banks add up; of the cuts (ruts, holes,
 * ditches) the deepest counts, and of the bumps (rocks, logs) the tallest stands in it.
 */
export function heightM(features: readonly Feature[], x: number, y: number): number {
  let base = 0;
  let cut = 0;
  let bump = 0;
  for (const feature of features) {
    switch (feature.kind) {
      case 'ledge':
        base += ledgeM(feature, x, y);
        break;
      case 'hump':
        base += humpM(feature, x, y);
        break;
      case 'bank':
        base += bankM(feature, x, y);
        break;
      case 'rut':
        cut = Math.min(cut, rutM(feature, x, y));
        break;
      case 'hole':
        cut = Math.min(cut, holeM(feature, x, y));
        break;
      case 'ditch':
        cut = Math.min(cut, ditchM(feature, x, y));
        break;
      case 'log':
        bump = Math.max(bump, logM(feature, x, y));
        break;
      case 'rock':
        bump = Math.max(bump, rockM(feature, x, y));
        break;
      case 'water':
      case 'softPatch':
        break;
    }
  }
  return base + cut + bump;
}
