import { coverOf } from '../terrain/cover.ts';
import type { Ground } from '../terrain/ground.ts';
import { liftedShare } from './buoyancy.ts';
import type { Chassis } from './chassis.ts';
import { G_MPS2 } from './gravity.ts';
import { LEAST_BITE, ROLLING_HELPS } from './limits.ts';
import type { TraverseRecord } from './record.ts';
import { Shelf } from './shelf.ts';
import type { Bounds } from './traction.ts';
import { boundWheels, noBounds } from './traction.ts';
import type { Up } from './up.ts';

/**
 * What the tyres bear and hold, station by station, whatever aids drive them: one entry a station or four. Forces without
 * a unit are over the vehicle's weight m g.
 */
export interface Grip {
  readonly length: number;
  /** Load of each wheel, less what water carries. */
  readonly loadN: Float64Array;
  /** Share of the weight that the ground carries. */
  readonly carried: Float64Array;
  /** Not told where a station repeats the one before. */
  readonly bounds: Bounds;
  /** What slope and rolling resistance ask. */
  readonly ask: Float64Array;
  /** Climb of the wheels' own contacts, Σ V tan α. */
  readonly climb: Float64Array;
  /** Part of each tyre's grip that brakes use to hold the vehicle on the way down. */
  readonly braked: Float64Array;
  /** Mean of `climb` over a wheelbase. */
  readonly meanClimb: Float64Array;
  /** What braked wheels hold against sliding on, mean over a wheelbase. */
  readonly meanOn: Float64Array;
  /** The same against sliding back. */
  readonly meanBack: Float64Array;
  /** Of the two, what holds it the way it would sooner slide. */
  readonly brake: Float64Array;
  /** 1 where that is back, which the plane asks u_x of; 0 for on, which it asks −u_x of. */
  readonly slidesBack: Uint8Array;
}

/** Room for what is told, and for what is needed on the way. */
export interface GripRoom extends Grip {
  readonly on: Float64Array;
  readonly back: Float64Array;
}

/** Bytes that the grip at one station takes, with what lies between its arrays. */
const STATION_BYTES = 224;

export function noGrip(length: number, shelf = new Shelf(STATION_BYTES * length)): GripRoom {
  const room = () => shelf.numbers(length);
  return {
    length,
    loadN: shelf.numbers(4 * length),
    carried: room(),
    bounds: noBounds(length, shelf),
    ask: room(),
    climb: room(),
    braked: room(),
    meanClimb: room(),
    meanOn: room(),
    meanBack: room(),
    brake: room(),
    slidesBack: shelf.bytes(length),
    on: room(),
    back: room(),
  };
}

/**
 * On the way down brakes use what holds the vehicle against the plane's slope, each wheel's alike.
 *
 * Braked wheels hold Σ V tan(λ + α) against sliding on, Σ V tan(λ − α) against sliding back, and the lesser of the two
 * margins counts. Sliding on they slide at worst, as nobody brakes a descent without a wheel that locks now and then;
 * standing on a climb all four still grip.
 */
export function gripAlong(
  record: TraverseRecord,
  chassis: Chassis,
  ground: Ground,
  up: Up,
  into: GripRoom = noGrip(record.length),
): Grip {
  const { length, climbTan } = record;
  const { peakAdhesion: peak, slidingAdhesion: sliding, rollingResistance: f } = ground;
  const weightN = chassis.massKg * G_MPS2;
  const { loadN, carried, bounds, ask, climb, braked, on, back, brake, slidesBack } = into;
  carriedAlong(record, ground, chassis, carried);
  for (let n = 0; n < length; n++) {
    ask[n] = 0;
    climb[n] = 0;
    on[n] = 0;
    back[n] = 0;
    if (record.standing[n] !== 0) continue;
    let sumN = 0;
    for (let i = 4 * n; i < 4 * n + 4; i++) {
      loadN[i] = record.loadN[i] * carried[n];
      sumN += loadN[i];
    }
    if (n > 0 && record.repeats[n] === 1 && carried[n] === carried[n - 1]) {
      ask[n] = ask[n - 1];
      climb[n] = climb[n - 1];
      braked[n] = braked[n - 1];
      on[n] = on[n - 1];
      back[n] = back[n - 1];
      continue;
    }
    boundWheels(loadN, climbTan, peak, sliding, n, bounds);
    ask[n] = up.x * carried[n] + (f * sumN) / weightN;
    climb[n] = bounds.climbN[n] / weightN;
    for (let i = 4 * n; i < 4 * n + 4; i++) {
      on[n] += tangentOf(loadN[i], climbTan[i], sliding) / weightN;
      back[n] += tangentOf(loadN[i], -climbTan[i], peak) / weightN;
    }
    const holdN = peak * sumN;
    const rollingN = Math.min(f, ROLLING_HELPS) * sumN;
    braked[n] = holdN > 0 ? Math.min(1, Math.max(0, (-up.x * weightN - rollingN) / holdN)) : 1;
  }

  const reach =
    length > 1 ? Math.round(chassis.wheelbaseM / 2 / (record.stationM[1] - record.stationM[0])) : 0;
  meanOver(climb, record.standing, reach, into.meanClimb);
  meanOver(on, record.standing, reach, into.meanOn);
  meanOver(back, record.standing, reach, into.meanBack);
  for (let n = 0; n < length; n++) {
    const slides = into.meanBack[n] - up.x < into.meanOn[n] + up.x;
    slidesBack[n] = slides ? 1 : 0;
    brake[n] = slides ? into.meanBack[n] : into.meanOn[n];
  }
  return into;
}

/** What water leaves; apart from the loop over the stations, which would be compiled anew for each kind of it. */
function carriedAlong(
  { stationM }: TraverseRecord,
  ground: Ground,
  chassis: Chassis,
  carried: Float64Array,
): void {
  carried.fill(1);
  if (!coverOf(ground).isWet) return;
  for (let n = 0; n < carried.length; n++) carried[n] = 1 - liftedShare(ground, chassis, stationM[n]);
}

/**
 * Mean over `reach` stations to either side of each, of those where the vehicle stands: a shorter step is rolled over,
 * not slid down.
 */
function meanOver(values: Float64Array, standing: Uint8Array, reach: number, mean: Float64Array): void {
  const { length } = values;
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
}

/** What one braked wheel holds where its contact rises against the slide at tan α = t: V tan(λ + α). */
function tangentOf(V: number, t: number, mu: number): number {
  return (V * (mu + t)) / Math.max(LEAST_BITE, 1 - mu * t);
}
