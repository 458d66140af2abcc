import type { TrackRow } from '../archive/trackRow.ts';
import type { Offered } from '../archive/clubExchange.ts';
import type { FiledInto, Taken } from '../archive/gradedStore.ts';
import type { Revised } from '../archive/conflict.ts';
import type { GradedTrack } from '../archive/gradedTrack.ts';
import type { Author, Heads } from '../archive/replica.ts';
import type { Shelved } from '../archive/shelved.ts';
import type { StoreProblem } from '../archive/storeProblem.ts';
import { storeProblem } from '../archive/storeProblem.ts';
import type { Trip } from '../archive/trip.ts';
import type { Wanted } from '../archive/wanted.ts';
import type { Reading } from '../problem.ts';
import { spoken } from '../words/words.ts';
import type { ArchiveAnswer, ArchiveAsk, ArchiveChange, ArchiveWork, Met } from './archiveWork.ts';
import { CHANNEL } from './archiveChannel.ts';

type Asked<K extends keyof ArchiveWork> = Awaited<ReturnType<ArchiveWork[K]>>;

interface Waiting {
  readonly answer: (answer: unknown) => void;
  readonly fail: (detail: string) => void;
}

const waiting = new Map<number, Waiting>();

let worker: Worker | null = null;
let asked = 0;

/** The worker of the archive, started when it is first asked; it is started again where it broke. */
function started(): Worker {
  if (worker) return worker;
  worker = new Worker(new URL('./archive.worker.ts', import.meta.url), { type: 'module', name: spoken });
  worker.onmessage = ({ data }: MessageEvent<ArchiveAnswer>) => {
    const one = waiting.get(data.number);
    waiting.delete(data.number);
    if ('answer' in data) one?.answer(data.answer);
    else {
      one?.fail(data.failed);
      if (data.failed.startsWith('RuntimeError')) giveUp(data.failed);
    }
  };
  worker.onerror = (event) => giveUp(event.message);
  return worker;
}

/** After a fault of the engine nothing that it holds can be trusted; what it was asked is answered with a problem. */
function giveUp(detail: string): void {
  worker?.terminate();
  worker = null;
  const all = [...waiting.values()];
  waiting.clear();
  all.forEach(({ fail }) => fail(detail));
}

/** Ends the worker unless it is at something; what it knew by heart it reads again when it is asked again. */
export function restArchive(): void {
  if (waiting.size > 0) return;
  worker?.terminate();
  worker = null;
}

function ask<K extends keyof ArchiveWork>(
  name: K,
  given: Parameters<ArchiveWork[K]>,
  failed: (detail: string) => Asked<K>,
): Promise<Asked<K>> {
  return new Promise((resolve) => {
    const number = asked++;
    waiting.set(number, {
      answer: (answer) => resolve(answer as Asked<K>),
      fail: (detail) => resolve(failed(detail)),
    });
    started().postMessage({ number, name, given } satisfies ArchiveAsk);
  });
}

const unread = (detail: string) => ({ value: null, problems: [storeProblem('failed', detail)] });
const undone = (detail: string) => storeProblem('failed', detail);

/** Rows of graded tracks that fit, in the wanted order; all of them where nothing is wanted. */
export function findTracks(wanted: Wanted = {}): Promise<Reading<readonly TrackRow[]>> {
  return ask('find', [wanted], unread);
}

/** A graded track with its photos, its conflicts, and the heads to give back with what is made of it. */
export function takeTrack(id: string): Promise<Reading<Taken>> {
  return ask('take', [id], unread);
}

/** Graded tracks without the images of photos, in the order of `ids`. */
export function takeTracksBare(ids: readonly string[]): Promise<Reading<readonly GradedTrack[]>> {
  return ask('takeBare', [ids], unread);
}

/** What has to be judged on each track, in the order of `ids`. */
export function placesOfTracks(ids: readonly string[]): Promise<Reading<readonly Met[]>> {
  return ask('places', [ids], unread);
}

/** Who changed what and when, oldest first. */
export function historyOfTrack(id: string): Promise<Reading<readonly Revised[]>> {
  return ask('history', [id], unread);
}

/** A new trip of the id and convoy that are given, on the newest ground of a track. It is stored nowhere yet. */
export function takeOutTrip(
  trackId: string,
  trip: Pick<Trip, 'id' | 'vehicles' | 'direction'>,
): Promise<Reading<Trip>> {
  const { id, vehicles, direction } = trip;
  return ask('takeOut', [trackId, { id, vehicles, direction }], unread);
}

/** The graded track that a trip was taken out of or filed into; null where it was neither. */
export function trackOfTrip(tripId: string): Promise<Reading<string | null>> {
  return ask('filedAs', [tripId], unread);
}

/**
 * Files a trip: back into the track that it was taken out of, else into the one named `into`, else as a new one. `atMs` is
 * when its ground was measured; `allMeasured` says that every obstacle was, also where that changed nothing. On the disk
 * when this answers.
 */
export function fileTrip(
  trip: Trip,
  author: Author,
  into: string | null = null,
  allMeasured = false,
): Promise<Reading<FiledInto>> {
  return ask('file', [trip, author, into, allMeasured], unread);
}

/** Keeps what someone made of a track as `takeTrack` gave it with `heads`; others' changes since then stay. */
export function editTrack(after: GradedTrack, heads: Heads, author: Author): Promise<StoreProblem | null> {
  return ask('edit', [after, heads, author], undone);
}

/** Chooses between values that were entered at once. */
export function chooseClaim(
  trackId: string,
  key: string,
  claimId: string,
  author: Author,
): Promise<StoreProblem | null> {
  return ask('choose', [trackId, key, claimId, author], undone);
}

/** Takes in graded tracks of an open format: adds what the archive lacks, keeps its own where both have something. */
export function joinTracks(
  tracks: readonly GradedTrack[],
  author: Author,
): Promise<Reading<readonly string[]>> {
  return ask('join', [tracks, author], unread);
}

/** Tracks with their history as the bytes of one file, for another device. */
export function copyTracks(ids: readonly string[]): Promise<Reading<Uint8Array<ArrayBuffer>>> {
  return ask('copies', [ids], unread);
}

/** All tracks with their history as such a file, of any size. */
export function copyArchive(): Promise<Reading<Blob>> {
  return ask('wholeArchive', [], unread);
}

/** Merges such a file into the archive; which tracks it held. */
export function mergeCopies(bytes: Uint8Array, nowMs: number): Promise<Reading<readonly string[]>> {
  return ask('merge', [bytes, nowMs], unread);
}

/** What a server that has got as far as `theirs` lacks of a track, and how the track stands here. */
export function offerParcel(id: string, theirs: Heads, base: Heads): Promise<Reading<Offered>> {
  return ask('offerParcel', [id, theirs, base], unread);
}

/** Takes in what a server answered; how far the track has got then. */
export function acceptParcel(id: string, bytes: Uint8Array, nowMs: number): Promise<Reading<Heads>> {
  return ask('acceptParcel', [id, bytes, nowMs], unread);
}

/** Grades tracks by their sizes, and puts that into their rows; a hundred or so at a time, while which nothing else is asked. */
export function regradeTracks(ids: readonly string[]): Promise<StoreProblem | null> {
  return ask('regrade', [ids], undone);
}

/** Takes a track off this device; what is answered puts it back. */
export function removeTrack(id: string): Promise<Reading<Shelved>> {
  return ask('remove', [id], unread);
}

/** Puts back what `removeTrack` took off, history and photos as they were. */
export function putTrackBack(track: Shelved): Promise<StoreProblem | null> {
  return ask('putBack', [track, Date.now()], undone);
}

/**
 * Calls `changed` with what was done whenever this or another window changed the archive, until the returned function is
 * called.
 */
export function watchArchive(changed: (done: ArchiveChange) => void): () => void {
  const channel = new BroadcastChannel(CHANNEL);
  channel.onmessage = ({ data }: MessageEvent<ArchiveChange>) => changed(data);
  return () => channel.close();
}
