import type { Ground } from '../terrain/ground.ts';
import type { Driveline } from '../vehicle/driveline.ts';
import type { Chassis } from './chassis.ts';
import { G_MPS2 } from './gravity.ts';
import { AFLOAT, LEAST_BITE, ROLLING_HELPS } from './limits.ts';
import { liftedShare } from './buoyancy.ts';
import type { Descent } from './descent.ts';
import { descentAlong } from './descent.ts';
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
  /** Braking force that loaded wheels can hold along the plane, mean over a wheelbase, the way it would sooner slide. */
  readonly brake: Float64Array;
  /** 1 where it would sooner slide back, which the plane asks u_x of; 0 for on, which it asks −u_x of. */
  readonly slidesBack: Uint8Array;
  /** What engine and brakes do on the way down; null where the line is no descent, or nobody asks. */
  readonly descent: Descent | null;
}

/**
 * Σ X_max − m g sin(slope) − Σ f V, sideways hold and braking at every station. What of the greatest drive is used, q, is
 * what keeps the vehicle moving slowly; where even all of it is too little all is used, and nothing is left sideways. On
 * the way down brakes use what holds it against the plane's slope, each wheel's alike.
 *
 * Braked wheels hold Σ V tan(λ + α) against sliding on, Σ V tan(λ − α) against sliding back, and the lesser of the two
 * margins counts. Sliding on they slide at worst, as nobody brakes a descent without a wheel that locks now and then;
 * standing on a climb all four still grip.
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
    slidesBack: new Uint8Array(length),
  };
  const drive = noDrive();
  const mu = new Float64Array(4);
  const loadN = new Float64Array(4 * length);
  const climb = new Float64Array(length);
  const on = new Float64Array(length);
  const back = new Float64Array(length);
  const { push, ask: asked, limitedBy, hold: held, holdCase, holdAsk } = effort;
  const said = [push, asked, limitedBy, held, holdCase, holdAsk, climb, on, back];
  let carriedBefore = NaN;
  for (let n = 0; n < length; n++) {
    if (record.standing[n] !== 0) continue;
    const carried = 1 - liftedShare(ground, chassis, record.stationM[n]);
    if (n > 0 && record.repeats[n] === 1 && carried === carriedBefore) {
      for (const values of said) values[n] = values[n - 1];
      loadN.copyWithin(4 * n, 4 * n - 4, 4 * n);
      continue;
    }
    carriedBefore = carried;
    const V = loadN.subarray(4 * n, 4 * n + 4);
    for (let i = 0; i < 4; i++) V[i] = record.loadN[4 * n + i] * carried;
    const climbTan = record.climbTan.subarray(4 * n, 4 * n + 4);
    const fallLeft = record.fallLeftTan.subarray(4 * n, 4 * n + 4);
    const fallRight = record.fallRightTan.subarray(4 * n, 4 * n + 4);
    greatestDrive(line, V, climbTan, peak, sliding, drive);
    const sumN = V[0] + V[1] + V[2] + V[3];
    const ask = up.x * carried + (f * sumN) / weightN;
    effort.push[n] = drive.alongN / weightN;
    effort.ask[n] = ask;
    effort.limitedBy[n] = drive.engineLimits ? 1 : 0;
    if (carried < AFLOAT) {
      effort.push[n] = -1;
      effort.limitedBy[n] = 2;
    }

    for (let i = 0; i < 4; i++) {
      climb[n] += (V[i] * climbTan[i]) / weightN;
      on[n] += tangentOf(V[i], climbTan[i], sliding) / weightN;
      back[n] += tangentOf(V[i], -climbTan[i], peak) / weightN;
    }

    const most = drive.alongN / weightN + climb[n];
    const driven = most > 0 ? Math.min(1, Math.max(0, (ask + climb[n]) / most)) : 1;
    const holdN = peak * sumN;
    const rollingN = Math.min(f, ROLLING_HELPS) * sumN;
    const braked = holdN > 0 ? Math.min(1, Math.max(0, (-up.x * weightN - rollingN) / holdN)) : 1;
    for (let i = 0; i < 4; i++) {
      const used = drive.boundN[i] > 0 ? (driven * drive.driveN[i]) / drive.boundN[i] : 0;
      const q = Math.min(1, Math.max(used, braked));
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

  const mean = meansOver(record, chassis.wheelbaseM);
  const [meanClimb, meanOn, meanBack] = [climb, on, back].map(mean);
  for (let n = 0; n < length; n++) {
    const slidesBack = meanBack[n] - up.x < meanOn[n] + up.x;
    effort.slidesBack[n] = slidesBack ? 1 : 0;
    effort.brake[n] = slidesBack ? meanBack[n] : meanOn[n];
  }
  if (line.overrun === undefined) return { ...effort, descent: null };
  const descent = descentAlong(record, line.overrun, loadN, weightN, ground, up, meanClimb, meanOn);
  return { ...effort, descent };
}

/** Mean over a length about each station, of those where the vehicle stands: a shorter step is rolled over, not slid down. */
function meansOver(record: TraverseRecord, lengthM: number): (values: Float64Array) => Float64Array {
  const { length, standing, stationM } = record;
  const reach = length > 1 ? Math.round(lengthM / 2 / (stationM[1] - stationM[0])) : 0;
  const count = new Float64Array(length + 1);
  for (let n = 0; n < length; n++) count[n + 1] = count[n] + (standing[n] === 0 ? 1 : 0);
  return (values) => {
    const sum = new Float64Array(length + 1);
    for (let n = 0; n < length; n++) sum[n + 1] = sum[n] + (standing[n] === 0 ? values[n] : 0);
    return values.map((value, n) => {
      const from = Math.max(0, n - reach);
      const to = Math.min(length, n + reach + 1);
      return count[to] > count[from] ? (sum[to] - sum[from]) / (count[to] - count[from]) : value;
    });
  };
}

/** What one braked wheel holds where its contact rises against the slide at tan α = t: V tan(λ + α). */
function tangentOf(V: number, t: number, mu: number): number {
  return (V * (mu + t)) / Math.max(LEAST_BITE, 1 - mu * t);
}
