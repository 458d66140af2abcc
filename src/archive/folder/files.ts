import { outText } from '../out/formats.ts';
import { asTrip } from '../filed.ts';
import type { GradedTrack } from '../gradedTrack.ts';
import { gradedRecord } from '../gradedRecord.ts';
import { recordToJson } from '../share.ts';

export interface NamedFile {
  readonly name: string;
  readonly bytes: Uint8Array<ArrayBuffer>;
}

/**
 * The files of one graded track: itself, whole, as JSON, and then as GPX for other programs. They share a name that no
 * other has: `taken` holds those before it, in lower case.
 */
export function filesOf(graded: GradedTrack, taken: Set<string>): NamedFile[] {
  const stem = stemOf(graded.name);
  let name = stem;
  for (let n = 2; taken.has(name.toLowerCase()); n++) name = `${stem} ${n}`;
  taken.add(name.toLowerCase());
  const encoder = new TextEncoder();
  return [
    { name: `${name}.json`, bytes: encoder.encode(recordToJson(gradedRecord(graded))) },
    { name: `${name}.gpx`, bytes: encoder.encode(outText(asTrip(graded), 'gpx', 'metric')) },
  ];
}

/** A name that every system takes for a file, without its ending. */
function stemOf(name: string): string {
  const safe = name
    .normalize('NFC')
    .replace(/[^\p{L}\p{N} _-]+/gu, ' ')
    .replace(/\s+/g, ' ')
    .trim()
    .slice(0, 80)
    .trim();
  return safe === '' || /^(con|prn|aux|nul|com\d|lpt\d)$/i.test(safe) ? `track ${safe}`.trim() : safe;
}
