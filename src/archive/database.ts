import type { DBSchema, IDBPDatabase } from 'idb';
import { openDB } from 'idb';
import type { Photo } from '../terrain/photo.ts';
import type { Reading } from '../problem.ts';
import type { GradedRecord } from './gradedRecord.ts';
import type { StoreProblem } from './storeProblem.ts';
import { problemOf, storeProblem } from './storeProblem.ts';
import type { TakeOut } from './takeOut.ts';
import type { TrackRecord } from './trackRecord.ts';
import type { TrackRow } from './trackRow.ts';
import type { TripRecord } from './tripRecord.ts';

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

export interface FiledTrip {
  /** Without the images of its photos, which stand on a shelf of their own. */
  readonly record: TripRecord;
  /** Whether `tracks` holds the track, which is large and seldom changes. */
  readonly tracked: boolean;
}

/** The shelves of the device's store: first those of trips, then those of the club's graded tracks. */
export interface Shelves extends DBSchema {
  summaries: { key: string; value: TripSummary };
  trips: { key: string; value: FiledTrip };
  tracks: { key: string; value: TrackRecord };
  images: { key: [tripId: string, photoId: string]; value: Photo['image'] };
  /** Each graded track with its history, in pieces that were appended one after the other. */
  replicas: { key: [trackId: string, piece: number]; value: Uint8Array<ArrayBuffer> };
  /** What the pieces amount to today, without the images of photos. */
  graded: { key: string; value: GradedRecord };
  rows: { key: string; value: TrackRow };
  /** By trip. */
  takeOuts: { key: string; value: TakeOut };
  /** `rows`: rises with every change to any graded track, in whatever window. */
  counts: { key: 'rows'; value: number };
}

export type Database = IDBPDatabase<Shelves>;

const NAME = 'rutline';
const VERSION = 3;

let opening: Promise<Database | StoreProblem> | null = null;

/** The database, opened once; it is opened again where the browser or a newer Rutline closed it. */
function opened(): Promise<Database | StoreProblem> {
  const again = () => (opening = null);
  opening ??= new Promise<Database | StoreProblem>((resolve) => {
    openDB<Shelves>(NAME, VERSION, {
      upgrade: (database, oldVersion) => {
        const add = (...shelves: Parameters<Database['createObjectStore']>[0][]) =>
          shelves.forEach((shelf) => database.createObjectStore(shelf));
        if (oldVersion < 1) add('summaries', 'trips', 'tracks');
        if (oldVersion < 2) add('images');
        if (oldVersion < 3) add('replicas', 'graded', 'rows', 'takeOuts', 'counts');
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

/** Does something with the database; every exception of the browser becomes a problem. */
export async function doing(
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

export async function reading<T>(work: (database: Database) => Promise<Reading<T>>): Promise<Reading<T>> {
  let read: Reading<T> = { value: null, problems: [] };
  const problem = await doing(async (database) => {
    read = await work(database);
    return null;
  });
  return problem ? none(problem) : read;
}

export function none<T>(problem: StoreProblem): Reading<T> {
  return { value: null, problems: [problem] };
}

/** Takes back what was written so far, where the browser has not done so by itself. */
export function abandon(work: { readonly done: Promise<void>; abort(): void }): void {
  work.done.catch(() => undefined);
  try {
    work.abort();
  } catch {
    return;
  }
}

/** The keys that begin with `id`: an array sorts after every text and number (Indexed Database API 3.0, W3C, "compare two keys"). */
export function keyedUnder(id: string): IDBKeyRange {
  return IDBKeyRange.bound([id], [id, []]);
}
