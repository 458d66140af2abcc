import type { ElevationGrid } from './elevation.ts';
import { groundCamberRad, heightAt, nodeM } from './elevation.ts';
import { bearingAt } from './station.ts';
import type { Track, TrackModel } from './track.ts';

/**
 * Vertical error, one standard deviation, that a model is taken to have until someone enters what its publisher states, by
 * the distance between its nodes: flown surveys in steps of metres, national grids, grids from space in steps of 30 m and
 * more. Assumed, no source. Too small a value makes slopes look surer than they are.
 */
const ASSUMED_ERRORS = [
  { belowM: 5, errorM: 0.5 },
  { belowM: 20, errorM: 2 },
  { belowM: Infinity, errorM: 4 },
] as const;

/** Points between two reports. */
const REPORT = 20_000;

/**
 * An elevation model read off (bilinear) at every point of a track, not used for slopes yet. Null where it knows none of
 * them. `onProgress` is told the share that is done.
 */
export function modelAlong(
  track: Track,
  grid: ElevationGrid,
  name: string,
  onProgress: (share: number) => void = () => {},
): TrackModel | null {
  const { length, lng, lat } = track;
  const elevationM = new Float64Array(length).fill(NaN);
  const camberRad = new Float64Array(length).fill(NaN);
  let most = 0;
  for (let i = 0; i < length; i++) {
    if (i % REPORT === 0) onProgress(i / length);
    const height = heightAt(grid, lng[i], lat[i]);
    const camber = groundCamberRad(grid, lng[i], lat[i], bearingAt(track, i));
    if (Number.isNaN(height + camber)) continue;
    elevationM[i] = height;
    camberRad[i] = camber;
    most = Math.max(most, nodeM(grid, lat[i]));
  }
  if (most === 0) return null;
  return { name, nodeM: most, errorM: assumedErrorM(most), elevationM, camberRad, isUsed: false };
}

function assumedErrorM(betweenM: number): number {
  return ASSUMED_ERRORS.find(({ belowM }) => betweenM < belowM)?.errorM ?? NaN;
}

/** Points that are tried to see whether a model lies along a track at all. */
const TRIED = 500;

export function liesAlong(grid: ElevationGrid, { length, lng, lat }: Track): boolean {
  const step = Math.max(1, Math.floor(length / TRIED));
  for (let i = 0; i < length; i += step) if (!Number.isNaN(heightAt(grid, lng[i], lat[i]))) return true;
  return false;
}
