import type { Aids } from './aids.ts';
import {
  BRAKE_TRACTION_SHARE,
  CENTRE_BIAS,
  DRIVELINE_EFFICIENCY,
  ENGINE_TRACTION_LEAVES,
  ON_DEMAND_SHARE,
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
  const ratio = aids.lowRange ? values.crawlRatio : values.crawlRatio / values.lowRangeRatio;
  return {
    front: drive === 'rear' ? 0 : axleBias(values, 'front', aids.frontLocked),
    rear: drive === 'front' ? 0 : axleBias(values, 'rear', aids.rearLocked),
    centre: centreBias(drive, centre, aids.centreLocked),
    rearReach:
      drive === 'on-demand four' && !(aids.centreLocked && centre === 'lockable') ? ON_DEMAND_SHARE : 1,
    brakeShare: BRAKE_TRACTION_SHARE[values.brakeTraction],
    engineLeaves: standsDown(values, aids) ? 1 : ENGINE_TRACTION_LEAVES,
    forceN: (values.engineTorqueNm * ratio * DRIVELINE_EFFICIENCY) / (values.tyreDiameterM / 2),
  };
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

function standsDown(values: VehicleValues, aids: Aids): boolean {
  switch (values.engineTraction) {
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
