/**
 * Angle between level ground and the line from a point that touches the tyre's circle, as approach and departure
 * angles are defined (40 CFR 86.084-2; 49 CFR 523.2; Directive 2007/46/EC Annex II 4.5.1). With the circle of radius r
 * resting on the ground and the point at distance x from the axle and height h, D² = x² + (r − h)²:
 *
 *     angle = asin(r / D) − atan((r − h) / x)
 *
 * A point inside the circle has no tangent and gives π/2. `xM` > 0; `hM` may be negative.
 */
export function tangentAngleRad(radiusM: number, xM: number, hM: number): number {
  const D = Math.hypot(xM, radiusM - hM);
  if (D <= radiusM) return Math.PI / 2;
  return Math.asin(radiusM / D) - Math.atan((radiusM - hM) / xM);
}

/**
 * Breakover (ramp) angle of a point under the belly: the supplement of the angle between the two lines through it that
 * touch the front and the rear tyre (40 CFR 86.084-2). `frontM` and `rearM` are its distances to the axles.
 */
export function breakoverAngleRad(radiusM: number, frontM: number, rearM: number, hM: number): number {
  return tangentAngleRad(radiusM, frontM, hM) + tangentAngleRad(radiusM, rearM, hM);
}

/** Clearance that a crest of the given breakover angle takes up midway between axles on point contacts, metres. */
export function pointCrestHeightM(wheelbaseM: number, crestRad: number): number {
  return (wheelbaseM / 2) * Math.tan(crestRad / 2);
}

/**
 * Height at distance x from an axle of the line that touches the tyre's arc of radius r and rises at angle A, the reverse
 * of `tangentAngleRad`:  h(x) = x tan A − r (1 / cos A − 1).
 */
export function tangentHeightM(radiusM: number, xM: number, angleRad: number): number {
  return xM * Math.tan(angleRad) - radiusM * (1 / Math.cos(angleRad) - 1);
}
