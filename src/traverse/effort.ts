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
  into = noEffort(record.length),
): Effort {
  const { length } = record;
  const { peakAdhesion: peak, slidingAdhesion: sliding, rollingResistance: f } = ground;
  const weightN = chassis.massKg * G_MPS2;
  const frontShare = 0.5 + chassis.massXM / chassis.wheelbaseM;
  const { push, ask, limitedBy, hold, holdCase, holdAsk } = into.effort;
  const { loadN, climb, on, back } = into;
  const said = [push, ask, limitedBy, hold, holdCase, holdAsk, climb, on, back];
  const wet = ground.features.some(({ kind }) => kind === 'water');
  const drive = noDrive();
  const mu = new Float64Array(4);
  let carried = NaN;
  for (let n = 0; n < length; n++) {
    climb[n] = 0;
    on[n] = 0;
    back[n] = 0;
    hold[n] = Infinity;
    if (record.standing[n] !== 0) continue;
    const before = carried;
    carried = wet ? 1 - liftedShare(ground, chassis, record.stationM[n]) : 1;
    if (n > 0 && record.repeats[n] === 1 && carried === before) {
      for (const values of said) values[n] = values[n - 1];
      loadN.copyWithin(4 * n, 4 * n - 4, 4 * n);
      continue;
    }
    const V = loadN.subarray(4 * n, 4 * n + 4);
    for (let i = 0; i < 4; i++) V[i] = record.loadN[4 * n + i] * carried;
    const climbTan = record.climbTan.subarray(4 * n, 4 * n + 4);
    const fallLeft = record.fallLeftTan.subarray(4 * n, 4 * n + 4);
    const fallRight = record.fallRightTan.subarray(4 * n, 4 * n + 4);
    greatestDrive(line, V, climbTan, peak, sliding, drive);
    const sumN = V[0] + V[1] + V[2] + V[3];
    push[n] = drive.alongN / weightN;
    ask[n] = up.x * carried + (f * sumN) / weightN;
    limitedBy[n] = drive.engineLimits ? 1 : 0;
    if (carried < AFLOAT) {
      push[n] = -1;
      limitedBy[n] = 2;
    }

    for (let i = 0; i < 4; i++) {
      climb[n] += (V[i] * climbTan[i]) / weightN;
      on[n] += tangentOf(V[i], climbTan[i], sliding) / weightN;
      back[n] += tangentOf(V[i], -climbTan[i], peak) / weightN;
    }

    const most = drive.alongN / weightN + climb[n];
    const driven = most > 0 ? Math.min(1, Math.max(0, (ask[n] + climb[n]) / most)) : 1;
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
      const spare =
        (sideHoldN(V, toRight ? fallRight : fallLeft, left, mu[left], mu[left + 1]) - needN) /
        (weightN * share);
      if (spare >= hold[n]) continue;
      hold[n] = spare;
      holdCase[n] = which;
      holdAsk[n] = sign * up.y;
    }
  }

  const reach =
    length > 1 ? Math.round(chassis.wheelbaseM / 2 / (record.stationM[1] - record.stationM[0])) : 0;
  const [meanClimb, meanOn, meanBack] = [climb, on, back].map((values) =>
    meanOver(values, record.standing, reach),
  );
  const { brake, slidesBack } = into.effort;
  for (let n = 0; n < length; n++) {
    const slides = meanBack[n] - up.x < meanOn[n] + up.x;
    slidesBack[n] = slides ? 1 : 0;
    brake[n] = slides ? meanBack[n] : meanOn[n];
  }
  if (line.overrun === undefined) return into.effort;
  const descent = descentAlong(record, line.overrun, loadN, weightN, ground, up, meanClimb, meanOn);
  return { ...into.effort, descent };
}

/** Room for what is reckoned, and for what is needed on the way. */
export function noEffort(length: number) {
  const room = () => new Float64Array(length);
  const effort: Effort = {
    length,
    push: room(),
    ask: room(),
    limitedBy: new Uint8Array(length),
    hold: room(),
    holdCase: new Uint8Array(length),
    holdAsk: room(),
    brake: room(),
    slidesBack: new Uint8Array(length),
    descent: null,
  };
  return { effort, loadN: new Float64Array(4 * length), climb: room(), on: room(), back: room() };
}

/**
 * Mean over `reach` stations to either side of each, of those where the vehicle stands: a shorter step is rolled over,
 * not slid down.
 */
function meanOver(values: Float64Array, standing: Uint8Array, reach: number): Float64Array {
  const { length } = values;
  const mean = new Float64Array(length);
  let sum = 0;
  let count = 0;
  for (let n = -reach; n < length; n++) {
    const enters = n + reach;
    const leaves = n - reach - 1;
    if (enters < length && standing[enters] === 0) {
      sum += values[enters];
      count++;
    }
    if (leaves >= 0 && standing[leaves] === 0) {
      sum -= values[leaves];
      count--;
    }
    if (n >= 0) mean[n] = count > 0 ? sum / count : values[n];
  }
  return mean;
}

/** What one braked wheel holds where its contact rises against the slide at tan α = t: V tan(λ + α). */
function tangentOf(V: number, t: number, mu: number): number {
  return (V * (mu + t)) / Math.max(LEAST_BITE, 1 - mu * t);
}
