import * as clubExchange from '../archive/clubExchange.ts';
import * as store from '../archive/gradedStore.ts';
import { putBack, remove } from '../archive/shelved.ts';
import type { Bare } from '../archive/gradedStore.ts';
import { wholeArchive } from '../archive/wholeArchive.ts';
import type { Problem, Reading } from '../problem.ts';
import type { Place } from '../convoy/matrix.ts';
import { placesOn } from '../convoy/places.ts';

/** What has to be judged to say who goes on a track. */
export interface Met {
  readonly id: string;
  readonly name: string;
  /** None where the track cannot be read. */
  readonly places: readonly Place[];
  /** What could not be read of it. */
  readonly problems: readonly Problem[];
}

/** Records of the archive as the matrix needs them, without photos. */
async function places(ids: readonly string[]): Promise<Reading<readonly Met[]>> {
  const { value, problems } = await store.takeEachBare(ids);
  return { value: value?.map(metOn) ?? null, problems };
}

function metOn({ id, reading: { value, problems } }: Bare): Met {
  const obstacles = value?.surveyed.map(({ obstacle }) => obstacle) ?? [];
  return { id, name: value?.name ?? '', places: placesOn(value?.track ?? null, obstacles), problems };
}

/** Everything that the worker of the archive can be asked. */
export const ARCHIVE = { ...store, ...clubExchange, remove, putBack, places, wholeArchive };

export type ArchiveWork = typeof ARCHIVE;

/** What needs no history, and so not the engine that keeps it. */
const WITHOUT_HISTORY: ReadonlySet<string> = new Set([
  'find',
  'takeBare',
  'takeEachBare',
  'places',
  'filedAs',
  'regrade',
  'remove',
  'wholeArchive',
] satisfies (keyof ArchiveWork)[]);

export function needsHistory(name: keyof ArchiveWork): boolean {
  return !WITHOUT_HISTORY.has(name);
}

/** What changes the archive; other windows are told of it. */
const CHANGES = [
  'file',
  'edit',
  'choose',
  'join',
  'merge',
  'acceptParcel',
  'regrade',
  'remove',
  'putBack',
] as const satisfies (keyof ArchiveWork)[];

export type ArchiveChange = (typeof CHANGES)[number];

export function changesArchive(name: keyof ArchiveWork): name is ArchiveChange {
  return (CHANGES as readonly string[]).includes(name);
}

/** One question to the worker, and its answer; they find each other by their number. */
export interface ArchiveAsk {
  readonly number: number;
  readonly name: keyof ArchiveWork;
  readonly given: readonly unknown[];
}

/** `failed` where something went wrong that is no problem of what was given. */
export type ArchiveAnswer =
  | { readonly number: number; readonly answer: unknown }
  | { readonly number: number; readonly failed: string };
