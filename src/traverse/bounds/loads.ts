/** A corner quantity of the four wheels. */
export interface Corners {
  readonly frontLeft: number;
  readonly frontRight: number;
  readonly rearLeft: number;
  readonly rearRight: number;
}

/** A rigid vehicle at rest on a plane, all four wheels bearing. */
export interface Stand {
  readonly weightN: number;
  readonly wheelbaseM: number;
  /** Centre of mass behind the front axle. */
  readonly behindFrontM: number;
  readonly massHeightM: number;
  /** Nose up positive. */
  readonly slopeRad: number;
}

/**
 * Axle loads normal to the plane. Moments about the rear contact, with a behind front, b = L − a, height h:
 * R_f L = W (b cos θ − h sin θ), R_r = W cos θ − R_f. Negative where the vehicle would overturn.
 */
export function axleLoadsN(stand: Stand): { readonly frontN: number; readonly rearN: number } {
  const { weightN: W, wheelbaseM: L, behindFrontM: a, massHeightM: h, slopeRad } = stand;
  const frontN = (W * ((L - a) * Math.cos(slopeRad) - h * Math.sin(slopeRad))) / L;
  return { frontN, rearN: W * Math.cos(slopeRad) - frontN };
}

/** Load moved from one wheel of an axle to the other by a lean γ: W_axle h tan γ / t, left high loads the right. */
export function leanTransferN(
  axleLoadN: number,
  massHeightM: number,
  trackWidthM: number,
  leanRad: number,
): number {
  return (axleLoadN * massHeightM * Math.tan(leanRad)) / trackWidthM;
}

/**
 * Load moved between the wheels of each axle when the front axle's ground is turned by `twistRad` against the rear's.
 * The two axles' roll stiffnesses act in series through the body: M = φ K_f K_r / (K_f + K_r), ΔN = M / t.
 */
export function twistMomentNm(twistRad: number, frontNmPerRad: number, rearNmPerRad: number): number {
  const sum = frontNmPerRad + rearNmPerRad;
  return sum === 0 ? 0 : (twistRad * frontNmPerRad * rearNmPerRad) / sum;
}

/** An axle load split on its two wheels with `movedN` taken from the left; a wheel never pulls: it lifts at zero. */
export function splitN(axleLoadN: number, movedN: number): readonly [left: number, right: number] {
  const left = Math.min(axleLoadN, Math.max(0, axleLoadN / 2 - movedN));
  return [left, axleLoadN - left];
}
