import type { Quantity } from '../units.ts';
import { checkStretch } from '../terrain/check.ts';
import { featureFields } from '../terrain/feature.ts';
import type { TrackSlope } from '../terrain/ground.ts';
import { knownSlope } from '../terrain/ground.ts';
import { plusMinus } from '../terrain/measure.ts';
import type { Stretch } from '../terrain/obstacle.ts';
import { gripOf } from '../terrain/surface.ts';
import type { ClassificationId } from './classification.ts';
import type { Measure } from './criteria.ts';
import { CRITERIA, NAMED_GROUND, SOFT_LEVEL, levelAt } from './criteria.ts';
import type { Open, Reason } from './rating.ts';

/** The level that the sizes of a stretch make, what makes it, and what of them is not known. */
export interface BySizes {
  readonly level: number;
  /** Null at the easiest level. */
  readonly reason: Reason | null;
  readonly open: readonly Open[];
}

/** Sizes at the hard end of their range against the criteria. What is not known adds nothing, and is told. */
export function levelBySizes(
  stretch: Stretch,
  trackSlope: TrackSlope | null,
  classification: ClassificationId,
): BySizes {
  let level = 1;
  let reason: Reason | null = null;
  const raise = (to: number, because: Reason) => {
    if (to <= level) return;
    level = to;
    reason = because;
  };
  const open: Open[] = openOf(stretch, trackSlope);
  for (const { measure, value } of hardSizes(stretch, trackSlope)) {
    const to = levelAt(measure, classification, value);
    const limit = CRITERIA[measure].limits[classification][to - 2];
    raise(to, { kind: 'size', measure, value, limit });
  }
  const { material, condition } = stretch.surface;
  raise(NAMED_GROUND[classification][material] ?? 1, { kind: 'ground', material, condition });
  if (stretch.features.some(({ kind }) => kind === 'softPatch')) raise(SOFT_LEVEL, { kind: 'soft ground' });
  return { level, reason, open };
}

function openOf(stretch: Stretch, trackSlope: TrackSlope | null): Open[] {
  const sizes = [stretch.lengthM, ...stretch.features.flatMap(numbersOf), ...numbersOf(stretch.corridor)];
  const open: Open[] = [];
  if (knownSlope(stretch, trackSlope) === null) open.push('slope');
  if (stretch.plane.camberRad === null) open.push('camber');
  if (sizes.some(Number.isNaN)) open.push('size');
  else if (checkStretch(stretch, '').length > 0) open.push('contradiction');
  return open;
}

function numbersOf(record: object): number[] {
  return Object.values(record).filter((value): value is number => typeof value === 'number');
}

interface Sized {
  readonly measure: Measure;
  readonly value: number;
}

/** Everything measured that a criterion is about, SI, away from zero by its ±; unknown ones are left out. */
function hardSizes(stretch: Stretch, trackSlope: TrackSlope | null): Sized[] {
  const { plane, features, hows, surface } = stretch;
  const sized: Sized[] = [{ measure: 'grip', value: gripOf(surface).peak.low }];
  const slope = knownSlope(stretch, trackSlope);
  if (slope !== null) sized.push({ measure: 'slope', value: Math.abs(slope.slopeRad) + slope.plusMinusRad });
  const hard = (path: string, value: number, quantity: Quantity) =>
    Math.abs(value) + plusMinus(value, quantity, hows[path]);
  if (plane.camberRad !== null)
    sized.push({ measure: 'camber', value: hard('plane.camberRad', plane.camberRad, 'angle') });
  features.forEach((feature, i) => {
    const size = (name: string): number => {
      const field = featureFields[feature.kind][name];
      const value = (feature as unknown as Readonly<Record<string, number>>)[name];
      return hard(`features.${i}.${name}`, value, field.kind === 'number' ? field.quantity : 'number');
    };
    switch (feature.kind) {
      case 'rut':
      case 'hole':
        sized.push({ measure: 'rut', value: size('depthM') });
        break;
      case 'ledge':
        sized.push({ measure: 'step', value: size('riseM') });
        break;
      case 'rock':
        sized.push({ measure: 'step', value: size('heightM') });
        break;
      case 'log':
        sized.push({ measure: 'step', value: size('diameterM') });
        break;
      case 'ditch':
        sized.push({ measure: 'across', value: size('depthM') });
        break;
      case 'hump':
        sized.push({ measure: 'across', value: size('heightM') });
        break;
      case 'water':
        sized.push({ measure: 'water', value: size('depthM') });
        sized.push({ measure: 'flow', value: size('depthM') * size('flowMps') });
        break;
      case 'bank':
      case 'softPatch':
        break;
    }
  });
  return sized.filter(({ value }) => !Number.isNaN(value));
}
