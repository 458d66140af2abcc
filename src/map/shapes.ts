import type { Feature, FeatureCollection, LineString, Point, Polygon, Position } from 'geojson';
import { wrapLng } from '../route/ellipsoid.ts';
import type { Path } from '../route/geo.ts';
import { simplified } from '../route/geo.ts';

/** What is drawn of a recorded track stays within this of it, metres: far less than a receiver is off. */
const TRACK_WITHIN_M = 0.5;

/** Longitudes run on past 180 where a path crosses that meridian, as maps want it. */
export function positionsOf({ lng, lat }: Path): Position[] {
  let eastward = lng[0];
  return Array.from(lat, (y, i) => {
    if (i > 0) eastward += wrapLng(lng[i] - lng[i - 1]);
    return [eastward, y];
  });
}

export function lineShape(path: Path, properties: object): Feature<LineString> {
  return {
    type: 'Feature',
    properties: { ...properties },
    geometry: { type: 'LineString', coordinates: positionsOf(path) },
  };
}

/** A part of a recorded track, with the points that make no difference to the eye left out: a long one draws faster. */
export function trackShape(path: Path, properties: object): Feature<LineString> {
  return lineShape(simplified(path, TRACK_WITHIN_M), properties);
}

export function pointShape(lng: number, lat: number, properties: object): Feature<Point> {
  return {
    type: 'Feature',
    properties: { ...properties },
    geometry: { type: 'Point', coordinates: [lng, lat] },
  };
}

export function collection<T extends Feature<LineString | Point | Polygon>>(
  features: T[],
): FeatureCollection {
  return { type: 'FeatureCollection', features };
}
