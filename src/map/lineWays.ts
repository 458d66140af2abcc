import type { Path } from '../route/geo.ts';
import { offsetPath } from '../route/geo.ts';
import { sliceOf } from '../route/station.ts';
import type { Track } from '../route/track.ts';
import { pathOf } from '../terrain/bypassPath.ts';
import type { Line, Obstacle } from '../terrain/obstacle.ts';

/** From this zoom up the lines of obstacles are drawn; farther away a stretch is a few pixels long. */
export const LINES_ZOOM = 14.5;

/**
 * Where a pixel covers this much ground or less, offset lines are drawn where they run: half a metre is then a dozen
 * pixels. Some 20 levels of zoom in.
 */
const TO_SCALE_M_PER_PX = 0.04;

/**
 * How many times farther from the main line than they lie offset lines are drawn; 1 from `TO_SCALE_M_PER_PX` on. Farther
 * away it grows so that they stay as many pixels apart as there.
 */
export function spreadAt(metresPerPx: number): number {
  return Math.max(1, metresPerPx / TO_SCALE_M_PER_PX);
}

/** Where a line runs over the ground: a path for each recorded segment of the track, or the path of a bypass. */
export interface LineWay {
  readonly line: Line;
  readonly paths: readonly Path[];
}

/**
 * The lines of an obstacle over the ground: the track's own stretch, that moved sideways `spread` times as far as it lies,
 * and the paths of bypasses; a bypass that was not drawn has none, and
 * without a track there is nothing but bypasses.
 */
export function lineWays(
  track: Track | null,
  { stationM, stretch, lines }: Obstacle,
  spread: number,
): LineWay[] {
  const half = stretch.lengthM / 2;
  const onTrack =
    track === null || Number.isNaN(half) ? [] : sliceOf(track, stationM - half, stationM + half);
  return lines.map((line) => {
    switch (line.kind) {
      case 'bypass':
        return { line, paths: line.path.length < 2 ? [] : [pathOf(line.path)] };
      case 'offset':
        return { line, paths: onTrack.map((path) => offsetPath(path, line.offsetM * spread)) };
      case 'main':
        return { line, paths: onTrack };
    }
  });
}
