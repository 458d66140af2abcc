/** A ± is this many standard deviations: right 19 times in 20. */
export const COVERAGE = 2;

/** Elevation and slope by station, in parallel arrays of `length`. An entry of unknown elevation breaks the curve. */
export interface Curve {
  readonly length: number;
  /** Never falling. */
  readonly stationM: Float64Array;
  /** NaN where unknown, as are the next two. */
  readonly smoothedM: Float64Array;
  /** Positive climbs in the recorded direction. */
  readonly slopeRad: Float64Array;
  /** `COVERAGE` standard deviations. */
  readonly plusMinusRad: Float64Array;
}

/** Indices `first` to `last`, both included. */
export interface Run {
  readonly first: number;
  readonly last: number;
}

/** The unbroken parts of a curve. */
export function knownRuns({ length, smoothedM }: Curve): Run[] {
  const runs: Run[] = [];
  let first = 0;
  for (let i = 0; i <= length; i++) {
    if (i < length && !Number.isNaN(smoothedM[i])) continue;
    if (i > first) runs.push({ first, last: i - 1 });
    first = i + 1;
  }
  return runs;
}

/** The value at a station within a run, straight between the entries on either side. */
export function valueAt(
  stationM: Float64Array,
  values: Float64Array,
  atM: number,
  { first, last }: Run,
): number {
  const i = Math.max(first, lastAtOrBefore(stationM, atM, first, last));
  if (i === last || atM <= stationM[i]) return values[i];
  const t = (atM - stationM[i]) / (stationM[i + 1] - stationM[i]);
  return values[i] + t * (values[i + 1] - values[i]);
}

/** Index of the last entry, from `first` to `last`, of a never falling array that is not above `value`; else `first - 1`. */
export function lastAtOrBefore(
  rising: Float64Array | Uint32Array,
  value: number,
  first = 0,
  last = rising.length - 1,
): number {
  let lo = first;
  let hi = last + 1;
  while (lo < hi) {
    const middle = (lo + hi) >> 1;
    if (rising[middle] <= value) lo = middle + 1;
    else hi = middle;
  }
  return lo - 1;
}

/** A curve of unknown elevation at stations yet to be filled in. */
export function emptyCurve(length: number): Curve {
  return {
    length,
    stationM: new Float64Array(length),
    smoothedM: new Float64Array(length).fill(NaN),
    slopeRad: new Float64Array(length).fill(NaN),
    plusMinusRad: new Float64Array(length).fill(NaN),
  };
}

/** Nothing known at these stations. */
export function unknown(...stationsM: number[]): Curve {
  return { ...emptyCurve(stationsM.length), stationM: Float64Array.from(stationsM) };
}

/** Curves end to end. */
export function joined(curves: readonly Curve[]): Curve {
  const whole = emptyCurve(curves.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const curve of curves) {
    whole.stationM.set(curve.stationM, at);
    whole.smoothedM.set(curve.smoothedM, at);
    whole.slopeRad.set(curve.slopeRad, at);
    whole.plusMinusRad.set(curve.plusMinusRad, at);
    at += curve.length;
  }
  return whole;
}
