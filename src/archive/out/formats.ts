import type { GradeTold } from '../../brief/gradeTold.ts';
import type { System } from '../../units.ts';
import type { Trip } from '../trip.ts';
import type { Contents } from './contents.ts';
import { contentsOf } from './contents.ts';
import { geoJsonText } from './geoJson.ts';
import { gpxText } from './gpx.ts';
import { kmlText } from './kml.ts';

export const OUT_FORMATS = ['gpx', 'geojson', 'kml'] as const;

/** Also the ending of the file's name. */
export type OutFormat = (typeof OUT_FORMATS)[number];

interface Written {
  readonly label: string;
  readonly mediaType: string;
  readonly write: (contents: Contents) => string;
}

export const WRITTEN: Readonly<Record<OutFormat, Written>> = {
  gpx: { label: 'GPX', mediaType: 'application/gpx+xml', write: gpxText },
  geojson: { label: 'GeoJSON', mediaType: 'application/geo+json', write: geoJsonText },
  kml: { label: 'KML', mediaType: 'application/xml', write: kmlText },
};

/** A trip's places and ways for other people's programs, with its grade if told; lengths in words are in `system`. */
export function outText(
  trip: Trip,
  format: OutFormat,
  system: System,
  grade: GradeTold | null = null,
): string {
  return WRITTEN[format].write(contentsOf(trip, system, grade));
}
