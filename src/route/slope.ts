import { breaksOf } from './breaks.ts';
import type { Cells } from './cells.ts';
import { cellsOf, fitAbout, runsOf } from './cells.ts';
import type { Curve, Run } from './curve.ts';
import { COVERAGE, emptyCurve, joined, unknown, valueAt } from './curve.ts';
import type { HeightsFrom } from './heights.ts';
import { heightsOf, RECORDED_SIGMA_M } from './heights.ts';
import { spansOf } from './station.ts';
import type { Track } from './track.ts';

/** Cells to a baseline: enough that the straight line through them is as good as one through all points. */
const CELLS_PER_BASELINE = 12;

/** A hole in the elevations longer than this many baselines is unknown, not bridged. */
const HOLE_BASELINES = 2;

/**
 * Rise over run beyond which neighbouring elevations, noise aside, contradict each other: one of them is wrong, and
 * what lies between is unknown. No wheeled vehicle climbs 100 %; 60 % is asked of military ones (US Army IS0902).
 */
const IMPOSSIBLE_SLOPE = 1;

/** Noise put aside for it, in standard deviations. */
const IMPOSSIBLE_SIGMAS = 4;

/** A stretch shorter than this share of a baseline tells no slope. */
const LEAST_BASELINES = 0.5;

/** A stretch of like slope. Positive climbs in the recorded direction. */
export interface SlopeSegment {
  readonly fromM: number;
  readonly toM: number;
  /** NaN where `known` is false, as are the next two. */
  readonly slopeRad: number;
  readonly plusMinusRad: number;
  readonly riseM: number;
  readonly known: boolean;
}

/**
 * Smoothed elevation and slope along a track: parallel arrays of `length`, ordered by `stationM` (the track's
 * `distanceM`), some 5 m apart where there are points. An entry whose elevation and slope are NaN breaks the curve:
 * there is one at every gap and in every stretch of unknown elevation.
 */
export interface SlopeProfile extends Curve {
  /** Whose elevations it was read off. */
  readonly from: HeightsFrom;
  readonly baselineM: number;
  /** How far elevations within a baseline are off against each other, one standard deviation; on level ground. */
  readonly sigmaM: number;
  /** From the first to the last station, without overlap; none reaches across a gap. */
  readonly segments: readonly SlopeSegment[];
}

export interface SlopeOptions {
  /** Whose elevations to use; those that were chosen for the track unless given. */
  readonly from?: HeightsFrom;
  readonly baselineM?: number;
  /** How far elevations within a baseline are off against each other, one standard deviation. */
  readonly sigmaM?: number;
  /** Elevations to use instead, one a point, NaN where unknown. */
  readonly elevationM?: Float64Array;
  /**
   * By how much the smoothed elevation may leave the straight line of a segment. `sigmaM` unless given, and no more than
   * that of recordings: a pitch must not vanish because a model is known badly.
   */
  readonly toleranceM?: number;
}

/**
 * Slope along a track. At each station, the straight line of least squares through the elevations of one baseline
 * about it gives smoothed elevation and slope, with
 *   +- = 2 sqrt(2) sqrt(sigma^2 + scatter^2) / spread.
 * Segments are the piecewise linear curve that keeps within `toleranceM` of the smoothed elevation.
 */
export function slopeOf(track: Track, options: SlopeOptions = {}): SlopeProfile {
  const heights = heightsOf(track, options.from);
  const { baselineM = heights.baselineM, sigmaM = heights.sigmaM, elevationM = heights.elevationM } = options;
  const { toleranceM = Math.min(sigmaM, RECORDED_SIGMA_M) } = options;
  const sigmaAt = options.sigmaM === undefined ? heights.sigmaAt : () => sigmaM;
  if (elevationM.length !== track.length) throw new RangeError('slopeOf: elevationM needs one entry a point');
  const curves: Curve[] = [];
  for (const { from, to } of spansOf(track)) {
    if (from > 0) curves.push(unknown(track.distanceM[from]));
    const pieces = heights.bridged ? [{ from, to, known: true }] : piecesOf(elevationM, from, to);
    for (const piece of pieces)
      curves.push(
        ...(piece.known
          ? curvesBetween(track.distanceM, elevationM, piece, baselineM, sigmaM, sigmaAt)
          : [unknown(track.distanceM[piece.from], track.distanceM[piece.to - 1])]),
      );
  }
  return {
    ...joined(curves),
    from: heights.from,
    baselineM,
    sigmaM,
    segments: curves.flatMap((c) => segmentsOf(c, baselineM, toleranceM)),
  };
}

/** Half-open range of points; that of an unknown piece takes in the known point at either end. */
interface Piece {
  readonly from: number;
  readonly to: number;
  readonly known: boolean;
}

/** The points `from` <= i < `to` parted where elevation is unknown. */
function piecesOf(elevationM: Float64Array, from: number, to: number): Piece[] {
  const pieces: Piece[] = [];
  let first = from;
  for (let i = from + 1; i <= to; i++) {
    const known = !Number.isNaN(elevationM[first]);
    if (i < to && !Number.isNaN(elevationM[i]) === known) continue;
    pieces.push(
      known
        ? { from: first, to: i, known }
        : { from: Math.max(from, first - 1), to: Math.min(i + 1, to), known },
    );
    first = i;
  }
  return pieces;
}

/** Slope and smoothed elevation at one place; all NaN where unknown. */
export interface SlopeHere {
  readonly smoothedM: number;
  readonly slopeRad: number;
  readonly plusMinusRad: number;
}

/** At a station of the track; unknown beyond its ends. At a gap, on its far side. */
export function slopeAt(profile: SlopeProfile, stationM: number): SlopeHere {
  const { length, stationM: stations } = profile;
  const inside = length > 0 && stationM >= stations[0] && stationM <= stations[length - 1];
  const whole = { first: 0, last: length - 1 };
  const at = (values: Float64Array) => (inside ? valueAt(stations, values, stationM, whole) : NaN);
  return {
    smoothedM: at(profile.smoothedM),
    slopeRad: at(profile.slopeRad),
    plusMinusRad: at(profile.plusMinusRad),
  };
}

/** Known and unknown stretches of one recorded segment, in turn, without a hole between them. */
function curvesBetween(
  distanceM: Float64Array,
  elevationM: Float64Array,
  { from, to }: Piece,
  baselineM: number,
  sigmaM: number,
  sigmaAt: (stationM: number) => number,
): Curve[] {
  const startM = distanceM[from];
  const endM = distanceM[to - 1];
  const cellM = baselineM / CELLS_PER_BASELINE;
  const cells = cellsOf(distanceM, elevationM, from, to, cellM);
  const curves: Curve[] = [];
  let doneM = startM;
  const linked = (lengthM: number, riseM: number) =>
    lengthM <= HOLE_BASELINES * baselineM &&
    Math.abs(riseM) <= IMPOSSIBLE_SLOPE * lengthM + IMPOSSIBLE_SIGMAS * sigmaM;
  for (const run of runsOf(cells, linked, LEAST_BASELINES * baselineM)) {
    const firstM = cells.stationM[run.first];
    const lastM = cells.stationM[run.last];
    const fromM = firstM - startM < cellM ? startM : firstM;
    const toM = endM - lastM < cellM ? endM : lastM;
    if (fromM > doneM) curves.push(unknown(doneM, fromM));
    curves.push(fitted(cells, run, fromM, toM, baselineM, sigmaAt));
    doneM = toM;
  }
  if (doneM < endM || curves.length === 0) curves.push(unknown(doneM, endM));
  return curves;
}

function fitted(
  cells: Cells,
  run: Run,
  fromM: number,
  toM: number,
  baselineM: number,
  sigmaAt: (stationM: number) => number,
): Curve {
  const curve = emptyCurve(run.last - run.first + 1);
  for (let i = 0; i < curve.length; i++) {
    const cell = run.first + i;
    const atM = i === 0 ? fromM : i === curve.length - 1 ? toM : cells.stationM[cell];
    const { elevationM, slope, scatterM, spreadM } = fitAbout(cells, run, cell, atM, baselineM);
    const sigmaM = sigmaAt(atM);
    const plusMinus = (COVERAGE * Math.sqrt(2 * (sigmaM * sigmaM + scatterM * scatterM))) / spreadM;
    curve.stationM[i] = atM;
    curve.smoothedM[i] = elevationM;
    curve.slopeRad[i] = Math.atan(slope);
    curve.plusMinusRad[i] = plusMinus / (1 + slope * slope);
  }
  return curve;
}

/** The +- of a segment is that of its stations, less as it is longer than a baseline. */
function segmentsOf(curve: Curve, baselineM: number, toleranceM: number): SlopeSegment[] {
  const { length, stationM, smoothedM, plusMinusRad } = curve;
  const known = !Number.isNaN(smoothedM[0]);
  const breaks = known ? breaksOf(stationM, smoothedM, toleranceM) : [0, length - 1];
  const segments: SlopeSegment[] = [];
  for (let b = 1; b < breaks.length; b++) {
    const first = breaks[b - 1];
    const last = breaks[b];
    const lengthM = stationM[last] - stationM[first];
    const riseM = smoothedM[last] - smoothedM[first];
    let squares = 0;
    for (let i = first; i <= last; i++) squares += plusMinusRad[i] ** 2;
    const plusMinus = Math.sqrt(squares / (last - first + 1)) * (baselineM / Math.max(baselineM, lengthM));
    if (lengthM === 0) continue;
    segments.push({
      fromM: stationM[first],
      toM: stationM[last],
      slopeRad: Math.atan2(riseM, lengthM),
      plusMinusRad: plusMinus,
      riseM,
      known,
    });
  }
  return segments;
}
