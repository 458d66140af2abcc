import {
  BUMP_STOP,
  DROOP_STOP,
  RIDE_RATE_SHARE,
  ROLL_CENTRE,
  SPRING_BASE,
  UNSPRUNG_SHARE,
} from './assumptions.ts';
import type { VehicleValues } from './specs.ts';
import { totalMassKg } from './vehicle.ts';

export type End = 'front' | 'rear';

/** One axle: how its two wheels carry the body. Forces at a wheel against its travel c from loaded ride height, up positive. */
export interface Axle {
  readonly beam: boolean;
  readonly trackWidthM: number;
  /** One wheel's share of spring, N/m, when both wheels move together. */
  readonly springNPerM: number;
  /** Force on a wheel for each metre that it stands above the other wheel; negative where a beam's springs stand inboard. */
  readonly couplingNPerM: number;
  readonly bumpM: number;
  readonly droopM: number;
  readonly bumpStopNPerM: number;
  readonly droopStopNPerM: number;
  /** Mass of one wheel with its part of the axle, not carried by the spring. */
  readonly unsprungKg: number;
  /** One wheel's share of the standing mass on level ground, roof load included. */
  readonly wheelKg: number;
  /** Height of the wheel centre at loaded ride height on level ground. */
  readonly hubHeightM: number;
  readonly rollCentreM: number;
}

/**
 * The ride frequency f is what an owner counts when the corner is pushed down and let go, so it is that of spring k and
 * tyre k_t in series under the sprung mass m of one corner, without the roof load:
 *
 *     k_ride = m (2π f)²,    k = k_ride / (1 − k_ride / k_t)
 *
 * In roll an axle of track t has the springs at base s = (share) t and the anti-roll bar K:  K_φ = k s²/2 + K. Written as
 * forces at the wheels, S = k c ± κ (c_left − c_right), that is  k + 2 κ = 2 K_φ / t².
 */
export function axleOf(values: VehicleValues, end: End, barsOff: boolean, g: number): Axle {
  const front = end === 'front';
  const kind = front ? values.frontAxle : values.rearAxle;
  const trackWidthM = front ? values.frontTrackWidthM : values.rearTrackWidthM;
  const share = front ? values.frontShare : 1 - values.frontShare;
  const hz = front ? values.frontRideHz : values.rearRideHz;
  const bar = front ? values.frontAntiRollNmPerRad : values.rearAntiRollNmPerRad;

  const cornerKg = (values.massKg * share) / 2;
  const unsprungKg = cornerKg * UNSPRUNG_SHARE[kind];
  const rideRate = (cornerKg - unsprungKg) * (2 * Math.PI * hz) ** 2;
  const springNPerM = rideRate / (1 - Math.min(RIDE_RATE_SHARE, rideRate / values.tyreStiffnessNPerM));
  const springBaseM = SPRING_BASE[kind] * trackWidthM;
  const rollNmPerRad =
    (springNPerM * springBaseM ** 2) / 2 + (barsOff && values.antiRollDisconnects ? 0 : bar);
  const wheelKg = (totalMassKg(values) * share) / 2;
  const hubHeightM = values.tyreDiameterM / 2 - (wheelKg * g) / values.tyreStiffnessNPerM;
  return {
    beam: kind === 'beam',
    trackWidthM,
    springNPerM,
    couplingNPerM: rollNmPerRad / trackWidthM ** 2 - springNPerM / 2,
    bumpM: front ? values.frontBumpM : values.rearBumpM,
    droopM: front ? values.frontDroopM : values.rearDroopM,
    bumpStopNPerM: springNPerM * BUMP_STOP,
    droopStopNPerM: springNPerM * DROOP_STOP,
    unsprungKg,
    wheelKg,
    hubHeightM,
    rollCentreM: ROLL_CENTRE[kind] * hubHeightM,
  };
}
