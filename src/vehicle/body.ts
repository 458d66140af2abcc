import { breakoverAngleRad, tangentHeightM } from './angles.ts';
import { HOUSING_HALF_M, OVERHANG_FROM } from './assumptions.ts';
import type { VehicleValues } from './specs.ts';

/** Parts of the underside, in the order they are reported. */
export const PARTS = [
  'front corner',
  'rear corner',
  'crest of the belly',
  'belly',
  'left sill',
  'right sill',
  'front differential',
  'rear differential',
] as const;

export type Part = (typeof PARTS)[number];

/** A point of the underside on level ground at loaded ride height: x ahead of mid-wheelbase, y left, z up, metres. */
export interface UndersidePoint {
  readonly part: Part;
  readonly xM: number;
  readonly yM: number;
  readonly zM: number;
  /** The axle it moves with; null where it moves with the body. */
  readonly axle: 'front' | 'rear' | null;
}

/**
 * Lowest that the underside can be at `aheadM` of mid-wheelbase if its rampover angle holds there: breakover is the sum
 * of the angles of the two tangents to the tyres' arcs (40 CFR 86.084-2), which grows with height; found by halving.
 */
export function crestHeightM(
  radiusM: number,
  wheelbaseM: number,
  aheadM: number,
  rampoverRad: number,
): number {
  let low = 0;
  let high = wheelbaseM;
  for (let n = 0; n < 40; n++) {
    const mid = (low + high) / 2;
    const angle = breakoverAngleRad(radiusM, wheelbaseM / 2 - aheadM, wheelbaseM / 2 + aheadM, mid);
    if (angle < rampoverRad) low = mid;
    else high = mid;
  }
  return low;
}

/**
 * The underside that a handbook's figures allow at worst: the outer part of each overhang lying on
 * its approach or departure plane; between
 * the axles as low as the belly was measured, but nowhere lower than the rampover angle allows.
 */
export function underside(values: VehicleValues, frontHubM: number, rearHubM: number): UndersidePoint[] {
  const half = values.wheelbaseM / 2;
  const points: UndersidePoint[] = [];
  const row = (
    part: Part,
    xM: number,
    zM: number,
    ys: readonly number[],
    axle: UndersidePoint['axle'] = null,
  ) => {
    for (const yM of ys) points.push({ part, xM, yM, zM, axle });
  };
  const frontY = values.frontTrackWidthM / 2;
  const rearY = values.rearTrackWidthM / 2;

  const overhang = (
    part: Part,
    sign: 1 | -1,
    radiusM: number,
    lengthM: number,
    angleRad: number,
    y: number,
  ) => {
    for (const xM of [lengthM * OVERHANG_FROM, (lengthM * (1 + OVERHANG_FROM)) / 2, lengthM])
      row(part, sign * (half + xM), tangentHeightM(radiusM, xM, angleRad), [-y, -y / 2, 0, y / 2, y]);
  };
  overhang('front corner', 1, frontHubM, values.frontOverhangM, values.approachRad, frontY);
  overhang('rear corner', -1, rearHubM, values.rearOverhangM, values.departureRad, rearY);

  const radiusM = (frontHubM + rearHubM) / 2;
  const sillY = Math.min(frontY, rearY);
  for (let n = -6; n <= 6; n++) {
    const xM = (n / 6) * (half - radiusM - 0.1);
    const crestM = crestHeightM(radiusM, values.wheelbaseM, xM, values.rampoverRad);
    const part = crestM > values.bellyHeightM ? 'crest of the belly' : 'belly';
    row(part, xM, Math.max(crestM, values.bellyHeightM), [-0.4, -0.2, 0, 0.2, 0.4]);
    const sillM = Math.max(crestM, values.sillHeightM);
    row('left sill', xM, sillM, [sillY]);
    row('right sill', xM, sillM, [-sillY]);
  }

  const housing = (part: Part, xM: number, yM: number, zM: number, axle: UndersidePoint['axle']) => {
    const across = [yM - HOUSING_HALF_M, yM, yM + HOUSING_HALF_M];
    for (const along of [-HOUSING_HALF_M, 0, HOUSING_HALF_M]) row(part, xM + along, zM, across, axle);
  };
  const { frontDifferentialHeightM: frontM, rearDifferentialHeightM: rearM } = values;
  const frontAxle = values.frontAxle === 'beam' ? 'front' : null;
  const rearAxle = values.rearAxle === 'beam' ? 'rear' : null;
  housing('front differential', half, values.frontDifferentialYM, frontM, frontAxle);
  housing('rear differential', -half, values.rearDifferentialYM, rearM, rearAxle);
  return points;
}
