import type { Reading } from '../problem.ts';
import { say } from '../words/words.ts';
import type { Filed, ForeignPath } from './filed.ts';
import { gradedOfPaths } from './filed.ts';
import { GRADED_FORMAT, gradedFrom } from './gradedRecord.ts';
import type { GradedTrack } from './gradedTrack.ts';
import { ARCHIVE_LIMITS, TRIP_LIMITS } from './limits.ts';
import type { Plain } from './reader.ts';
import { printable, Reader } from './reader.ts';

/** Reads a GeoJSON file of ours or anybody's (RFC 7946); null only where it is no collection of features. */
export function readGeoJson(text: string): Reading<Filed> {
  let value: unknown;
  try {
    value = JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch {
    return refused(say.formats.noJson);
  }
  return filedFromGeoJson(value);
}

/**
 * Graded tracks whole from their records, and other lines as tracks with nothing surveyed. A third number of a position
 * is taken as an elevation; the standard means one above the ellipsoid, other programs write one above the sea. Lines
 * beyond `mostPoints` in all are left out, and said.
 */
export function filedFromGeoJson(value: unknown, mostPoints: number = ARCHIVE_LIMITS.points): Reading<Filed> {
  const { type, features } = (value ?? {}) as { readonly type?: unknown; readonly features?: unknown };
  if (type !== 'FeatureCollection' || !Array.isArray(features))
    return refused(say.formats.geoJson.noCollection);
  const reader = new Reader();
  const tracks: GradedTrack[] = [];
  const ids = new Set<string>();
  const lost = { points: 0, others: 0, foreign: 0, over: 0 };
  const owned = new Set<unknown>();
  features.forEach((feature: unknown, i) => {
    const where = `features[${i}]`;
    const { properties } = (feature ?? {}) as { readonly properties?: Plain | null };
    const record = properties?.record as { readonly format?: unknown } | undefined;
    if (record?.format !== GRADED_FORMAT) return;
    owned.add(properties?.track_id);
    if (tracks.length >= ARCHIVE_LIMITS.tracks) return void lost.over++;
    const { value: graded, problems } = gradedFrom(record);
    reader.add(problems.map((problem) => ({ ...problem, where: `${where}: ${problem.where}` })));
    if (graded) tracks.push({ ...graded, id: reader.id(graded.id, where, ids, 'track') });
  });
  let points = 0;
  features.forEach((feature: unknown, i) => {
    const { properties, geometry } = (feature ?? {}) as {
      readonly properties?: Plain | null;
      readonly geometry?: { readonly type?: unknown; readonly coordinates?: unknown } | null;
    };
    // What is read off a track of ours is not a track in its own right.
    if (properties?.track_id !== undefined && owned.has(properties.track_id)) return;
    const lines = linesOf(geometry?.type, geometry?.coordinates);
    if (lines.length === 0) return lost.others++;
    const count = lines.reduce((sum, { length }) => sum + length, 0);
    if (tracks.length >= ARCHIVE_LIMITS.tracks || points + count > mostPoints) return lost.over++;
    const name = typeof properties?.name === 'string' ? printable(properties.name) : `line ${i + 1}`;
    const said = properties?.description ?? properties?.desc;
    const note = typeof said === 'string' ? said.slice(0, TRIP_LIMITS.textLength) : '';
    const made = gradedOfPaths(name, note, lines.map(pathOf));
    if (made === null) return lost.others++;
    lost.points += made.lost;
    if (ids.has(made.graded.id)) return;
    ids.add(made.graded.id);
    points += count;
    lost.foreign++;
    tracks.push(made.graded);
  });
  const { theFile, leftOut, pointsLeftOut, noPlace, splitIt, tooManyTracks } = say.formats;
  if (lost.others > 0) reader.warning(theFile, say.formats.geoJson.noLine, leftOut, lost.others);
  if (lost.points > 0) reader.error(theFile, noPlace, pointsLeftOut, lost.points);
  if (lost.over > 0) reader.error(theFile, tooManyTracks(ARCHIVE_LIMITS.tracks), splitIt, lost.over);
  const { foreign, foreignDone } = say.formats.geoPackage;
  if (lost.foreign > 0) reader.warning(theFile, foreign, foreignDone, lost.foreign);
  if (tracks.length === 0) reader.error(theFile, say.formats.noTracks, say.formats.nothingRead);
  return { value: { tracks, trips: [] }, problems: reader.problems() };
}

/** Each a list of what should be positions. */
function linesOf(type: unknown, coordinates: unknown): readonly (readonly unknown[])[] {
  if (!Array.isArray(coordinates)) return [];
  if (type === 'LineString') return [coordinates];
  return type === 'MultiLineString' ? coordinates.filter((line) => Array.isArray(line)) : [];
}

function pathOf(positions: readonly unknown[]): ForeignPath {
  const column = (at: number) =>
    Float64Array.from(positions, (position) => {
      const value: unknown = Array.isArray(position) ? position[at] : NaN;
      return typeof value === 'number' ? value : NaN;
    });
  return { lng: column(0), lat: column(1), elevationM: column(2) };
}

function refused(what: string): Reading<Filed> {
  const { theFile, nothingRead } = say.formats;
  return {
    value: null,
    problems: [{ severity: 'error', where: theFile, what, done: nothingRead, times: 1 }],
  };
}
