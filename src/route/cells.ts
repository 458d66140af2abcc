import type { Run } from './curve.ts';

/** Points of a recorded segment gathered into cells: mean station and mean elevation of each cell that has any. */
export interface Cells {
  readonly length: number;
  readonly stationM: Float64Array;
  readonly elevationM: Float64Array;
}

/**
 * Gathers the points `from` <= i < `to` into cells of `cellM` along the track, so that a vehicle standing still
 * weighs no more than one driving by. Points of unknown elevation are passed over.
 */
export function cellsOf(
  distanceM: Float64Array,
  elevationM: Float64Array,
  from: number,
  to: number,
  cellM: number,
): Cells {
  const stations: number[] = [];
  const elevations: number[] = [];
  let cell = -1;
  let count = 0;
  for (let i = from; i < to; i++) {
    if (Number.isNaN(elevationM[i])) continue;
    const own = Math.floor((distanceM[i] - distanceM[from]) / cellM);
    if (own !== cell) {
      cell = own;
      count = 0;
      stations.push(0);
      elevations.push(0);
    }
    count++;
    const last = stations.length - 1;
    stations[last] += (distanceM[i] - stations[last]) / count;
    elevations[last] += (elevationM[i] - elevations[last]) / count;
  }
  return {
    length: stations.length,
    stationM: Float64Array.from(stations),
    elevationM: Float64Array.from(elevations),
  };
}

/** Whether the elevation between two neighbouring cells can be known. */
export type Link = (lengthM: number, riseM: number) => boolean;

/** Runs of cells that are linked one to the next, each at least `leastM` long. */
export function runsOf({ length, stationM, elevationM }: Cells, linked: Link, leastM: number): Run[] {
  const runs: Run[] = [];
  let first = 0;
  for (let i = 1; i <= length; i++) {
    if (i < length && linked(stationM[i] - stationM[i - 1], elevationM[i] - elevationM[i - 1])) continue;
    if (stationM[i - 1] - stationM[first] >= leastM) runs.push({ first, last: i - 1 });
    first = i;
  }
  return runs;
}

/** A straight line through some cells: its elevation and slope (rise over run) at the station asked for. */
export interface Fit {
  readonly elevationM: number;
  readonly slope: number;
  /** Standard deviation of the cells about the line; 0 where two cells define it. */
  readonly scatterM: number;
  /** The length over which the cells are spread. Cells bunched together count as a shorter one. */
  readonly spreadM: number;
}

/**
 * Least squares through the cells about `stationM`: from `centre` outwards, the nearer side first, until they span
 * `baselineM` and are three, or the run ends.
 */
export function fitAbout(cells: Cells, run: Run, centre: number, atM: number, baselineM: number): Fit {
  const x = cells.stationM;
  const z = cells.elevationM;
  let lo = centre;
  let hi = centre;
  while (x[hi] - x[lo] < baselineM || hi - lo < 2) {
    const left = lo > run.first ? atM - x[lo - 1] : Infinity;
    const right = hi < run.last ? x[hi + 1] - atM : Infinity;
    if (left === Infinity && right === Infinity) break;
    if (left <= right) lo--;
    if (right <= left) hi++;
  }
  const n = hi - lo + 1;
  let meanX = 0;
  let meanZ = 0;
  for (let i = lo; i <= hi; i++) {
    meanX += x[i] / n;
    meanZ += z[i] / n;
  }
  let sxx = 0;
  let sxz = 0;
  for (let i = lo; i <= hi; i++) {
    sxx += (x[i] - meanX) ** 2;
    sxz += (x[i] - meanX) * (z[i] - meanZ);
  }
  const slope = sxz / sxx;
  let squares = 0;
  for (let i = lo; i <= hi; i++) squares += (z[i] - meanZ - slope * (x[i] - meanX)) ** 2;
  return {
    elevationM: meanZ + slope * (atM - meanX),
    slope,
    scatterM: n > 2 ? Math.sqrt(squares / (n - 2)) : 0,
    spreadM: Math.min(x[hi] - x[lo], Math.sqrt((12 * sxx) / n)),
  };
}
