import type { Reading } from '../problem.ts';
import type { Track } from '../route/track.ts';
import type { Photo } from '../terrain/photo.ts';
import type { Database, TripSummary } from './database.ts';
import { abandon, ANSWER_MS, doing, keyedUnder, none, reading } from './database.ts';
import { photosOf, withImages, withPhotos } from './photoRecord.ts';
import { recordToJson } from './share.ts';
import type { StoreProblem } from './storeProblem.ts';
import { storeProblem } from './storeProblem.ts';
import { trackRecord } from './trackRecord.ts';
import type { Trip } from './trip.ts';
import { tripFrom, tripRecord } from './tripRecord.ts';
import { TRIP_VERSION } from './upgrade.ts';

export type { TripSummary } from './database.ts';

type Image = Photo['image'];

const ONE_A_TRIP = ['summaries', 'trips', 'tracks'] as const;
const ALL = [...ONE_A_TRIP, 'images'] as const;
const NO_IMAGE: Image = new Uint8Array(0);

interface Seen {
  readonly updatedMs: number;
  readonly track: Track | null;
  readonly images: ReadonlySet<Image>;
}

/**
 * Each trip as this window last loaded or stored it: when that was stored, by which another window's work is noticed,
 * and the track and the images that the store then held; what is not among them must be written anew.
 */
const seen = new Map<string, Seen>();

/** When this window last began to store each trip: where the database fell silent meanwhile, it may be on the disk or not. */
const begun = new Map<string, number>();

/** A change waits for the one before it, so that a window never takes its own work for another's. */
let changing: Promise<unknown> = Promise.resolve();

/** The trips on this device, the one stored last first. */
export function list(): Promise<Reading<readonly TripSummary[]>> {
  return reading(async (database) => {
    const all = await database.getAll('summaries');
    return { value: all.sort((a, b) => b.updatedMs - a.updatedMs), problems: [] };
  }, ANSWER_MS.reading);
}

/** A stored trip, checked as a file would be. */
export function load(id: string): Promise<Reading<Trip>> {
  return reading(async (database) => {
    const { filed, summary, track, images } = await taken(database, id);
    if (!filed) return none(storeProblem('missing'));
    const version: unknown = filed.record?.version;
    if (typeof version === 'number' && version > TRIP_VERSION) return none(storeProblem('newer version'));
    const record = { ...filed.record, track: filed.tracked ? track : null };
    const read = tripFrom(withImages(record, images));
    if (read.value === null) return { value: null, problems: [storeProblem('corrupt'), ...read.problems] };
    const asFiled = read.problems.length === 0 && version === TRIP_VERSION;
    seen.set(id, {
      updatedMs: summary?.updatedMs ?? 0,
      track: asFiled ? read.value.track : null,
      images: new Set(asFiled ? imagesOf(read.value) : []),
    });
    return read;
  }, ANSWER_MS.reading);
}

/** The stored record of a trip that cannot be read, as text for a file, so that nothing entered is lost. */
export function rescue(id: string): Promise<Reading<string>> {
  return reading(async (database) => {
    const { filed, track, images } = await taken(database, id);
    if (!filed) return none(storeProblem('missing'));
    const record = withImages({ ...filed.record, track: track ?? null }, images);
    return { value: recordToJson(record), problems: [] };
  }, ANSWER_MS.reading);
}

/**
 * Stores a trip; when this answers null, it is on the disk; where it says `silent`, nobody knows. Refuses to write over
 * what another window stored since this one loaded or stored the trip: load it again, or store this one under another id.
 * `nowMs` is the time of day.
 */
export function save(trip: Trip, nowMs: number): Promise<StoreProblem | null> {
  return change((database) => put(database, trip, nowMs));
}

export function remove(id: string): Promise<StoreProblem | null> {
  return change(async (database) => {
    const work = database.transaction(ALL, 'readwrite', { durability: 'strict' });
    const removed = ONE_A_TRIP.map((shelf) => work.objectStore(shelf).delete(id));
    await Promise.all([...removed, work.objectStore('images').delete(keyedUnder(id)), work.done]);
    seen.delete(id);
    return null;
  });
}

/** When what this window knows of a stored trip was stored; nothing where it knows of none. */
export function knownOf(id: string): number[] {
  return [seen.get(id)?.updatedMs, begun.get(id)].filter((ms) => ms !== undefined);
}

/** Asks the browser never to clear the trips by itself to make room; whether it agreed. */
export async function keep(): Promise<boolean> {
  try {
    return (await navigator.storage.persisted()) || (await navigator.storage.persist());
  } catch {
    return false;
  }
}

/** All of a trip or nothing of it. */
async function put(database: Database, trip: Trip, nowMs: number): Promise<StoreProblem | null> {
  const { id, name, track } = trip;
  const work = database.transaction(ALL, 'readwrite', { durability: 'strict' });
  const summaries = work.objectStore('summaries');
  const trips = work.objectStore('trips');
  const tracks = work.objectStore('tracks');
  const images = work.objectStore('images');
  const [stored, shelved] = await Promise.all([summaries.get(id), images.getAllKeys(keyedUnder(id))]);
  const last = seen.get(id);
  const mine = stored?.updatedMs === last?.updatedMs ? last : undefined;
  const photos = photosOf(trip.obstacles);
  const obstacles = withPhotos(trip.obstacles, (photo) => ({ ...photo, image: NO_IMAGE }));
  if (stored && !mine && stored.updatedMs !== begun.get(id)) return storeProblem('changed elsewhere');
  const updatedMs = Math.max(nowMs, (stored?.updatedMs ?? 0) + 1);
  begun.set(id, updatedMs);
  const lengthM = track ? track.distanceM[track.length - 1] : 0;
  try {
    const writes: Promise<unknown>[] = [
      summaries.put({ id, name, updatedMs, lengthM, obstacleCount: trip.obstacles.length }, id),
      trips.put({ record: tripRecord({ ...trip, track: null, obstacles }), tracked: track !== null }, id),
    ];
    if (track === null) writes.push(tracks.delete(id));
    else if (!stored || mine?.track !== track) writes.push(tracks.put(trackRecord(track), id));
    for (const photo of photos)
      if (!stored || !mine?.images.has(photo.image)) writes.push(images.put(photo.image, [id, photo.id]));
    for (const key of shelved)
      if (!photos.some((photo) => photo.id === key[1])) writes.push(images.delete(key));
    await Promise.all([...writes, work.done]);
  } catch (error) {
    abandon(work);
    throw error;
  }
  // One that answers too late may come behind the next.
  if ((seen.get(id)?.updatedMs ?? 0) < updatedMs)
    seen.set(id, { updatedMs, track, images: new Set(imagesOf(trip)) });
  return null;
}

function imagesOf({ obstacles }: Trip): Image[] {
  return photosOf(obstacles).map(({ image }) => image);
}

async function taken(database: Database, id: string) {
  const work = database.transaction(ALL);
  const [filed, summary, track, keys, values] = await Promise.all([
    work.objectStore('trips').get(id),
    work.objectStore('summaries').get(id),
    work.objectStore('tracks').get(id),
    work.objectStore('images').getAllKeys(keyedUnder(id)),
    work.objectStore('images').getAll(keyedUnder(id)),
  ]);
  const images = new Map<unknown, Image>(keys.map(([, photoId], i) => [photoId, values[i]]));
  return { filed, summary, track, images };
}

function change(work: (database: Database) => Promise<StoreProblem | null>): Promise<StoreProblem | null> {
  const changed = changing.then(() => doing(work, ANSWER_MS.writing));
  changing = changed;
  return changed;
}
