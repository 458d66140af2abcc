import type { Reading } from '../problem.ts';
import { toBase64 } from './base64.ts';
import { TRIP_LIMITS } from './limits.ts';
import type { Trip } from './trip.ts';
import { tripFrom, tripRecord } from './tripRecord.ts';
import { say } from '../words/words.ts';

/** A trip as one file of JSON, as `public/trip.schema.json` describes it. */
export function tripToJson(trip: Trip): string {
  return recordToJson(tripRecord(trip));
}

/** Any filed record as JSON; columns become lists, images base64, and what is not known (NaN) null. */
export function recordToJson(record: unknown): string {
  const plain = (_name: string, value: unknown): unknown => {
    if (value instanceof Uint8Array) return toBase64(value);
    return value instanceof Float64Array || value instanceof Uint32Array ? Array.from(value) : value;
  };
  return `${JSON.stringify(record, plain)}\n`;
}

/**
 * Reads a trip file and lists all that is wrong with it. `value` is null where it is no trip, is of a newer version, or
 * is not JSON to its end; anything less is repaired or left out, and said.
 */
export function readTrip(text: string): Reading<Trip> {
  const tooLong = tripTooLong(text.length);
  if (tooLong) return tooLong;
  let value: unknown;
  try {
    value = JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch (error) {
    return refused(
      say.tripFile.notJson(error instanceof Error ? error.message : String(error)),
      say.tripFile.notJsonDone,
    );
  }
  return tripFrom(value);
}

/** The refusal of a trip file of so many UTF-16 units, or bytes, before it is read; null where it is not too long. */
export function tripTooLong(length: number): Reading<Trip> | null {
  const { fileLength } = TRIP_LIMITS;
  return length > fileLength ? refused(say.tripFile.tooLong(fileLength), say.tripFile.chooseTrip) : null;
}

function refused(what: string, done: string): Reading<Trip> {
  return { value: null, problems: [{ severity: 'error', where: say.problem.theFile, what, done, times: 1 }] };
}
