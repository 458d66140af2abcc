import type { Feature, FeatureCollection } from 'geojson';
import { wrapLng } from '../../route/ellipsoid.ts';
import { cutAtAntimeridian } from './antimeridian.ts';
import type { Contents, OutPlace, OutWay } from './contents.ts';

/**
 * GeoJSON (RFC 7946). A position has no third number: that would be a height above the ellipsoid (3.1.1), and recorded
 * elevations are above sea level; they stand in the properties. Ways are cut at the antimeridian (3.1.9).
 */
export function geoJsonText({ name, description, places, ways }: Contents): string {
  const features: Feature[] = [...places.map(placeFeature), ...ways.map(wayFeature)];
  // Members that the standard does not name are foreign (6.1) and may be ignored.
  const collection: FeatureCollection & Record<string, unknown> = {
    type: 'FeatureCollection',
    name,
    description,
    features,
  };
  return `${JSON.stringify(collection, null, 1)}\n`;
}

export function placeFeature({ lng, lat, elevationM, ...said }: OutPlace): Feature {
  return {
    type: 'Feature',
    geometry: { type: 'Point', coordinates: [wrapLng(lng), lat] },
    properties: Number.isFinite(elevationM) ? { ...said, elevationM } : said,
  };
}

export function wayFeature({ paths, ...said }: OutWay): Feature {
  const lines = paths
    .flatMap(cutAtAntimeridian)
    .map(({ lng, lat }) => Array.from(lng, (x, i) => [x, lat[i]]));
  const heights = paths.map(({ elevationM }) => elevationM && Array.from(elevationM, orNull));
  const known = heights.some((along) => along?.some((height) => height !== null));
  return {
    type: 'Feature',
    geometry:
      lines.length === 1
        ? { type: 'LineString', coordinates: lines[0] }
        : { type: 'MultiLineString', coordinates: lines },
    properties: known ? { ...said, elevationM: heights } : said,
  };
}

function orNull(value: number): number | null {
  return Number.isFinite(value) ? value : null;
}
