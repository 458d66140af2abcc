import type { Feature, FeatureCollection, Position } from 'geojson';
import { wrapLng } from '../../route/ellipsoid.ts';
import type { Contents, OutPath } from './contents.ts';

/**
 * GeoJSON (RFC 7946). A position has no third number: that would be a height above the ellipsoid (3.1.1), and recorded
 * elevations are above sea level; they stand in the properties. Ways are cut at the antimeridian (3.1.9).
 */
export function geoJsonText({ name, description, places, ways }: Contents): string {
  const features: Feature[] = [
    ...places.map(({ lng, lat, elevationM, ...said }): Feature => ({
      type: 'Feature',
      geometry: { type: 'Point', coordinates: [wrapLng(lng), lat] },
      properties: Number.isFinite(elevationM) ? { ...said, elevationM } : said,
    })),
    ...ways.map(({ paths, ...said }): Feature => {
      const lines = paths.flatMap(cutAtAntimeridian);
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
    }),
  ];
  // Members that the standard does not name are foreign (6.1) and may be ignored.
  const collection: FeatureCollection & Record<string, unknown> = {
    type: 'FeatureCollection',
    name,
    description,
    features,
  };
  return `${JSON.stringify(collection, null, 1)}\n`;
}

function orNull(value: number): number | null {
  return Number.isFinite(value) ? value : null;
}

/** Pieces of at least two positions that do not cross the antimeridian; both sides keep the crossing. */
function cutAtAntimeridian({ lng, lat }: OutPath): Position[][] {
  const pieces: Position[][] = [[[wrapLng(lng[0]), lat[0]]]];
  for (let i = 1; i < lng.length; i++) {
    const [before, here] = [wrapLng(lng[i - 1]), wrapLng(lng[i])];
    const step = wrapLng(here - before);
    if (Math.abs(here - before) > 180 && step !== 0) {
      const edge = step > 0 ? 180 : -180;
      const share = (edge - before) / step;
      const crossing = lat[i - 1] + share * (lat[i] - lat[i - 1]);
      pieces[pieces.length - 1].push([edge, crossing]);
      pieces.push([[-edge, crossing]]);
    }
    pieces[pieces.length - 1].push([here, lat[i]]);
  }
  // A segment of one point is a place that was stood at; a line needs two.
  return pieces.map((piece) => (piece.length === 1 ? [piece[0], piece[0]] : piece));
}
