import * as clubExchange from '../archive/clubExchange.ts';
import * as store from '../archive/gradedStore.ts';
import type { GradedTrack } from '../archive/gradedTrack.ts';
import { wholeArchive } from '../archive/wholeArchive.ts';
import type { Reading } from '../problem.ts';
import type { Place } from '../convoy/matrix.ts';
import { placesOn } from '../convoy/places.ts';

/** What has to be judged to say who goes on a track. */
export interface Met {
  readonly id: string;
  readonly name: string;
  readonly places: readonly Place[];
}

/** Records of the archive as the matrix needs them, without photos. */
async function places(ids: readonly string[]): Promise<Reading<readonly Met[]>> {
  const { value, problems } = await store.takeBare(ids);
  return { value: value?.map(metOn) ?? null, problems };
}

function metOn({ id, name, track, surveyed }: GradedTrack): Met {
  const obstacles = surveyed.map(({ obstacle }) => obstacle);
  return { id, name, places: placesOn(track, obstacles) };
}

/** Everything that the worker of the archive can be asked. */
export const ARCHIVE = { ...store, ...clubExchange, places, wholeArchive };

export type ArchiveWork = typeof ARCHIVE;

/** What needs no history, and so not the engine that keeps it. */
const WITHOUT_HISTORY: ReadonlySet<string> = new Set([
  'find',
  'takeBare',
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
const CHANGES: ReadonlySet<string> = new Set([
  'file',
  'edit',
  'choose',
  'join',
  'merge',
  'acceptParcel',
  'regrade',
  'remove',
] satisfies (keyof ArchiveWork)[]);

export function changesArchive(name: keyof ArchiveWork): boolean {
  return CHANGES.has(name);
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
