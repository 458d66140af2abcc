import type { Ground } from '../terrain/ground.ts';
import type { Driveline } from '../vehicle/driveline.ts';
import type { Chassis } from './chassis.ts';
import { G_MPS2 } from './gravity.ts';
import { AFLOAT } from './limits.ts';
import type { Descent } from './descent.ts';
import { descentAlong } from './descent.ts';
import type { Grip } from './grip.ts';
import { gripAlong } from './grip.ts';
import { sideHoldN } from './hold.ts';
import type { TraverseRecord } from './record.ts';
import { Shelf } from './shelf.ts';
import { greatestDrive, noDrive } from './traction.ts';
import type { Up } from './up.ts';

/** What the tyres are asked for and can give with a set of aids, station by station, all over the vehicle's weight m g. */
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

/** Where an effort is written that is looked at and then done with. */
export type EffortRoom = Pick<Effort, 'push' | 'limitedBy' | 'hold' | 'holdCase' | 'holdAsk'>;

/** Bytes that the effort at one station takes, with what lies between its arrays. */
const STATION_BYTES = 40;

export function noEffort(length: number, shelf = new Shelf(STATION_BYTES * length)): EffortRoom {
  return {
    push: shelf.numbers(length),
    limitedBy: shelf.bytes(length),
    hold: shelf.numbers(length),
    holdCase: shelf.bytes(length),
    holdAsk: shelf.numbers(length),
  };
}

/**
 * Σ X_max − m g sin(slope) − Σ f V, sideways hold and braking at every station. What of the greatest drive is used, q, is
 * what keeps the vehicle moving slowly; where even all of it is too little all is used, and nothing is left sideways.
 */
export function effortAlong(
  record: TraverseRecord,
  chassis: Chassis,
  line: Driveline,
  ground: Ground,
  up: Up,
  overrun: Driveline | null = null,
  grip: Grip = gripAlong(record, chassis, ground, up),
  into: EffortRoom = noEffort(record.length),
): Effort {
  const { length, fallLeftTan, fallRightTan } = record;
  const { peakAdhesion: peak } = ground;
  const weightN = chassis.massKg * G_MPS2;
  const frontShare = 0.5 + chassis.massXM / chassis.wheelbaseM;
  const { push, limitedBy, hold, holdCase, holdAsk } = into;
  const { loadN, carried, bounds, ask, climb, braked, brake, slidesBack } = grip;
  const drive = noDrive();
  const mu = new Float64Array(4);
  for (let n = 0; n < length; n++) {
    push[n] = 0;
    hold[n] = Infinity;
    if (record.standing[n] !== 0) continue;
    if (n > 0 && record.repeats[n] === 1 && carried[n] === carried[n - 1]) {
      push[n] = push[n - 1];
      limitedBy[n] = limitedBy[n - 1];
      hold[n] = hold[n - 1];
      holdCase[n] = holdCase[n - 1];
      holdAsk[n] = holdAsk[n - 1];
      continue;
    }
    greatestDrive(line, bounds, n, drive);
    push[n] = drive.alongN / weightN;
    limitedBy[n] = drive.engineLimits ? 1 : 0;
    if (carried[n] < AFLOAT) {
      push[n] = -1;
      limitedBy[n] = 2;
    }

    const most = drive.alongN / weightN + climb[n];
    const driven = most > 0 ? Math.min(1, Math.max(0, (ask[n] + climb[n]) / most)) : 1;
    for (let i = 0; i < 4; i++) {
      const boundN = bounds.grippingN[4 * n + i];
      const used = boundN > 0 ? (driven * drive.driveN[i]) / boundN : 0;
      const q = Math.min(1, Math.max(used, braked[n]));
      mu[i] = peak * Math.sqrt(1 - q * q);
    }
    for (let which = 0; which < 4; which++) {
      const left = which < 2 ? 0 : 2;
      const toRight = which % 2;
      const sign = toRight === 1 ? 1 : -1;
      const share = left === 0 ? frontShare : 1 - frontShare;
      const needN = sign * up.y * weightN * share * carried[n];
      const bearsN = sideHoldN(
        loadN,
        toRight ? fallRightTan : fallLeftTan,
        4 * n + left,
        mu[left],
        mu[left + 1],
      );
      const spare = (bearsN - needN) / (weightN * share);
      if (spare >= hold[n]) continue;
      hold[n] = spare;
      holdCase[n] = which;
      holdAsk[n] = sign * up.y;
    }
  }
  const descent = overrun === null ? null : descentAlong(record, overrun, grip, weightN, ground, up);
  return { length, push, ask, limitedBy, hold, holdCase, holdAsk, brake, slidesBack, descent };
}
