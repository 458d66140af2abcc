/**
 * Load-free closed forms for a rigid wheel of radius r against an upright step of height h. At the edge the contact is
 * turned by φ from the vertical, cos φ = 1 − h / r.
 */
export function contactAngleRad(radiusM: number, stepM: number): number {
  return stepM >= radiusM ? Math.PI / 2 : Math.acos(1 - stepM / radiusM);
}

/** Highest step that a driven wheel climbs with nothing pushing it: tan φ = μ, h = r (1 − 1/√(1 + μ²)). */
export function unaidedStepM(radiusM: number, mu: number): number {
  return radiusM * (1 - 1 / Math.sqrt(1 + mu * mu));
}

/** Level pull at the hub that lifts a towed wheel of load W over the step: F = W √(2rh − h²) / (r − h). */
export function hubPullN(loadN: number, radiusM: number, stepM: number): number {
  return stepM >= radiusM
    ? Infinity
    : (loadN * Math.sqrt(2 * radiusM * stepM - stepM * stepM)) / (radiusM - stepM);
}
