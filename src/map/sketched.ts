import { metresPerDegree, wrapLng } from '../route/ellipsoid.ts';
import type { Path } from '../route/geo.ts';
import { boundsOf } from './frame.ts';

/** A track of a list on a small map: its recorded pieces, or where it lies when they were not fetched. */
export interface Sketched {
  readonly id: string;
  readonly name: string;
  readonly lng: number;
  readonly lat: number;
  /** Null while only its middle is known. */
  readonly ways: readonly Path[] | null;
}

/** A line shorter than this is no more than a speck. */
const SPECK_PX = 14;

/**
 * The whole zoom level from which on a track's line is longer than a speck, by the scale of web maps (512 pixels round the
 * equator at level 0); Infinity where there is no line.
 */
export function lineFromZoom({ ways }: Sketched): number {
  const boxes = (ways ?? []).map((way) => boundsOf({ ...way, length: way.lng.length }));
  if (boxes.length === 0) return Infinity;
  const [west, south] = [0, 1].map((i) => Math.min(...boxes.map((box) => box[i])));
  const [east, north] = [2, 3].map((i) => Math.max(...boxes.map((box) => box[i])));
  const wide = east - west;
  const high = (north - south) / Math.cos((((south + north) / 2) * Math.PI) / 180);
  return Math.ceil(Math.log2((SPECK_PX * 360) / (512 * Math.max(wide, high, 1e-9))));
}

/** The track nearest to a place, no farther than `withinM`; null where none is. */
export function nearestSketched(
  tracks: readonly Sketched[],
  lng: number,
  lat: number,
  withinM: number,
): Sketched | null {
  const { east, north } = metresPerDegree(lat);
  const x = (degrees: number) => wrapLng(degrees - lng) * east;
  const y = (degrees: number) => (degrees - lat) * north;
  let best: Sketched | null = null;
  let bestM = withinM;
  for (const track of tracks) {
    const ways = track.ways ?? [{ lng: Float64Array.of(track.lng), lat: Float64Array.of(track.lat) }];
    for (const way of ways) {
      const awayM = distanceM(way, x, y);
      if (awayM > bestM) continue;
      best = track;
      bestM = awayM;
    }
  }
  return best;
}

/** From the origin of a plane to a path laid into it. */
function distanceM(
  { lng, lat }: Path,
  x: (degrees: number) => number,
  y: (degrees: number) => number,
): number {
  let least = Math.hypot(x(lng[0]), y(lat[0]));
  for (let i = 1; i < lng.length; i++) {
    const [ax, ay] = [x(lng[i - 1]), y(lat[i - 1])];
    const [dx, dy] = [x(lng[i]) - ax, y(lat[i]) - ay];
    const square = dx * dx + dy * dy;
    const along = square > 0 ? Math.max(0, Math.min(1, -(ax * dx + ay * dy) / square)) : 0;
    least = Math.min(least, Math.hypot(ax + along * dx, ay + along * dy));
  }
  return least;
}
