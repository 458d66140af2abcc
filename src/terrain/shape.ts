/** Places along a line of travel at `y`, metres: x = `fromM` + i × `stepM` for each i from `first` to `last`. */
export interface Places {
  y: number;
  fromM: number;
  stepM: number;
  first: number;
  last: number;
  /** By i: what a shape alone makes of the ground there, metres. */
  heightsM: Float64Array;
}

/** The few profiles that the features of the ground are made of. Each is 0 outside, 1 at full size. */

/** 1 between `fromM` and `toM`, falling linearly to 0 over `runM` inside either end. */
export function along(x: number, fromM: number, toM: number, runM: number): number {
  if (x <= fromM || x >= toM) return 0;
  if (runM <= 0) return 1;
  return Math.min(1, (x - fromM) / runM, (toM - x) / runM);
}

/** Across a trench: 1 over the middle `floor` share of the width, straight walls to 0 at the shoulders. */
export function trench(acrossM: number, widthM: number, floor: number): number {
  const half = widthM / 2;
  const out = half - Math.abs(acrossM);
  if (out <= 0) return 0;
  return Math.min(1, out / (half * (1 - floor)));
}

/** A bowl or cap over an ellipse: 1 in the middle, 0 at the rim, upright semi-ellipse in section. */
export function cap(dx: number, dy: number, lengthM: number, widthM: number): number {
  const rho2 = ((2 * dx) / lengthM) ** 2 + ((2 * dy) / widthM) ** 2;
  return rho2 >= 1 ? 0 : Math.sqrt(1 - rho2);
}

/** A bowl over an ellipse, paraboloid in section: steepest at the rim, where its slope is 4 depth / length. */
export function bowl(dx: number, dy: number, lengthM: number, widthM: number): number {
  const rho2 = ((2 * dx) / lengthM) ** 2 + ((2 * dy) / widthM) ** 2;
  return rho2 >= 1 ? 0 : 1 - rho2;
}

/**
 * Distance ahead of a line through (`xM`, 0) that is turned from square to travel, left end further ahead, by an angle of
 * this cosine and sine.
 */
export function aheadM(x: number, y: number, xM: number, cos: number, sin: number): number {
  return (x - xM) * cos - y * sin;
}

/** Reach along a line at `y` of what spans `acrossM` square to a line through (`xM`, 0) turned by `skewRad`. */
export function spanM(y: number, xM: number, skewRad: number, acrossM: number): readonly [number, number] {
  const middle = xM + y * Math.tan(skewRad);
  const half = acrossM / 2 / Math.cos(skewRad);
  return [middle - half, middle + half];
}

/** The reach of what a line at some y does not meet. */
export const NOWHERE = [Infinity, -Infinity] as const;

/** Reach along a line at `y` of an ellipse about (`xM`, `yM`). */
export function ellipseReachM(
  y: number,
  xM: number,
  yM: number,
  lengthM: number,
  widthM: number,
): readonly [number, number] {
  const aside = (2 * (y - yM)) / widthM;
  if (Math.abs(aside) >= 1) return NOWHERE;
  const half = (lengthM / 2) * Math.sqrt(1 - aside * aside);
  return [xM - half, xM + half];
}
