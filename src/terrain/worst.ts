import type { Quantity } from '../units.ts';
import type { Feature, FeatureKind } from './feature.ts';
import { featureFields } from './feature.ts';
import type { Hows } from './measure.ts';
import { plusMinus } from './measure.ts';
import type { Corridor } from './obstacle.ts';
import { corridorFields } from './obstacle.ts';

/**
 * Which way each size makes an obstacle harder: `more` away from zero, `less` towards it. Sizes that are not named may
 * work either way (where a hole lies, how long a hump is) and stay as entered.
 */
const HARDER: Readonly<Record<FeatureKind, Readonly<Record<string, 'more' | 'less'>>>> = {
  rut: { depthM: 'more' },
  hole: { depthM: 'more' },
  ledge: { riseM: 'more', faceRad: 'more' },
  ditch: { depthM: 'more' },
  hump: { heightM: 'more' },
  log: { diameterM: 'more' },
  rock: { heightM: 'more' },
  bank: { distanceM: 'less' },
  water: { depthM: 'more', flowMps: 'more' },
  softPatch: { coneIndexPa: 'less' },
};

function quantityOf(kind: FeatureKind, size: string): Quantity {
  const field = featureFields[kind][size];
  return field.kind === 'number' ? field.quantity : 'number';
}

/** A feature with every size at the hard end of its range; `at` is its path in the stretch. */
export function worstFeature(feature: Feature, hows: Hows, at: string): Feature {
  const harder: Record<string, number> = {};
  const sizes = feature as unknown as Record<string, number>;
  for (const [size, way] of Object.entries(HARDER[feature.kind])) {
    const field = featureFields[feature.kind][size];
    const value = sizes[size];
    const span = plusMinus(value, quantityOf(feature.kind, size), hows[`${at}.${size}`]);
    const moved = awayFromZero(value, way === 'more' ? span : -span);
    harder[size] = field.kind === 'number' ? Math.min(field.max, Math.max(field.min, moved)) : moved;
  }
  return { ...feature, ...harder };
}

/** Less room on either side and overhead. */
export function worstCorridor(corridor: Corridor, hows: Hows): Corridor {
  const less = (name: 'leftM' | 'rightM' | 'headroomM') =>
    Math.max(
      0,
      corridor[name] - plusMinus(corridor[name], corridorFields[name].quantity, hows[`corridor.${name}`]),
    );
  return { ...corridor, leftM: less('leftM'), rightM: less('rightM'), headroomM: less('headroomM') };
}

/** Grows (or with a negative span shrinks, never past zero) the size of a value, keeping its sign. */
export function awayFromZero(value: number, span: number): number {
  return value < 0 ? Math.min(0, value - span) : Math.max(0, value + span);
}
