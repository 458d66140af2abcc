import type { Feature, LineString, Point } from 'geojson';
import { bearingRad } from '../route/ellipsoid.ts';
import type { Path } from '../route/geo.ts';
import { offsetPath } from '../route/geo.ts';
import { sliceOf } from '../route/station.ts';
import type { Track } from '../route/track.ts';
import type { Obstacle } from '../terrain/obstacle.ts';
import type { System } from '../units.ts';
import { degrees, shown } from '../units.ts';
import { lineShape, pointShape } from './shapes.ts';

/** Neighbouring lines are drawn at least this far apart, so that their strokes do not run together. */
const APART_PX = 11;

/** From this zoom up the lines of obstacles are drawn; farther away a stretch is a few pixels long. */
export const LINES_ZOOM = 14.5;

/**
 * How many times farther from the main line the offset lines of an obstacle are drawn than they lie, so that all
 * stand clear of each other; 1 where they do to scale.
 */
export function spreadOf(obstacle: Obstacle, metresPerPx: number): number {
  const offsets = obstacle.lines.flatMap((line) => (line.kind === 'offset' ? [line.offsetM] : []));
  const places = [0, ...offsets].sort((a, b) => a - b);
  const steps = places.slice(1).map((y, i) => y - places[i]);
  const least = Math.min(...steps.filter((step) => step > 0.01));
  return Number.isFinite(least) ? Math.max(1, (APART_PX * metresPerPx) / least) : 1;
}

/**
 * The lines of an obstacle over the ground: the track's own stretch, that moved sideways, and paths of their own; and
 * beside each a point that carries its words, turned along it.
 */
export function lineWays(
  track: Track,
  obstacle: Obstacle,
  spread: number,
  notes: ReadonlyMap<string, string>,
  system: System,
): Feature<LineString | Point>[] {
  const half = obstacle.stretch.lengthM / 2;
  const stretch = sliceOf(track, obstacle.stationM - half, obstacle.stationM + half);
  return obstacle.lines.flatMap((line) => {
    const note = notes.get(line.id) ?? '';
    if (line.kind === 'bypass') {
      if (line.path.length < 2) return [];
      const path = {
        lng: Float64Array.from(line.path, ([lng]) => lng),
        lat: Float64Array.from(line.path, ([, lat]) => lat),
      };
      return [lineShape(path, { kind: 'bypass' }), wordsBeside(path, 1, said(line.name, note))];
    }
    if (line.kind === 'main') return stretch.map((path) => lineShape(path, { kind: 'main' }));
    const side = Math.sign(line.offsetM);
    const words = `${shown(Math.abs(line.offsetM), 'length', system)} ${side > 0 ? 'left' : 'right'}`;
    return stretch.flatMap((onTrack) => {
      const path = offsetPath(onTrack, line.offsetM * spread);
      return [lineShape(path, { kind: 'offset' }), wordsBeside(path, side, said(words, note))];
    });
  });
}

/** Words at a quarter of a path, clear of the pin at its middle, on its left (side 1) or right (-1), never upside down. */
function wordsBeside({ lng, lat }: Path, side: number, words: string): Feature<Point> {
  const quarter = lng.length >> 2;
  const last = lng.length - 1;
  const alongDeg = degrees(bearingRad(lng[0], lat[0], lng[last], lat[last])) - 90;
  const turned = ((((alongDeg + 90) % 360) + 360) % 360) - 90;
  const upsideDown = turned > 90;
  const above = side > 0 !== upsideDown;
  return pointShape(lng[quarter], lat[quarter], {
    words,
    turnDeg: upsideDown ? turned - 180 : turned,
    anchor: above ? 'bottom' : 'top',
  });
}

function said(...parts: string[]): string {
  return parts.filter(Boolean).join(' · ');
}
