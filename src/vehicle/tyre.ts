import { CARCASS_SHARE, SIDEWALL_SHARE } from './assumptions.ts';
import type { VehicleValues } from './specs.ts';

/** One tyre as it stands under load; all four are alike. */
export interface Tyre {
  /** Unloaded, metres. */
  readonly radiusM: number;
  readonly sectionM: number;
  /** Load over deflection at the pressure in use, N/m. */
  readonly stiffnessNPerM: number;
  /** Height over the rim that can be squashed, metres. */
  readonly sidewallM: number;
}

/**
 * A tyre at its usual or, aired down, its lowest pressure p. Its stiffness is that of carcass and air:
 *
 *     k(p) = k₀ (c + (1 − c) p / p₀)
 */
export function tyreOf(values: VehicleValues, airedDown: boolean): Tyre {
  const pressure = airedDown ? Math.min(1, values.lowPressurePa / values.tyrePressurePa) : 1;
  const radiusM = values.tyreDiameterM / 2;
  return {
    radiusM,
    sectionM: values.tyreSectionM,
    stiffnessNPerM: values.tyreStiffnessNPerM * (CARCASS_SHARE + (1 - CARCASS_SHARE) * pressure),
    sidewallM: radiusM * SIDEWALL_SHARE,
  };
}
