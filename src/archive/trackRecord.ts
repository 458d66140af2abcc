import { Points } from '../route/points.ts';
import type { Track, TrackModel, Waypoint } from '../route/track.ts';
import { elevationFields, hillsideFields, modelFields, placeFields, trackFields } from './fields.ts';
import { TRIP_LIMITS } from './limits.ts';
import type { Reader } from './reader.ts';
import { say } from '../words/words.ts';

type Column = ArrayLike<unknown>;

/** A track as it is filed: what was recorded, column by column. Distances are worked out again when it is read. */
export interface TrackRecord extends Omit<Track, 'length' | 'distanceM'> {
  readonly lng: Float64Array;
}

export const TRACK_NAMES = [
  'name',
  'description',
  'kind',
  'lng',
  'lat',
  'elevationM',
  'timeS',
  'segmentStart',
  'model',
];

export const MODEL_NAMES = ['name', 'nodeM', 'errorM', 'elevationM', 'camberRad', 'isUsed'];

export const WAYPOINT_NAMES = ['name', 'description', 'lng', 'lat', 'elevationM'];

export function trackRecord(track: Track): TrackRecord {
  const { name, description, kind, lng, lat, elevationM, timeS, segmentStart, model } = track;
  return { name, description, kind, lng, lat, elevationM, timeS, segmentStart, model };
}

/** Reads a track, out of plain or typed arrays. A point without a usable position is left out. */
export function trackFrom(reader: Reader, value: unknown, where: string): Track | null {
  if (value === null) return null;
  const record = reader.record(value, where, TRACK_NAMES);
  if (record === null) return null;
  const name = reader.text(record.name, `${where}.name`);
  const description = reader.text(record.description, `${where}.description`);
  const { kind } = reader.values(trackFields, record, where).values;
  const lng = column(reader, record.lng, `${where}.lng`);
  const lat = column(reader, record.lat, `${where}.lat`);
  const elevation = column(reader, record.elevationM, `${where}.elevationM`);
  const time = column(reader, record.timeS, `${where}.timeS`);
  const length = Math.min(lng.length, lat.length, TRIP_LIMITS.points);
  for (const [name, { length: entries }] of Object.entries({ lng, lat, elevationM: elevation, timeS: time }))
    if (entries !== length)
      reader.error(
        `${where}.${name}`,
        say.tripFile.entriesForPoints(entries, length),
        say.tripFile.asFarAsItGoes,
      );
  const starts = segmentStarts(reader, record.segmentStart, `${where}.segmentStart`, length);

  const lost = new Lost(where);
  const points = new Points();
  const kept: number[] = [];
  for (let i = 0; i < length; i++) {
    if (starts.has(i)) points.endSegment();
    const east = within(lng[i], placeFields.lng);
    const north = within(lat[i], placeFields.lat);
    if (Number.isNaN(east)) lost.count('lng', i);
    if (Number.isNaN(north)) lost.count('lat', i);
    if (Number.isNaN(east) || Number.isNaN(north)) continue;
    const elevationM = within(elevation[i], elevationFields.elevationM);
    const timeS = finite(time[i]);
    if (Number.isNaN(elevationM) && i < elevation.length && isThere(elevation[i]))
      lost.count('elevationM', i);
    if (Number.isNaN(timeS) && i < time.length && isThere(time[i])) lost.count('timeS', i);
    points.push(east === 180 ? -180 : east, north, elevationM, timeS);
    kept.push(i);
  }
  lost.report(reader);
  if (points.length > 0) {
    const model = modelFrom(reader, record.model, `${where}.model`, kept, length);
    return { ...points.take(kind, name, description), model };
  }
  reader.error(where, say.tripFile.noPoint, say.tripFile.wasLeftOut);
  return null;
}

/** Reads what a model says of the points that were `kept`. */
function modelFrom(
  reader: Reader,
  value: unknown,
  where: string,
  kept: readonly number[],
  points: number,
): TrackModel | null {
  if (value === null) return null;
  const record = reader.record(value, where, MODEL_NAMES);
  const { values, whole } = reader.values(modelFields, record, where);
  const told = whole && [values.nodeM, values.errorM].every((valueM) => valueM > 0);
  if (record === null || !told) {
    reader.error(where, say.tripFile.modelUnclear, say.tripFile.modelLeftOut);
    return null;
  }
  const lost = new Lost(where);
  const columnOf = (
    name: 'elevationM' | 'camberRad',
    field: { readonly min: number; readonly max: number },
  ) => {
    const filed = column(reader, record[name], `${where}.${name}`);
    if (filed.length !== points)
      reader.error(
        `${where}.${name}`,
        say.tripFile.entriesForPoints(filed.length, points),
        say.tripFile.asFarAsItGoes,
      );
    return Float64Array.from(kept, (i) => {
      const read = within(filed[i], field);
      if (Number.isNaN(read) && i < filed.length && isThere(filed[i])) lost.count(name, i);
      return read;
    });
  };
  const elevationM = columnOf('elevationM', elevationFields.elevationM);
  const camberRad = columnOf('camberRad', hillsideFields.camberRad);
  lost.report(reader);
  return { name: reader.text(record.name, `${where}.name`), ...values, elevationM, camberRad };
}

export function waypointFrom(reader: Reader, value: unknown, where: string): Waypoint | null {
  const record = reader.record(value, where, WAYPOINT_NAMES);
  if (record === null) return null;
  const { lng, lat } = reader.values(placeFields, record, where).values;
  const elevationM = isThere(record.elevationM)
    ? reader.values(elevationFields, record, where).values.elevationM
    : NaN;
  if (Number.isNaN(within(lng, placeFields.lng)) || Number.isNaN(within(lat, placeFields.lat))) {
    reader.error(where, say.tripFile.waypointNowhere, say.tripFile.wasLeftOut);
    return null;
  }
  return {
    name: reader.text(record.name, `${where}.name`),
    description: reader.text(record.description, `${where}.description`),
    lng: lng === 180 ? -180 : lng,
    lat,
    elevationM,
  };
}

function column(reader: Reader, value: unknown, where: string): Column {
  return value instanceof Float64Array ? value : reader.list(value, where, TRIP_LIMITS.points);
}

function segmentStarts(reader: Reader, value: unknown, where: string, length: number): Set<number> {
  const starts = new Set<number>();
  const list = value instanceof Uint32Array ? value : reader.list(value, where, TRIP_LIMITS.points);
  let last = -1;
  let bad = 0;
  for (let i = 0; i < list.length; i++) {
    const start = list[i];
    const usable = Number.isInteger(start) && (start as number) > last && (start as number) < length;
    if (!usable || (i === 0 && start !== 0)) bad++;
    if (!usable) continue;
    last = start as number;
    starts.add(last);
  }
  if (length > 0 && list.length === 0) bad++;
  if (bad > 0) reader.error(where, say.tripFile.firstPoints, say.tripFile.firstPointsDone, bad);
  return starts;
}

/** False for what stands for unknown: null in a file, NaN in memory. */
function isThere(value: unknown): boolean {
  return value !== null && !Number.isNaN(value);
}

function finite(value: unknown): number {
  return typeof value === 'number' && Number.isFinite(value) ? value : NaN;
}

function within(value: unknown, { min, max }: { readonly min: number; readonly max: number }): number {
  const number = finite(value);
  return number >= min && number <= max ? number : NaN;
}

/** Counts values that could not be used, by column; the first of each is named. */
class Lost {
  readonly #where: string;
  readonly #found = new Map<string, { first: number; times: number }>();

  constructor(where: string) {
    this.#where = where;
  }

  count(name: string, i: number): void {
    const found = this.#found.get(name);
    if (found) found.times++;
    else this.#found.set(name, { first: i, times: 1 });
  }

  report(reader: Reader): void {
    for (const [name, { first, times }] of this.#found) {
      const place = name === 'lng' || name === 'lat';
      reader.error(
        `${this.#where}.${name}[${first}]`,
        place ? say.tripFile.pointNowhere : say.tripFile.noNumber,
        place ? say.tripFile.pointLeftOut : say.tripFile.takenUnknown,
        times,
      );
    }
  }
}
