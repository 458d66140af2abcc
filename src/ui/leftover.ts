import { photosOf, withPhotos } from '../archive/photoRecord.ts';
import { same, sameJson } from '../archive/same.ts';
import { readTrip, tripToJson } from '../archive/share.ts';
import type { Trip } from '../archive/trip.ts';
import type { Photo } from '../terrain/photo.ts';
import { newId } from './identity.ts';

type Caption = Omit<Photo, 'image'>;

/**
 * What was entered in the last moment before the page went away. The store answers too late for that moment, so it is
 * put where writing is done at once; the track and the images, which are large and stored when they come, stay out.
 */
export interface Leftover {
  /** Where it lies. */
  readonly key: string;
  readonly atMs: number;
  /** When the stored trip that it goes on from was stored, as far as the window knew; null where an older Rutline left it. */
  readonly after: readonly number[] | null;
  /** The trip without its track and without photos. */
  readonly trip: Trip;
  /** The photos of each obstacle, without their images. */
  readonly captions: readonly (readonly Caption[])[];
  /** Whether the track is in the store. If not, it has to be read from its file again. */
  readonly trackIsStored: boolean;
}

interface Kept {
  readonly atMs: number;
  readonly after?: readonly number[];
  readonly text: string;
  readonly captions?: Leftover['captions'];
  readonly trackIsStored: boolean;
}

const KEY = 'rutline.leftover/';

/** Each trip has a place of its own for each window, so that neither another one nor the next page writes over it. */
const here = newId();

function keyHere(tripId: string): string {
  return `${KEY}${tripId}/${here}`;
}

export function leaveBehind(
  trip: Trip,
  trackIsStored: boolean,
  after: readonly number[],
  atMs: number,
): void {
  try {
    const kept: Kept = { atMs, after, text: textOf(trip), captions: captionsOf(trip), trackIsStored };
    localStorage.setItem(keyHere(trip.id), JSON.stringify(kept));
  } catch {
    return;
  }
}

/** All that was left, the last at the end. */
export function leftovers(): Leftover[] {
  try {
    const keys = Array.from({ length: localStorage.length }, (_, i) => localStorage.key(i) ?? '');
    const all = keys.filter((key) => key.startsWith(KEY)).flatMap((key) => leftAt(key) ?? []);
    return all.sort((a, b) => a.atMs - b.atMs);
  } catch {
    return [];
  }
}

function leftAt(key: string): Leftover | null {
  try {
    const kept = JSON.parse(localStorage.getItem(key) ?? 'null') as Kept | null;
    const trip = kept === null ? null : readTrip(kept.text).value;
    if (kept === null || trip === null) return null;
    const { atMs, after = null, captions = [], trackIsStored } = kept;
    return { key, atMs, after, captions, trackIsStored, trip };
  } catch {
    return null;
  }
}

/** What this window left of a trip, which is stored now. */
export function clearOwn(tripId: string): void {
  clear(keyHere(tripId));
}

export function clearLeftover({ key }: Leftover): void {
  clear(key);
}

function clear(key: string): void {
  try {
    localStorage.removeItem(key);
  } catch {
    return;
  }
}

/** What was left, with the track and the images that are stored; `lost` photos had not been stored yet. */
export function joined({ trip, captions }: Leftover, stored: Trip | null): { whole: Trip; lost: number } {
  const images = new Map(photosOf(stored?.obstacles ?? []).map(({ id, image }) => [id, image]));
  const obstacles = trip.obstacles.map((obstacle, i) => ({
    ...obstacle,
    photos: (captions[i] ?? []).flatMap(({ id, caption }): Photo[] => {
      const image = images.get(id);
      return image === undefined ? [] : [{ id, caption, image }];
    }),
  }));
  const whole = { ...trip, track: stored?.track ?? null, obstacles };
  return { whole, lost: captions.flat().length - photosOf(obstacles).length };
}

/** Whether two trips say the same, but for their track and what their photos show. */
export function sameButTrack(a: Trip, b: Trip): boolean {
  return sameJson(textOf(a), textOf(b)) && same(captionsOf(a), captionsOf(b));
}

function textOf(trip: Trip): string {
  return tripToJson({ ...trip, track: null, obstacles: withPhotos(trip.obstacles, () => null) });
}

function captionsOf({ obstacles }: Trip): Leftover['captions'] {
  return obstacles.map(({ photos }) => photos.map(({ id, caption }) => ({ id, caption })));
}
