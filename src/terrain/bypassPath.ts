import { bearingRad, stepM, wrapLng } from '../route/ellipsoid.ts';
import type { Path } from '../route/geo.ts';
import { simplified } from '../route/geo.ts';
import { pointAt } from '../route/station.ts';
import type { Track } from '../route/track.ts';
import type { Bypass } from './obstacle.ts';

/** Where a bypass runs: [lng, lat] pairs, in the recorded direction of the track that it leaves. */
export type BypassPath = Bypass['path'];

/** A recording with more points than are kept is thinned within this at first, metres, then within twice as much, … */
const WITHIN_M = 0.25;

/** The same as parallel arrays. */
export function pathOf(pairs: BypassPath): Path {
  return {
    lng: Float64Array.from(pairs, ([lng]) => lng),
    lat: Float64Array.from(pairs, ([, lat]) => lat),
  };
}

/** Along the path from end to end, on the ellipsoid. */
export function pathLengthM(pairs: BypassPath): number {
  return pairs.slice(1).reduce((sum, [lng, lat], i) => sum + stepM(pairs[i][0], pairs[i][1], lng, lat), 0);
}

/** A recording as the path of a bypass, of at most `most` points (2 or more); straight across its gaps. */
export function pathFromTrack(track: Track, most: number): BypassPath {
  let path: Path = { lng: track.lng.subarray(0, track.length), lat: track.lat.subarray(0, track.length) };
  for (let withinM = WITHIN_M; path.lng.length > most; withinM *= 2) path = simplified(path, withinM);
  return Array.from(path.lat, (lat, i) => [wrapLng(path.lng[i]), lat] as const);
}

/**
 * The path turned, if need be, so that it runs as the track was recorded: from end to end it goes with the track's own
 * course over as long a stretch, its middle at the station where the bypass belongs.
 */
export function asRecorded(path: BypassPath, track: Track, stationM: number): BypassPath {
  if (path.length < 2 || track.length < 2) return path;
  const [[lng, lat], [endLng, endLat]] = [path[0], path[path.length - 1]];
  const half = Math.max(1, stepM(lng, lat, endLng, endLat) / 2);
  const [from, to] = [pointAt(track, stationM - half), pointAt(track, stationM + half)];
  const turnRad = bearingRad(lng, lat, endLng, endLat) - bearingRad(from.lng, from.lat, to.lng, to.lat);
  return Math.cos(turnRad) < 0 ? path.toReversed() : path;
}
