import { coverOf } from '../terrain/cover.ts';
import type { Ground } from '../terrain/ground.ts';
import type { Tyre } from '../vehicle/tyre.ts';
import type { VehicleValues } from '../vehicle/specs.ts';
import { totalMassKg } from '../vehicle/vehicle.ts';
import type { Check } from './assess.ts';
import { G_MPS2 } from './gravity.ts';
import { say } from '../words/words.ts';

/** Cone index is a pressure in pounds-force a square inch, without its unit. */
const PA_PER_CONE_INDEX = 6894.757293168;
const POUNDS_PER_NEWTON = 1 / 4.4482216152605;
const INCHES_PER_M = 1 / 0.0254;

/**
 * Remoulding index, strength after working over strength before, RCI = CI × RI (EN5341 p. 3-37; CRREL SR-04-1 §5.2).
 * It takes a test of its own; these are assumed, on the low side of the printed examples 0.85 and 0.87.
 */
const REMOULDING = { dry: 0.9, moist: 0.75, wet: 0.6 } as const;

/** Share of the demand within which a reading of a penetrometer repeats; assumed. */
const TOLERANCE_SHARE = 0.15;

/**
 * Mobility index of a wheeled vehicle (FM 5-430-00-1, 1994, ch. 7, from memory), n tyres of width b and outside radius r,
 * x thousand pounds an axle, chains off, manual gearbox:
 *
 *     MI = (CPF · WF / TF + WLF − CF) · TrF,   CPF = W / (b r n),   WF = 0.033 x + 1.050 (0.553 x below 2),
 *     TF = (10 + b) / 100,   WLF = x / 2,   CF = clearance / 10,   TrF = 1.05
 */
export function mobilityIndex(values: VehicleValues): number {
  const W = totalMassKg(values) * G_MPS2 * POUNDS_PER_NEWTON;
  const b = values.tyreSectionM * INCHES_PER_M;
  const r = (values.tyreDiameterM / 2) * INCHES_PER_M;
  const x = W / 2000;
  const contactPressure = W / (b * r * 4);
  const weight = x < 2 ? 0.553 * x : 0.033 * x + 1.05;
  const clearance =
    (Math.min(values.frontDifferentialHeightM, values.rearDifferentialHeightM) * INCHES_PER_M) / 10;
  return ((contactPressure * weight) / ((10 + b) / 100) + x / 2 - clearance) * 1.05;
}

/**
 * One-pass vehicle cone index of an all-wheel-drive vehicle on fine-grained soil, with deflection δ over section height h:
 *
 *     MI ≤ 115: (11.48 + 0.2 MI − 39.2 / (MI + 3.74)) DCF,   above: 4.1 MI^0.446 DCF,   DCF = (0.15 / (δ/h))^0.25
 *
 * J. D. Priddy & W. E. Willoughby, "Clarification of vehicle cone index with reference to mean maximum pressure",
 * J. Terramechanics, 2006.
 */
export function onePassConeIndex(MI: number, deflectionShare: number): number {
  const DCF = (0.15 / deflectionShare) ** 0.25;
  return (MI <= 115 ? 11.48 + 0.2 * MI - 39.2 / (MI + 3.74) : 4.1 * MI ** 0.446) * DCF;
}

/** Fifty-pass vehicle cone index, 28.23 + 0.43 MI − 92.67 / (MI + 3.67), with the same DCF (FM 5-430-00-1, from memory). */
export function fiftyPassConeIndex(MI: number, deflectionShare: number): number {
  const DCF = (0.15 / deflectionShare) ** 0.25;
  return (28.23 + 0.43 * MI - 92.67 / (MI + 3.67)) * DCF;
}

/** Demand of the n-th pass: between one and fifty it is taken to grow with the logarithm of n; ours, no source. */
function demand(MI: number, deflectionShare: number, pass: number): number {
  const one = onePassConeIndex(MI, deflectionShare);
  const fifty = fiftyPassConeIndex(MI, deflectionShare);
  return one + (fifty - one) * (Math.log(pass) / Math.log(50));
}

/** Rating cone index of each soft patch against what this pass of this vehicle asks. */
export function softChecks(values: VehicleValues, ground: Ground, tyre: Tyre): Check[] {
  const driven = values.drive !== 'front' && values.drive !== 'rear';
  const wheelN = (totalMassKg(values) * G_MPS2) / 4;
  const deflectionShare = wheelN / tyre.stiffnessNPerM / tyre.sidewallM;
  const MI = mobilityIndex(values);
  return coverOf(ground).softPatches.map((patch) => {
    const have = driven ? patch.coneIndexPa * REMOULDING[patch.wetness] : 0;
    const need = demand(MI, deflectionShare, patch.passesBefore + 1) * PA_PER_CONE_INDEX;
    return {
      name: 'soft ground',
      quantity: 'pressure',
      have,
      need,
      margin: have - need,
      tolerance: need * TOLERANCE_SHARE,
      stationM: (patch.fromM + patch.toM) / 2,
      cause: driven ? say.causes.softGivesWay : say.causes.softTwoDriven,
    };
  });
}
