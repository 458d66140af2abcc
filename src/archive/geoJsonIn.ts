import type { Problem, Reading } from '../problem.ts';
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

/** A collection that is held whole. Lines beyond `mostPoints` in all are left out, and said. */
export function filedFromGeoJson(value: unknown, mostPoints: number = ARCHIVE_LIMITS.points): Reading<Filed> {
  const { type, features } = (value ?? {}) as { readonly type?: unknown; readonly features?: unknown };
  if (type !== 'FeatureCollection' || !Array.isArray(features))
    return refused(say.formats.geoJson.noCollection);
  const owned = new Set(features.flatMap((feature) => ownIdOf(feature) ?? []));
  const reading = new GeoJsonReading(owned, mostPoints);
  const tracks = features.flatMap((feature, i) => reading.add(feature, i) ?? []);
  return { value: { tracks, trips: [] }, problems: reading.problems() };
}

interface Feature {
  readonly properties?: Plain | null;
  readonly geometry?: { readonly type?: unknown; readonly coordinates?: unknown } | null;
}

function recordOf({ properties }: Feature): Plain | null {
  const record = properties?.record as Plain | undefined;
  return record?.format === GRADED_FORMAT ? record : null;
}

/** What other features call the graded track that a feature carries whole; null where it carries none. */
export function ownIdOf(feature: unknown): unknown {
  const given = (feature ?? {}) as Feature;
  return recordOf(given) === null ? null : (given.properties?.track_id ?? null);
}

/**
 * Features of one collection, one after the other: graded tracks whole from their records, and other lines as tracks with
 * nothing surveyed. A third number of a position is taken as an elevation; the standard means one above the ellipsoid, other
 * programs write one above the sea. `owned` names the tracks that the collection carries whole.
 */
export class GeoJsonReading {
  readonly #owned: ReadonlySet<unknown>;
  readonly #mostPoints: number;
  readonly #reader = new Reader();
  readonly #ids = new Set<string>();
  readonly #lost = { points: 0, others: 0, foreign: 0, over: 0 };
  #count = 0;
  #points = 0;

  constructor(owned: ReadonlySet<unknown>, mostPoints: number = ARCHIVE_LIMITS.points) {
    this.#owned = owned;
    this.#mostPoints = mostPoints;
  }

  /** The track that a feature makes; null where it makes none. */
  add(feature: unknown, i: number): GradedTrack | null {
    const given = (feature ?? {}) as Feature;
    const record = recordOf(given);
    const track = record ? this.#own(record, `features[${i}]`) : this.#foreign(given, i);
    if (track) this.#count++;
    return track;
  }

  #own(record: Plain, where: string): GradedTrack | null {
    if (this.#count >= ARCHIVE_LIMITS.tracks) return this.#passOver('over');
    const { value: graded, problems } = gradedFrom(record);
    this.#reader.add(problems.map((problem) => ({ ...problem, where: `${where}: ${problem.where}` })));
    return graded && { ...graded, id: this.#reader.id(graded.id, where, this.#ids, 'track') };
  }

  #foreign({ properties, geometry }: Feature, i: number): GradedTrack | null {
    // What is read off a track of ours is not a track in its own right.
    if (properties?.track_id !== undefined && this.#owned.has(properties.track_id)) return null;
    const lines = linesOf(geometry?.type, geometry?.coordinates);
    if (lines.length === 0) return this.#passOver('others');
    const count = lines.reduce((sum, { length }) => sum + length, 0);
    const isOver = this.#count >= ARCHIVE_LIMITS.tracks || this.#points + count > this.#mostPoints;
    if (isOver) return this.#passOver('over');
    const name = typeof properties?.name === 'string' ? printable(properties.name) : `line ${i + 1}`;
    const said = properties?.description ?? properties?.desc;
    const note = typeof said === 'string' ? said.slice(0, TRIP_LIMITS.textLength) : '';
    const made = gradedOfPaths(name, note, lines.map(pathOf));
    if (made === null) return this.#passOver('others');
    this.#lost.points += made.lost;
    if (this.#ids.has(made.graded.id)) return null;
    this.#ids.add(made.graded.id);
    this.#points += count;
    this.#lost.foreign++;
    return made.graded;
  }

  #passOver(why: 'others' | 'over'): null {
    this.#lost[why]++;
    return null;
  }

  /** All that was wrong, once everything was added. */
  problems(): readonly Problem[] {
    const { theFile, leftOut, pointsLeftOut, noPlace, splitIt, tooManyTracks } = say.formats;
    const { others, points, over, foreign } = this.#lost;
    const reader = this.#reader;
    if (others > 0) reader.warning(theFile, say.formats.geoJson.noLine, leftOut, others);
    if (points > 0) reader.error(theFile, noPlace, pointsLeftOut, points);
    if (over > 0) reader.error(theFile, tooManyTracks(ARCHIVE_LIMITS.tracks), splitIt, over);
    const told = say.formats.geoPackage;
    if (foreign > 0) reader.warning(theFile, told.foreign, told.foreignDone, foreign);
    if (this.#count === 0) reader.error(theFile, say.formats.noTracks, say.formats.nothingRead);
    return reader.problems();
  }
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
