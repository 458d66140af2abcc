import type { Feature, FeatureCollection, LineString, Point, Polygon, Position } from 'geojson';
import { wrapLng } from '../route/ellipsoid.ts';
import type { Path } from '../route/geo.ts';

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
