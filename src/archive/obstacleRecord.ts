import { nearestOn, pointAt } from '../route/station.ts';
import type { Track } from '../route/track.ts';
import type { Bypass, Line, Obstacle } from '../terrain/obstacle.ts';
import { offsetFields, placeFields, stationFields } from './fields.ts';
import { TRIP_LIMITS } from './limits.ts';
import { photoFrom } from './photoRecord.ts';
import type { Reader } from './reader.ts';
import { stretchFrom } from './stretchRecord.ts';
import { say } from '../words/words.ts';

export const OBSTACLE_NAMES = [
  'id',
  'name',
  'preset',
  'lng',
  'lat',
  'stationM',
  'stretch',
  'lines',
  'note',
  'photos',
];

export const SAME_GROUND_NAMES = ['id', 'kind', 'name', 'offsetM'];

export const BYPASS_NAMES = ['id', 'kind', 'name', 'stretch', 'path'];

/** Reads an obstacle; null only where nothing says where it is. `ids` and `photoIds` hold the ids of those before it. */
export function obstacleFrom(
  reader: Reader,
  value: unknown,
  where: string,
  {
    track,
    ids,
    photoIds,
    number,
  }: {
    readonly track: Track | null;
    readonly ids: Set<string>;
    readonly photoIds: Set<string>;
    readonly number: number;
  },
): Obstacle | null {
  const record = reader.record(value, where, OBSTACLE_NAMES);
  if (record === null) return null;
  const filed = {
    ...reader.values(placeFields, record, where).values,
    ...reader.values(stationFields, record, where).values,
  };
  const place = placeOf(filed, track);
  if (place === null) {
    reader.error(where, say.tripFile.noPlace, say.tripFile.noPlaceDone);
    return null;
  }
  if (track && place.stationM > track.distanceM[track.length - 1] + 1)
    reader.warning(`${where}.stationM`, say.tripFile.beyondTrack, say.tripFile.beyondTrackDone);
  return {
    id: reader.id(record.id, `${where}.id`, ids, `obstacle-${number}`),
    name: reader.text(record.name, `${where}.name`),
    preset: reader.text(record.preset, `${where}.preset`),
    ...place,
    stretch: stretchFrom(reader, record.stretch, `${where}.stretch`),
    lines: linesFrom(reader, record.lines, `${where}.lines`),
    note: reader.text(record.note, `${where}.note`),
    photos: reader
      .list(record.photos, `${where}.photos`, TRIP_LIMITS.photos)
      .map((photo, i) => photoFrom(reader, photo, `${where}.photos[${i}]`, photoIds))
      .filter((photo) => photo !== null),
  };
}

type Place = Pick<Obstacle, 'lng' | 'lat' | 'stationM'>;

/** Position and station as filed; one that is unusable is taken from the track by means of the other. */
function placeOf(filed: Place, track: Track | null): Place | null {
  const { lng, lat, stationM } = filed;
  const placed = Math.abs(lng) <= 180 && Math.abs(lat) <= 90;
  const stationed = stationM >= 0;
  const at = { lng: lng === 180 ? -180 : lng, lat };
  if (placed && stationed) return { ...at, stationM };
  if (placed) return { ...at, stationM: track ? nearestOn(track, lng, lat).stationM : 0 };
  if (!stationed || track === null) return null;
  const point = pointAt(track, stationM);
  return { lng: point.lng, lat: point.lat, stationM };
}

/** The lines, the main one first; it is made where there is none. */
function linesFrom(reader: Reader, value: unknown, where: string): Line[] {
  const ids = new Set<string>();
  const lines = reader
    .list(value, where, TRIP_LIMITS.lines)
    .map((line, i) => lineFrom(reader, line, `${where}[${i}]`, ids, i))
    .filter((line) => line !== null);
  const mains = lines.filter((line) => line.kind === 'main');
  if (mains.length === 0) {
    reader.error(where, say.tripFile.noMain, say.tripFile.noMainDone);
    const id = reader.id('main', where, ids, 'main');
    return [{ id, kind: 'main', name: say.lineKind.main, offsetM: 0 }, ...lines];
  }
  if (mains.length > 1)
    reader.error(where, say.tripFile.manyMains, say.tripFile.othersLeftOut, mains.length - 1);
  if (lines[0] !== mains[0]) reader.error(where, say.tripFile.mainFirst, say.tripFile.movedThere);
  return [mains[0], ...lines.filter((line) => line.kind !== 'main')];
}

function lineFrom(reader: Reader, value: unknown, where: string, ids: Set<string>, i: number): Line | null {
  const record = reader.record(value, where);
  if (record === null) return null;
  const head = () => ({
    id: reader.id(record.id, `${where}.id`, ids, `line-${i + 1}`),
    name: reader.text(record.name, `${where}.name`),
  });
  switch (record.kind) {
    case 'main':
      reader.names(record, where, SAME_GROUND_NAMES);
      if (record.offsetM !== 0)
        reader.error(`${where}.offsetM`, say.tripFile.mainOffset, say.tripFile.mainOffsetDone);
      return { ...head(), kind: 'main', offsetM: 0 };
    case 'offset': {
      reader.names(record, where, SAME_GROUND_NAMES);
      const { offsetM } = reader.values(offsetFields, record, where).values;
      if (!Number.isNaN(offsetM)) return { ...head(), kind: 'offset', offsetM };
      reader.error(where, say.tripFile.needsOffset, say.tripFile.needsOffsetDone);
      return null;
    }
    case 'bypass':
      reader.names(record, where, BYPASS_NAMES);
      return {
        ...head(),
        kind: 'bypass',
        stretch: stretchFrom(reader, record.stretch, `${where}.stretch`),
        path: pathFrom(reader, record.path, `${where}.path`),
      };
    default:
      reader.error(`${where}.kind`, say.tripFile.kindOneOf('main, offset, bypass'), say.tripFile.lineLeftOut);
      return null;
  }
}

/** What is drawn on the map; nothing is judged by it, so a vertex that cannot be read is left out. */
function pathFrom(reader: Reader, value: unknown, where: string): Bypass['path'] {
  const path: (readonly [number, number])[] = [];
  reader.list(value, where, TRIP_LIMITS.path).forEach((vertex, i) => {
    const [lng, lat, ...more] = Array.isArray(vertex) ? (vertex as unknown[]) : [];
    const usable =
      typeof lng === 'number' && typeof lat === 'number' && Math.abs(lng) <= 180 && Math.abs(lat) <= 90;
    if (usable) path.push([lng, lat]);
    if (!usable || more.length > 0)
      reader.error(`${where}[${i}]`, say.tripFile.vertex, say.tripFile.vertexDone);
  });
  return path;
}
