import { COVERAGE, knownRuns, valueAt } from './curve.ts';
import type { SlopeProfile } from './slope.ts';

/** Metres up and down over a whole track; both are positive. */
export interface Climb {
  readonly ascentM: number;
  readonly descentM: number;
}

/**
 * Adds up the smoothed elevation from turning point to turning point, where a turn counts once the elevation has come
 * back by `thresholdM`, by which noise may be off. Nothing is added across a gap or an unknown stretch.
 */
export function climbOf(curve: SlopeProfile, thresholdM = COVERAGE * curve.sigmaM): Climb {
  let ascentM = 0;
  let descentM = 0;
  for (const { first, last } of knownRuns(curve)) {
    const turns = turningPoints(curve.smoothedM.subarray(first, last + 1), thresholdM);
    for (let i = 1; i < turns.length; i++) {
      ascentM += Math.max(0, turns[i] - turns[i - 1]);
      descentM += Math.max(0, turns[i - 1] - turns[i]);
    }
  }
  return { ascentM, descentM };
}

/** Lows and highs in turn, each at least `threshold` from the next; none if nothing changes by as much. */
function turningPoints(values: Float64Array, threshold: number): number[] {
  const turns: number[] = [];
  let low = values[0];
  let high = values[0];
  let heading: 'up' | 'down' | 'unsure' = 'unsure';
  for (const value of values) {
    if (heading !== 'down' && high - value >= threshold) {
      turns.push(high);
      heading = 'down';
      low = value;
    } else if (heading !== 'up' && value - low >= threshold) {
      turns.push(low);
      heading = 'up';
      high = value;
    }
    low = Math.min(low, value);
    high = Math.max(high, value);
  }
  if (heading !== 'unsure') turns.push(heading === 'up' ? high : low);
  return turns;
}

/** The steepest stretch of a given length in one direction. */
export interface Steepest {
  readonly fromM: number;
  readonly toM: number;
  /** Positive climbs in the recorded direction. */
  readonly slopeRad: number;
  readonly plusMinusRad: number;
}

/** Lengths over which the steepest is told: about a vehicle with its run-up, a pitch, a hill. */
export const STEEPEST_OVER_M = [10, 20, 50] as const;

/** Null where nothing climbs, or descends, over the whole length. */
export interface SteepestPair {
  readonly climb: Steepest | null;
  readonly descent: Steepest | null;
}

/**
 * The steepest climb and the steepest descent over `lengthM`, on the smoothed elevation. Passed over is what is less steep
 * than it is uncertain, as where a receiver has only just found its height. A stretch shorter than the baseline is known
 * no better than one of its length, and can be steeper than this says.
 */
export function steepestOf(profile: SlopeProfile, lengthM: number): SteepestPair {
  const { stationM, smoothedM, plusMinusRad, baselineM } = profile;
  let climb: Steepest | null = null;
  let descent: Steepest | null = null;
  for (const run of knownRuns(profile)) {
    for (let i = run.first; i <= run.last; i++) {
      // The rise over a sliding length is piecewise linear, with corners only where one of its ends is a station.
      for (const fromM of [stationM[i], stationM[i] - lengthM]) {
        const toM = fromM + lengthM;
        if (fromM < stationM[run.first] || toM > stationM[run.last]) continue;
        const riseM = valueAt(stationM, smoothedM, toM, run) - valueAt(stationM, smoothedM, fromM, run);
        const plusMinus = plusMinusRad[i] * (baselineM / Math.max(baselineM, lengthM));
        if (Math.abs(riseM / lengthM) < plusMinus) continue;
        const stretch = { fromM, toM, slopeRad: Math.atan2(riseM, lengthM), plusMinusRad: plusMinus };
        if (stretch.slopeRad > (climb?.slopeRad ?? 0)) climb = stretch;
        if (stretch.slopeRad < (descent?.slopeRad ?? 0)) descent = stretch;
      }
    }
  }
  return { climb, descent };
}
