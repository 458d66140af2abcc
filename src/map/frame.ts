import type { ElevationGrid } from '../route/elevation.ts';
import { eastOf, northOf } from '../route/elevation.ts';
import { wrapLng } from '../route/ellipsoid.ts';
import type { Track } from '../route/track.ts';
import type { Bounds } from './map.svelte.ts';

interface Place {
  readonly lng: number;
  readonly lat: number;
}

/** What there is to see: the track, else the ground, else the pins, else the whole world. */
export function frameOf(
  track: Track | null,
  grid: ElevationGrid | null,
  places: readonly Place[] = [],
): Bounds {
  if (track && track.length > 0) return boundsOf(track);
  if (grid) return [grid.west, grid.south, eastOf(grid), northOf(grid)];
  if (places.length > 0)
    return boundsOf({
      lng: places.map(({ lng }) => lng),
      lat: places.map(({ lat }) => lat),
      length: places.length,
    });
  return [-179, -60, 179, 70];
}

interface Points {
  readonly lng: ArrayLike<number>;
  readonly lat: ArrayLike<number>;
  readonly length: number;
}

/** Least frame round a track; the east may lie beyond 180 where it crosses that meridian. */
export function boundsOf({ lng, lat, length }: Points): Bounds {
  let [west, east] = [lng[0], lng[0]];
  let [south, north] = [lat[0], lat[0]];
  let eastward = lng[0];
  for (let i = 1; i < length; i++) {
    eastward += wrapLng(lng[i] - lng[i - 1]);
    west = Math.min(west, eastward);
    east = Math.max(east, eastward);
    south = Math.min(south, lat[i]);
    north = Math.max(north, lat[i]);
  }
  return [west, south, east, north];
}
