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

/**
 * How long the database may be silent: where a process of the browser died, it may never answer. Twenty photos are read in
 * a tenth of a second; what is written takes longer, on a slow card above all. Too short says of what is slow that it does
 * not answer, and is tried again.
 */
export const ANSWER_MS = { opening: 15_000, reading: 15_000, writing: 30_000 } as const;

let opening: Promise<Database | StoreProblem> | null = null;

/** The database, opened once; it is opened again where the browser or a newer Rutline closed it, or where it fell silent. */
function opened(): Promise<Database | StoreProblem> {
  const again = () => (opening = null);
  opening ??= within(ANSWER_MS.opening, openedNow(again)).then((answer) => {
    if ('trouble' in answer) again();
    return answer;
  });
  return opening;
}

function openedNow(again: () => void): Promise<Database | StoreProblem> {
  return new Promise((resolve) => {
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
  });
}

/** The answer, or that there was none in time. Work that answers too late is neither undone nor waited for. */
async function within<T>(limitMs: number, work: Promise<T>): Promise<T | StoreProblem> {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const silence = new Promise<StoreProblem>((resolve) => {
    timer = setTimeout(() => resolve(storeProblem('silent')), limitMs);
  });
  try {
    return await Promise.race([work, silence]);
  } finally {
    clearTimeout(timer);
  }
}

/**
 * Does something with the database; every exception of the browser becomes a problem, and so does its silence where the
 * work has a limit.
 */
export async function doing(
  work: (database: Database) => Promise<StoreProblem | null>,
  limitMs = Infinity,
): Promise<StoreProblem | null> {
  if (typeof indexedDB === 'undefined') return storeProblem('not available');
  try {
    const database = await opened();
    if ('trouble' in database) return database;
    if (limitMs === Infinity) return await work(database);
    const problem = await within(limitMs, work(database));
    if (problem?.trouble === 'silent') leave(database);
    return problem;
  } catch (error) {
    return problemOf(error);
  }
}

export async function reading<T>(
  work: (database: Database) => Promise<Reading<T>>,
  limitMs?: number,
): Promise<Reading<T>> {
  let read: Reading<T> = { value: null, problems: [] };
  const problem = await doing(async (database) => {
    read = await work(database);
    return null;
  }, limitMs);
  return problem ? none(problem) : read;
}

/** Whoever asks next opens it anew: a connection that fell silent stays so. */
function leave(database: Database): void {
  opening = null;
  database.close();
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
