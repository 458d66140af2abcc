import type { Reading } from '../problem.ts';
import { tripFields } from './fields.ts';
import { TRIP_LIMITS } from './limits.ts';
import { heldGripFields } from '../terrain/heldGrip.ts';
import type { HeldGrip } from '../terrain/surface.ts';
import { obstacleFrom } from './obstacleRecord.ts';
import type { Plain } from './reader.ts';
import { Reader } from './reader.ts';
import type { TrackRecord } from './trackRecord.ts';
import { trackFrom, trackRecord, waypointFrom } from './trackRecord.ts';
import type { Trip } from './trip.ts';
import { TRIP_VERSION, upgraded } from './upgrade.ts';
import { vehicleFrom } from './vehicleRecord.ts';
import { say } from '../words/words.ts';

export const TRIP_FORMAT = 'rutline-trip';

/** A trip as it is filed, in a file as in the store. */
export interface TripRecord extends Omit<Trip, 'track'> {
  readonly format: typeof TRIP_FORMAT;
  readonly version: number;
  readonly track: TrackRecord | null;
}

export const TRIP_NAMES = [
  'format',
  'version',
  'id',
  'name',
  'note',
  'radioChannel',
  'direction',
  'track',
  'waypoints',
  'obstacles',
  'heldGrips',
  'vehicles',
];

export function tripRecord(trip: Trip): TripRecord {
  const { track, ...rest } = trip;
  return { format: TRIP_FORMAT, version: TRIP_VERSION, ...rest, track: track && trackRecord(track) };
}

/** Reads a filed trip of this or an older version, checks all of it and lists what is wrong. */
export function tripFrom(value: unknown): Reading<Trip> {
  const refusal = refusalOf(value);
  if (refusal !== null)
    return {
      value: null,
      problems: [
        { severity: 'error', where: say.problem.theFile, what: refusal.what, done: refusal.done, times: 1 },
      ],
    };
  const filed = value as Plain;
  const reader = new Reader();
  const record = upgraded(filed, filed.version as number);
  reader.names(record, '', TRIP_NAMES);
  const track = trackFrom(reader, record.track, 'track');
  const ids = { obstacles: new Set<string>(), photos: new Set<string>(), vehicles: new Set<string>() };
  const each = <T>(
    name: string,
    most: number,
    from: (entry: unknown, where: string, i: number) => T | null,
  ) =>
    reader
      .list(record[name], name, most)
      .map((entry, i) => from(entry, `${name}[${i}]`, i))
      .filter((entry) => entry !== null);

  const trip: Trip = {
    id: reader.id(record.id, 'id', new Set(), 'trip'),
    name: reader.text(record.name, 'name'),
    note: reader.text(record.note, 'note'),
    radioChannel:
      record.radioChannel === undefined
        ? ''
        : reader.text(record.radioChannel, 'radioChannel', TRIP_LIMITS.radioLength),
    direction: reader.values(tripFields, record, '').values.direction,
    track,
    waypoints: each('waypoints', TRIP_LIMITS.waypoints, (entry, where) => waypointFrom(reader, entry, where)),
    obstacles: inOrder(
      reader,
      each('obstacles', TRIP_LIMITS.obstacles, (entry, where, i) =>
        obstacleFrom(reader, entry, where, {
          track,
          ids: ids.obstacles,
          photoIds: ids.photos,
          number: i + 1,
        }),
      ),
    ),
    heldGrips: each('heldGrips', TRIP_LIMITS.heldGrips, (entry, where) => heldGripFrom(reader, entry, where)),
    vehicles: each('vehicles', TRIP_LIMITS.vehicles, (entry, where, i) =>
      vehicleFrom(reader, entry, where, { ids: ids.vehicles, number: i + 1 }),
    ),
  };
  return { value: trip, problems: reader.problems() };
}

/** One whose value cannot be read is held at the least: nothing may look easier for it. */
function heldGripFrom(reader: Reader, value: unknown, where: string): HeldGrip | null {
  const record = reader.record(value, where, Object.keys(heldGripFields));
  if (record === null) return null;
  const { values, whole } = reader.values(heldGripFields, record, where);
  if (!whole) {
    reader.error(where, say.tripFile.heldUnclear, say.tripFile.heldLeftOut);
    return null;
  }
  const { min } = heldGripFields.peak;
  return { ...values, peak: values.peak >= min ? values.peak : min };
}

/** Why a value is not a trip that can be read at all. */
function refusalOf(value: unknown): { readonly what: string; readonly done: string } | null {
  const { format, version } = (value ?? {}) as { readonly format?: unknown; readonly version?: unknown };
  if (format !== TRIP_FORMAT)
    return { what: say.tripFile.noTrip, done: say.tripFile.noTripDone(TRIP_FORMAT) };
  if (!Number.isInteger(version) || (version as number) < 1)
    return { what: say.tripFile.noVersion, done: say.tripFile.exportAgain };
  if ((version as number) > TRIP_VERSION)
    return {
      what: say.tripFile.newer(version as number, TRIP_VERSION),
      done: say.tripFile.update,
    };
  return null;
}

function inOrder(reader: Reader, obstacles: Trip['obstacles']): Trip['obstacles'] {
  const sorted = [...obstacles].sort((a, b) => a.stationM - b.stationM);
  if (sorted.some((obstacle, i) => obstacle !== obstacles[i]))
    reader.warning('obstacles', say.tripFile.notInOrder, say.tripFile.putInOrder);
  return sorted;
}
