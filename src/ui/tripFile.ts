import { tripToJson } from '../archive/share.ts';
import type { Trip } from '../archive/trip.ts';
import { say } from '../words/words.ts';

/** Hands the trip to the person as a file. */
export function saveTripFile(trip: Trip): void {
  saveText(tripToJson(trip), `${fileName(trip.name)}.json`);
}

export function saveText(text: string, name: string, type = 'application/json'): void {
  saveBlob(new Blob([text], { type }), name);
}

export function saveBlob(blob: Blob, name: string): void {
  const url = URL.createObjectURL(blob);
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}

/** A name that every system takes for a file. */
export function fileName(name: string): string {
  const safe = name
    .normalize('NFC')
    .replace(/[^\p{L}\p{N} ._-]+/gu, ' ')
    .replace(/\s+/g, ' ')
    .replace(/^[ .]+|[ .]+$/g, '')
    .slice(0, 80);
  return safe === '' ? say.files.unnamedFile : safe;
}
