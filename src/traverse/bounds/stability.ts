/** Lean at which a rigid vehicle tips sideways: atan(t / 2h), the static stability factor's angle (NHTSA, 65 FR 34998). */
export function sideTipRad(trackWidthM: number, massHeightM: number): number {
  return Math.atan(trackWidthM / (2 * massHeightM));
}

/** Slope at which a rigid vehicle overturns over the lower axle: atan(distance to that axle / h). */
export function endTipRad(toLowerAxleM: number, massHeightM: number): number {
  return Math.atan(toLowerAxleM / massHeightM);
}

/** Sideways grip over load that is left when `drive` (over load) is already used, on the friction circle. */
export function sideGrip(mu: number, drive: number): number {
  return Math.abs(drive) >= mu ? 0 : Math.sqrt(mu * mu - drive * drive);
}
