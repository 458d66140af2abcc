import type { Aids } from './aids.ts';
import {
  BRAKE_TRACTION_SHARE,
  CENTRE_BIAS,
  DRIVELINE_EFFICIENCY,
  ENGINE_TRACTION_LEAVES,
  IDLE_RADPS,
  ON_DEMAND_SHARE,
  OVERRUN_EFFICIENCY,
  OVERRUN_PACE_MPS,
  OVERRUN_SHARE,
} from './assumptions.ts';
import type { End } from './axle.ts';
import type { VehicleValues } from './specs.ts';

/** What joins two wheels, or two axles: the greatest ratio of the better side's torque to the worse; infinite when locked. */
export type Bias = number;

/** What drive there is with a set of aids engaged. */
export interface Driveline {
  /** Bias between the wheels of each axle; 0 where the axle is not driven. */
  readonly front: Bias;
  readonly rear: Bias;
  readonly centre: Bias;
  /** Part of its grip that a clutch lets the rear axle use; 1 but for drive on demand. */
  readonly rearReach: number;
  /** Share of what a locker would gain that brake traction control gains. */
  readonly brakeShare: number;
  /** Part of the grip that engine traction control leaves; 1 where there is none or it has stood down. */
  readonly engineLeaves: number;
  /** Greatest sum of drive forces at the tread, newtons. */
  readonly forceN: number;
}

export function drivelineOf(values: VehicleValues, aids: Aids): Driveline {
  const { drive, centre } = values;
  return {
    front: drive === 'rear' ? 0 : axleBias(values, 'front', aids.frontLocked),
    rear: drive === 'front' ? 0 : axleBias(values, 'rear', aids.rearLocked),
    centre: centreBias(drive, centre, aids.centreLocked),
    rearReach:
      drive === 'on-demand four' && !(aids.centreLocked && centre === 'lockable') ? ON_DEMAND_SHARE : 1,
    brakeShare: BRAKE_TRACTION_SHARE[values.brakeTraction],
    engineLeaves: standsDown(values.engineTraction, aids) ? 1 : ENGINE_TRACTION_LEAVES,
    forceN: (values.engineTorqueNm * firstGear(values, aids) * DRIVELINE_EFFICIENCY) / radiusM(values),
  };
}

/**
 * First gear with the throttle closed, the wheels turning the engine. At a walking pace v the engine turns at ω = v i / r,
 * i the whole ratio and r the wheel's radius; to turn it takes T = c T_max once it has left idle ω₀ behind, so that the
 * wheels are held back by
 *
 *     F = c T_max · i / (η r) · clamp((ω − ω₀) / (ω₀ / 2), 0, 1)
 *
 * The gears' losses help, hence 1 / η. A lower gear raises i and ω, so it never holds less. Differentials share F out as
 * they share drive. Counted on the low side: a limited slip as open, a clutch on demand as let go, no brake traction
 * control. Left out: a torque converter, which passes less until it locks.
 */
export function overrunOf(values: VehicleValues, aids: Aids): Driveline {
  const { drive, centre } = values;
  const ratio = firstGear(values, aids);
  const engineRadps = (OVERRUN_PACE_MPS * ratio) / radiusM(values);
  const drags = Math.min(1, Math.max(0, (engineRadps - IDLE_RADPS) / (IDLE_RADPS / 2)));
  const centreLocked = aids.centreLocked && centre === 'lockable';
  const clutchLetsGo = drive === 'on-demand four' && !centreLocked;
  const axle = (locked: boolean, kind: VehicleValues['frontDifferential']) =>
    locked && kind === 'locker' ? Infinity : 1;
  return {
    front: drive === 'rear' ? 0 : axle(aids.frontLocked, values.frontDifferential),
    rear: drive === 'front' || clutchLetsGo ? 0 : axle(aids.rearLocked, values.rearDifferential),
    centre: drive === 'full-time four' && !centreLocked ? 1 : Infinity,
    rearReach: 1,
    brakeShare: 0,
    engineLeaves: 1,
    forceN: (OVERRUN_SHARE * values.engineTorqueNm * ratio * drags) / (OVERRUN_EFFICIENCY * radiusM(values)),
  };
}

function firstGear(values: VehicleValues, aids: Aids): number {
  return aids.lowRange ? values.crawlRatio : values.crawlRatio / values.lowRangeRatio;
}

function radiusM(values: VehicleValues): number {
  return values.tyreDiameterM / 2;
}

function axleBias(values: VehicleValues, end: End, locked: boolean): Bias {
  const kind = end === 'front' ? values.frontDifferential : values.rearDifferential;
  if (kind === 'locker') return locked ? Infinity : 1;
  if (kind === 'open') return 1;
  return Math.max(1, end === 'front' ? values.frontBias : values.rearBias);
}

function centreBias(drive: VehicleValues['drive'], centre: VehicleValues['centre'], locked: boolean): Bias {
  if (drive === 'front' || drive === 'rear' || drive === 'part-time four' || drive === 'on-demand four')
    return Infinity;
  if (centre === 'lockable') return locked ? Infinity : 1;
  return centre === 'limited slip' ? CENTRE_BIAS : 1;
}

function standsDown(when: VehicleValues['engineTraction'], aids: Aids): boolean {
  switch (when) {
    case 'none':
      return true;
    case 'always on':
      return false;
    case 'off in low range':
      return aids.lowRange;
    case 'off with centre locked':
      return aids.centreLocked;
  }
}
