import type { Ground } from '../terrain/ground.ts';
import type { Driveline } from '../vehicle/driveline.ts';
import type { Chassis } from './chassis.ts';
import { G_MPS2 } from './gravity.ts';
import { AFLOAT, LEAST_BITE } from './limits.ts';
import { liftedShare } from './buoyancy.ts';
import { sideHoldN } from './hold.ts';
import type { TraverseRecord } from './record.ts';
import { greatestDrive, noDrive } from './traction.ts';
import type { Up } from './up.ts';

/** What the tyres are asked for and can give, station by station, all over the vehicle's weight m g. */
export interface Effort {
  readonly length: number;
  /** Greatest push along the plane, climb of the wheels' contacts taken off. */
  readonly push: Float64Array;
  /** What slope and rolling resistance ask. */
  readonly ask: Float64Array;
  /** What limits the push: 0 grip, 1 engine and gearing, 2 water that carries the vehicle. */
  readonly limitedBy: Uint8Array;
  /** Sideways force that front and rear axle can still bear beyond what they must; toward the worse side. */
  readonly hold: Float64Array;
  /** Where the hold is worst: 0 front slides left, 1 front right, 2 rear left, 3 rear right. */
  readonly holdCase: Uint8Array;
  /** What the camber asks of that axle sideways. */
  readonly holdAsk: Float64Array;
  /** Braking force that loaded wheels can hold against the slope, mean over a wheelbase. */
  readonly brake: Float64Array;
}

/**
 * Σ X_max − m g sin(slope) − Σ f V, sideways hold and braking at every station. What of the greatest drive is used, q, is
 * what keeps the vehicle moving slowly; where even all of it is too little all is used, and nothing is left sideways.
 * On the way down braked wheels slide at worst, and contacts that climb help; on a climb all four hold it from rolling back.
 */
export function effortAlong(
  record: TraverseRecord,
  chassis: Chassis,
  line: Driveline,
  ground: Ground,
  up: Up,
): Effort {
  const { length } = record;
  const { peakAdhesion: peak, slidingAdhesion: sliding, rollingResistance: f } = ground;
  const weightN = chassis.massKg * G_MPS2;
  const frontShare = 0.5 + chassis.massXM / chassis.wheelbaseM;
  const effort = {
    length,
    push: new Float64Array(length),
    ask: new Float64Array(length),
    limitedBy: new Uint8Array(length),
    hold: new Float64Array(length).fill(Infinity),
    holdCase: new Uint8Array(length),
    holdAsk: new Float64Array(length),
    brake: new Float64Array(length),
  };
  const drive = noDrive();
  const mu = new Float64Array(4);
  const V = new Float64Array(4);
  for (let n = 0; n < length; n++) {
    if (record.standing[n] !== 0) continue;
    const carried = 1 - liftedShare(ground, chassis, record.stationM[n]);
    for (let i = 0; i < 4; i++) V[i] = record.loadN[4 * n + i] * carried;
    const climb = record.climbTan.subarray(4 * n, 4 * n + 4);
    const fallLeft = record.fallLeftTan.subarray(4 * n, 4 * n + 4);
    const fallRight = record.fallRightTan.subarray(4 * n, 4 * n + 4);
    greatestDrive(line, V, climb, peak, sliding, drive);
    const ask = up.x * carried + (f * (V[0] + V[1] + V[2] + V[3])) / weightN;
    effort.push[n] = drive.alongN / weightN;
    effort.ask[n] = ask;
    effort.limitedBy[n] = drive.engineLimits ? 1 : 0;
    if (carried < AFLOAT) {
      effort.push[n] = -1;
      effort.limitedBy[n] = 2;
    }

    let climbN = 0;
    let brakeN = 0;
    for (let i = 0; i < 4; i++) {
      climbN += V[i] * climb[i];
      brakeN += up.x < 0 ? descending(V[i], climb[i], sliding) : V[i] * peak;
    }
    effort.brake[n] = brakeN / weightN;

    const most = drive.alongN + climbN;
    const used = most > 0 ? Math.min(1, Math.max(0, (ask * weightN + climbN) / most)) : 1;
    for (let i = 0; i < 4; i++) {
      const q = drive.boundN[i] > 0 ? Math.min(1, (used * drive.driveN[i]) / drive.boundN[i]) : 0;
      mu[i] = peak * Math.sqrt(1 - q * q);
    }
    for (let which = 0; which < 4; which++) {
      const left = which < 2 ? 0 : 2;
      const toRight = which % 2;
      const sign = toRight === 1 ? 1 : -1;
      const share = left === 0 ? frontShare : 1 - frontShare;
      const needN = sign * up.y * weightN * share * carried;
      const hold =
        (sideHoldN(V, toRight ? fallRight : fallLeft, left, mu[left], mu[left + 1]) - needN) /
        (weightN * share);
      if (hold >= effort.hold[n]) continue;
      effort.hold[n] = hold;
      effort.holdCase[n] = which;
      effort.holdAsk[n] = sign * up.y;
    }
  }
  effort.brake.set(meanOver(effort.brake, record, chassis.wheelbaseM));
  return effort;
}

/** Mean over a wheelbase about each station, of those where the vehicle stands: a shorter step is rolled over, not slid down. */
function meanOver(values: Float64Array, record: TraverseRecord, lengthM: number): Float64Array {
  const { length, standing, stationM } = record;
  const reach = length > 1 ? Math.round(lengthM / 2 / (stationM[1] - stationM[0])) : 0;
  const sum = new Float64Array(length + 1);
  const count = new Float64Array(length + 1);
  for (let n = 0; n < length; n++) {
    const stands = standing[n] === 0 ? 1 : 0;
    sum[n + 1] = sum[n] + stands * values[n];
    count[n + 1] = count[n] + stands;
  }
  return values.map((value, n) => {
    const from = Math.max(0, n - reach);
    const to = Math.min(length, n + reach + 1);
    return count[to] > count[from] ? (sum[to] - sum[from]) / (count[to] - count[from]) : value;
  });
}

/** What one braked wheel, sliding, holds on the way down where its contact climbs at tan α = t: V tan(λ + α). */
function descending(V: number, t: number, mu: number): number {
  return (V * (mu + t)) / Math.max(LEAST_BITE, 1 - mu * t);
}
