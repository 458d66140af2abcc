import type { DBSchema, IDBPDatabase } from 'idb';
import { openDB } from 'idb';
import type { Reading } from '../problem.ts';
import type { Track } from '../route/track.ts';
import type { Photo } from '../terrain/photo.ts';
import { photosOf, withImages, withPhotos } from './photoRecord.ts';
import { recordToJson } from './share.ts';
import type { StoreProblem } from './storeProblem.ts';
import { problemOf, storeProblem } from './storeProblem.ts';
import type { TrackRecord } from './trackRecord.ts';
import { trackRecord } from './trackRecord.ts';
import type { Trip } from './trip.ts';
import type { TripRecord } from './tripRecord.ts';
import { tripFrom, tripRecord } from './tripRecord.ts';
import { TRIP_VERSION } from './upgrade.ts';

/** What a list of trips shows, read without the trips themselves. */
export interface TripSummary {
  readonly id: string;
  readonly name: string;
  /** When it was last stored, milliseconds since 1970-01-01T00:00:00Z; rises with every storing. */
  readonly updatedMs: number;
  /** Of the track; 0 without one. */
  readonly lengthM: number;
  readonly obstacleCount: number;
}

type Image = Photo['image'];

interface Filed {
  /** Without the images of its photos, which stand on a shelf of their own. */
  readonly record: TripRecord;
  /** Whether `tracks` holds the track, which is large and seldom changes. */
  readonly tracked: boolean;
}

interface Shelves extends DBSchema {
  summaries: { key: string; value: TripSummary };
  trips: { key: string; value: Filed };
  tracks: { key: string; value: TrackRecord };
  images: { key: [tripId: string, photoId: string]; value: Image };
}

type Database = IDBPDatabase<Shelves>;

const NAME = 'rutline';
const VERSION = 2;
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

let opening: Promise<Database | StoreProblem> | null = null;

/** A change waits for the one before it, so that a window never takes its own work for another's. */
let changing: Promise<unknown> = Promise.resolve();

/** The trips on this device, the one stored last first. */
export function list(): Promise<Reading<readonly TripSummary[]>> {
  return reading(async (database) => {
    const all = await database.getAll('summaries');
    return { value: all.sort((a, b) => b.updatedMs - a.updatedMs), problems: [] };
  });
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
  });
}

/** The stored record of a trip that cannot be read, as text for a file, so that nothing entered is lost. */
export function rescue(id: string): Promise<Reading<string>> {
  return reading(async (database) => {
    const { filed, track, images } = await taken(database, id);
    if (!filed) return none(storeProblem('missing'));
    const record = withImages({ ...filed.record, track: track ?? null }, images);
    return { value: recordToJson(record), problems: [] };
  });
}

/**
 * Stores a trip; when this answers null, it is on the disk. Refuses to write over what another window stored since this
 * one loaded or stored the trip: load it again, or store this one under another id. `nowMs` is the time of day.
 */
export function save(trip: Trip, nowMs: number): Promise<StoreProblem | null> {
  return change((database) => put(database, trip, nowMs));
}

export function remove(id: string): Promise<StoreProblem | null> {
  return change(async (database) => {
    const work = database.transaction(ALL, 'readwrite', { durability: 'strict' });
    const removed = ONE_A_TRIP.map((shelf) => work.objectStore(shelf).delete(id));
    await Promise.all([...removed, work.objectStore('images').delete(imagesKeyed(id)), work.done]);
    seen.delete(id);
    return null;
  });
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
  const [stored, shelved] = await Promise.all([summaries.get(id), images.getAllKeys(imagesKeyed(id))]);
  const mine = seen.get(id);
  const photos = photosOf(trip.obstacles);
  const obstacles = withPhotos(trip.obstacles, (photo) => ({ ...photo, image: NO_IMAGE }));
  if (stored && stored.updatedMs !== mine?.updatedMs) return storeProblem('changed elsewhere');
  const updatedMs = Math.max(nowMs, (stored?.updatedMs ?? 0) + 1);
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
  seen.set(id, { updatedMs, track, images: new Set(imagesOf(trip)) });
  return null;
}

/** The keys of all images of a trip: an array sorts after every text (Indexed Database API 3.0, W3C, "compare two keys"). */
function imagesKeyed(id: string): IDBKeyRange {
  return IDBKeyRange.bound([id], [id, []]);
}

function imagesOf({ obstacles }: Trip): Image[] {
  return photosOf(obstacles).map(({ image }) => image);
}

/** Takes back what was written so far, where the browser has not done so by itself. */
function abandon(work: { readonly done: Promise<void>; abort(): void }): void {
  work.done.catch(() => undefined);
  try {
    work.abort();
  } catch {
    return;
  }
}

async function taken(database: Database, id: string) {
  const work = database.transaction(ALL);
  const [filed, summary, track, keys, values] = await Promise.all([
    work.objectStore('trips').get(id),
    work.objectStore('summaries').get(id),
    work.objectStore('tracks').get(id),
    work.objectStore('images').getAllKeys(imagesKeyed(id)),
    work.objectStore('images').getAll(imagesKeyed(id)),
  ]);
  const images = new Map<unknown, Image>(keys.map(([, photoId], i) => [photoId, values[i]]));
  return { filed, summary, track, images };
}

/** The database, opened once; it is opened again where the browser or a newer Rutline closed it. */
function opened(): Promise<Database | StoreProblem> {
  const again = () => (opening = null);
  opening ??= new Promise<Database | StoreProblem>((resolve) => {
    openDB<Shelves>(NAME, VERSION, {
      upgrade: (database, oldVersion) => {
        if (oldVersion < 1) ONE_A_TRIP.forEach((shelf) => database.createObjectStore(shelf));
        if (oldVersion < 2) database.createObjectStore('images');
      },
      blocked: () => resolve(storeProblem('blocked')),
      blocking: (_mine, _theirs, event) => {
        (event.target as IDBDatabase).close();
        again();
      },
      terminated: again,
    }).then(resolve, (error: unknown) => {
      const problem = problemOf(error);
      const known = problem.trouble === 'newer version' || problem.trouble === 'full';
      resolve(known ? problem : storeProblem('not available', problem.what));
    });
  }).then((answer) => {
    if ('trouble' in answer) again();
    return answer;
  });
  return opening;
}

async function doing(
  work: (database: Database) => Promise<StoreProblem | null>,
): Promise<StoreProblem | null> {
  if (typeof indexedDB === 'undefined') return storeProblem('not available');
  try {
    const database = await opened();
    return 'trouble' in database ? database : await work(database);
  } catch (error) {
    return problemOf(error);
  }
}

function change(work: (database: Database) => Promise<StoreProblem | null>): Promise<StoreProblem | null> {
  const changed = changing.then(() => doing(work));
  changing = changed;
  return changed;
}

async function reading<T>(work: (database: Database) => Promise<Reading<T>>): Promise<Reading<T>> {
  let read: Reading<T> = { value: null, problems: [] };
  const problem = await doing(async (database) => {
    read = await work(database);
    return null;
  });
  return problem ? none(problem) : read;
}

function none<T>(problem: StoreProblem): Reading<T> {
  return { value: null, problems: [problem] };
}
