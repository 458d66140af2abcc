import { outText } from '../out/formats.ts';
import { asTrip } from '../filed.ts';
import type { GradedTrack } from '../gradedTrack.ts';
import { gradedRecord } from '../gradedRecord.ts';
import { recordToJson, tripToJson } from '../share.ts';

/** Of the name of a trip that was written beside its graded track. */
const TRIP_ENDING = '.trip.json';

/** What the files of one graded track have in common, in lower case: the name without an ending. */
export function stemOf(name: string): string {
  const lower = name.toLowerCase();
  return lower.endsWith(TRIP_ENDING) ? lower.slice(0, -TRIP_ENDING.length) : lower.replace(/\.[^.]*$/, '');
}

export interface NamedFile {
  readonly name: string;
  readonly bytes: Uint8Array<ArrayBuffer>;
}

/**
 * The files of one graded track: itself, whole, as JSON; as it is today, as a trip that any desk opens; and as GPX for other
 * programs. They share a name that no other has: `taken` holds those before it, in lower case.
 */
export function filesOf(graded: GradedTrack, taken: Set<string>): NamedFile[] {
  const stem = safeName(graded.name);
  let name = stem;
  for (let n = 2; taken.has(name.toLowerCase()); n++) name = `${stem} ${n}`;
  taken.add(name.toLowerCase());
  const encoder = new TextEncoder();
  const trip = asTrip(graded);
  return [
    { name: `${name}.json`, bytes: encoder.encode(recordToJson(gradedRecord(graded))) },
    { name: `${name}${TRIP_ENDING}`, bytes: encoder.encode(tripToJson(trip)) },
    { name: `${name}.gpx`, bytes: encoder.encode(outText(trip, 'gpx', 'metric')) },
  ];
}

/** A name that every system takes for a file, without its ending. */
function safeName(name: string): string {
  const safe = name
    .normalize('NFC')
    .replace(/[^\p{L}\p{N} _-]+/gu, ' ')
    .replace(/\s+/g, ' ')
    .trim()
    .slice(0, 80)
    .trim();
  return safe === '' || /^(con|prn|aux|nul|com\d|lpt\d)$/i.test(safe) ? `track ${safe}`.trim() : safe;
}
