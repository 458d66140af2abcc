import { readTrip, tripToJson } from '../archive/share.ts';
import type { Trip } from '../archive/trip.ts';

/**
 * What was entered in the last moment before the page went away. The store answers too late for that moment, so it is
 * put where writing is done at once; the track, which is large and stored when it is loaded, stays out.
 */
export interface Leftover {
  readonly atMs: number;
  /** The trip without its track. */
  readonly trip: Trip;
  /** Whether the track is in the store. If not, it has to be read from its file again. */
  readonly trackIsStored: boolean;
}

interface Kept {
  readonly atMs: number;
  readonly text: string;
  readonly trackIsStored: boolean;
}

const KEY = 'rutline.leftover';

export function leaveBehind(trip: Trip, trackIsStored: boolean, atMs: number): void {
  try {
    localStorage.setItem(KEY, JSON.stringify({ atMs, text: textOf(trip), trackIsStored }));
  } catch {
    return;
  }
}

export function leftover(): Leftover | null {
  try {
    const kept = JSON.parse(localStorage.getItem(KEY) ?? 'null') as Kept | null;
    const trip = kept === null ? null : readTrip(kept.text).value;
    return kept === null || trip === null ? null : { ...kept, trip };
  } catch {
    return null;
  }
}

export function clearLeftover(): void {
  try {
    localStorage.removeItem(KEY);
  } catch {
    return;
  }
}

/** Whether two trips say the same, but for their track. */
export function sameButTrack(a: Trip, b: Trip): boolean {
  return textOf(a) === textOf(b);
}

function textOf(trip: Trip): string {
  return tripToJson({ ...trip, track: null });
}
