import { GRADED_FORMAT } from './gradedRecord.ts';
import { TRIP_FORMAT } from './tripRecord.ts';

/** What a file of JSON is, by its own words. */
export type JsonKind = 'graded track' | 'trip' | 'GeoJSON';

/** Null for anything that is not read. */
export function kindOfJson(value: unknown): JsonKind | null {
  const { format, type } = (value ?? {}) as { readonly format?: unknown; readonly type?: unknown };
  if (format === GRADED_FORMAT) return 'graded track';
  if (format === TRIP_FORMAT) return 'trip';
  return type === 'FeatureCollection' ? 'GeoJSON' : null;
}

/** UTF-16 units, or bytes, from the beginning of a file by which it is told apart before all of it is read. */
export const START_LENGTH = 4_096;

/** Whether a file begins as JSON. */
export function startsAsJson(start: string): boolean {
  return /^\uFEFF?\s*\{/.test(start);
}

/** Whether it begins as a trip: what is called so further in is looked for only by reading it. */
export function startsAsTrip(start: string): boolean {
  const [, format] = /"format"\s*:\s*"([^"]*)"/.exec(start) ?? [];
  return startsAsJson(start) && format === TRIP_FORMAT;
}

/** Whether JSON of so many bytes is more than is held whole, `most`; one of ours has limits of its own. */
export function isTooLargeJson(start: string, bytes: number, most: number): boolean {
  const [, format] = /^\uFEFF?\s*\{\s*"format"\s*:\s*"([^"]*)"/.exec(start) ?? [];
  return bytes > most && format !== GRADED_FORMAT && format !== TRIP_FORMAT;
}
