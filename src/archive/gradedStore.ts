import type { Problem, Reading } from '../problem.ts';
import type { Direction } from '../terrain/obstacle.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import { say } from '../words/words.ts';
import { BoxIndex } from './boxIndex.ts';
import type { Conflict, Revised } from './conflict.ts';
import { conflictsOf, historyOf, resolved } from './conflict.ts';
import { doing, keyedUnder, none, reading } from './database.ts';
import { copiesFrom, copiesToBytes } from './exchange.ts';
import type { Filing } from './filing.ts';
import { graded, gradedAnew, gradedBeside, joined, tripOf } from './filing.ts';
import { gradedFrom } from './gradedRecord.ts';
import { edited, editedAt, firstFiled, gradedOf } from './gradedReplica.ts';
import { changed, GRADED_SHELVES, withReplica } from './gradedShelf.ts';
import type { GradedTrack } from './gradedTrack.ts';
import type { Author, Heads, Replica } from './replica.ts';
import {
  emptyReplica,
  free,
  hasCome,
  headsOf,
  merged,
  replicaFrom,
  replicaToBytes,
  slotsOf,
} from './replica.ts';
import { same } from './same.ts';
import type { StoreProblem } from './storeProblem.ts';
import { trackProblem } from './storeProblem.ts';
import type { TakeOut } from './takeOut.ts';
import type { Levels, TrackRow } from './trackRow.ts';
import type { Trip } from './trip.ts';
import type { Wanted } from './wanted.ts';
import { found } from './wanted.ts';

/** A graded track as it lies in the archive, and as it stood when it was read. */
export interface Taken {
  readonly graded: GradedTrack;
  /** To be given back with what was made of it. */
  readonly heads: Heads;
  readonly conflicts: readonly Conflict[];
}

/** Rows with their boxes, as of a count of changes that the database holds. */
let known: { readonly count: number; readonly rows: readonly TrackRow[]; readonly index: BoxIndex } | null =
  null;

/** Tracks of the archive, the tracks themselves unread. Asks the database whether anything changed, in whatever window. */
export function find(wanted: Wanted): Promise<Reading<readonly TrackRow[]>> {
  return reading(async (database) => {
    const work = database.transaction(['rows', 'counts']);
    const count = (await work.objectStore('counts').get('rows')) ?? 0;
    if (known?.count !== count) {
      const rows = await work.objectStore('rows').getAll();
      known = { count, rows, index: new BoxIndex(rows.map(({ box }) => box)) };
    }
    return { value: found(known.rows, known.index, wanted), problems: [] };
  });
}

/** A graded track with everything, read out of its history. */
export function take(id: string): Promise<Reading<Taken>> {
  return withReplica(id, (replica) => {
    const { value, problems } = gradedOf(replica);
    if (value === null) return { value, problems };
    return { value: { graded: value, heads: headsOf(replica), conflicts: conflictsOf(replica) }, problems };
  });
}

/** Graded tracks without the images of their photos, in the order of `ids`; those that are not there are left out. */
export function takeBare(ids: readonly string[]): Promise<Reading<readonly GradedTrack[]>> {
  return reading(async (database) => {
    const shelf = database.transaction('graded').store;
    const records = await Promise.all(ids.map((id) => shelf.get(id)));
    const readings = records.flatMap((record) => (record ? [gradedFrom(record)] : []));
    return {
      value: readings.flatMap(({ value }) => value ?? []),
      problems: readings.flatMap(({ problems }) => problems),
    };
  });
}

/** Who changed what and when, oldest first. */
export function history(id: string): Promise<Reading<readonly Revised[]>> {
  return withReplica(id, (replica) => ({ value: historyOf(replica), problems: [] }));
}

/** A trip on the newest ground of a graded track, with `vehicles`; filed back, it is compared with the ground of today. */
export function takeOut(
  id: string,
  trip: { readonly id: string; readonly vehicles: readonly Vehicle[]; readonly direction: Direction },
): Promise<Reading<Trip>> {
  return reading(async (database) => {
    const taken = await take(id);
    if (taken.value === null) return { value: null, problems: taken.problems };
    const { graded, heads } = taken.value;
    const noted: TakeOut = { tripId: trip.id, trackId: id, heads };
    const work = database.transaction('takeOuts', 'readwrite', { durability: 'strict' });
    await Promise.all([work.store.put(noted, trip.id), work.done]);
    return { value: tripOf(graded, trip), problems: taken.problems };
  });
}

/** The graded track that a trip was taken out of or filed into; null where it was neither. */
export function filedAs(tripId: string): Promise<Reading<string | null>> {
  return reading(async (database) => {
    const noted = await database.get('takeOuts', tripId);
    return { value: noted?.trackId ?? null, problems: [] };
  });
}

/** What filing came to. */
export interface FiledInto {
  readonly id: string;
  /** Obstacles whose ground was measured anew, with this. */
  readonly newVisits: number;
}

/**
 * Files a trip: back into the track that it was taken out of; into the one named `into`; or else as one that the archive
 * does not have yet. What others changed meanwhile stays.
 */
export function file(trip: Trip, author: Author, into: string | null = null): Promise<Reading<FiledInto>> {
  return reading(async (database) => {
    const noted = await database.get('takeOuts', trip.id);
    const id = into ?? noted?.trackId ?? trip.id;
    const known = noted?.trackId === id ? noted.heads : null;
    const filingInto = (replica: Replica): Filing => ({ ...author, newId: slotsOf(replica) });
    let newVisits = 0;
    let heads: Heads | null = null;
    const problems: Problem[] = [];
    const problem = await changed(
      database,
      id,
      author.atMs,
      (now) => {
        if (now === null) {
          newVisits = trip.obstacles.length;
          const first = firstFiled(gradedAnew(trip, id, filingInto(emptyReplica())), author);
          heads = headsOf(first);
          return first;
        }
        const base = known && hasCome(now, known) ? known : null;
        const read = gradedOf(now, base);
        problems.push(...read.problems);
        if (read.value === null) return trackProblem('corrupt');
        const after = (base ? graded : gradedBeside)(trip, read.value, filingInto(now));
        newVisits = visitCount(after) - visitCount(read.value);
        const edit = editedAt(now, after, author, base);
        heads = base && edit.heads;
        return edit.replica;
      },
      () => ({ tripId: trip.id, trackId: id, heads }),
    );
    return problem ? none(problem) : { value: { id, newVisits }, problems };
  });
}

function visitCount({ surveyed }: GradedTrack): number {
  return surveyed.reduce((sum, { visits }) => sum + visits.length, 0);
}

/** Keeps what someone made of a track that they saw as it was at `heads`. What others changed meanwhile stays. */
export function edit(after: GradedTrack, heads: Heads, author: Author): Promise<StoreProblem | null> {
  return doing((database) =>
    changed(database, after.id, author.atMs, (now) => {
      if (now === null || !hasCome(now, heads)) return trackProblem('missing');
      return edited(now, after, author, heads);
    }),
  );
}

/** Chooses one of the values that were entered at once. Says `changed elsewhere` where that is no longer the question. */
export function choose(
  id: string,
  key: string,
  claimId: string,
  author: Author,
): Promise<StoreProblem | null> {
  return doing((database) =>
    changed(database, id, author.atMs, (now) => {
      if (now === null) return trackProblem('missing');
      return resolved(now, key, claimId, author) ?? trackProblem('changed elsewhere');
    }),
  );
}

/**
 * Takes graded tracks out of a file of an open format, which has no history. What the archive does not have is added; where
 * both have something, the archive's stays, and a warning says so.
 */
export function join(tracks: readonly GradedTrack[], author: Author): Promise<Reading<readonly string[]>> {
  return reading(async (database) => {
    const problems: Problem[] = [];
    for (const track of tracks) {
      const problem = await changed(database, track.id, author.atMs, (now) => {
        if (now === null) return firstFiled(track, author);
        const own = gradedOf(now).value;
        if (own === null) return trackProblem('corrupt');
        const all = joined(own, track);
        if (!same(joined(track, own), all)) problems.push(ownKept(own));
        return edited(now, all, author);
      });
      if (problem) problems.push(problem);
    }
    return { value: tracks.map(({ id }) => id), problems };
  });
}

/** Graded tracks with their whole history as one file, for another device. */
export function copies(ids: readonly string[]): Promise<Reading<Uint8Array<ArrayBuffer>>> {
  return reading(async (database) => {
    const shelf = database.transaction('replicas').store;
    const all = await Promise.all(ids.map((id) => shelf.getAll(keyedUnder(id))));
    const replicas = all.filter((pieces) => pieces.length > 0).map(replicaFrom);
    const whole = replicas.filter((replica) => replica !== null);
    const bytes = copiesToBytes(whole.map(replicaToBytes));
    whole.forEach(free);
    return { value: bytes, problems: whole.length < replicas.length ? [trackProblem('corrupt')] : [] };
  });
}

/** Merges a file of another device into the archive: afterwards both have everything of both. Answers which tracks it held. */
export function merge(bytes: Uint8Array, nowMs: number): Promise<Reading<readonly string[]>> {
  return reading(async (database) => {
    const read = copiesFrom(bytes);
    if (read.value === null) return { value: null, problems: read.problems };
    const problems: Problem[] = [...read.problems];
    const ids: string[] = [];
    for (const { id, replica } of read.value) {
      const problem = await changed(database, id, nowMs, (now) => merged(now ?? emptyReplica(), replica));
      if (problem) problems.push(problem);
      else ids.push(id);
      free(replica);
    }
    return { value: ids, problems };
  });
}

/** Puts the grades of a track into its row, unless the track changed since they were worked out from it. */
export function grade(id: string, updatedMs: number, levels: Levels): Promise<StoreProblem | null> {
  return doing(async (database) => {
    const work = database.transaction(['rows', 'counts'], 'readwrite', { durability: 'strict' });
    const row = await work.objectStore('rows').get(id);
    if (row?.updatedMs !== updatedMs) return trackProblem(row ? 'changed elsewhere' : 'missing');
    const count = (await work.objectStore('counts').get('rows')) ?? 0;
    await Promise.all([
      work.objectStore('rows').put({ ...row, levels }, id),
      work.objectStore('counts').put(count + 1, 'rows'),
      work.done,
    ]);
    return null;
  });
}

/** Takes a track off this device. A file of another device that has it brings it back. */
export function remove(id: string): Promise<StoreProblem | null> {
  return doing(async (database) => {
    const work = database.transaction(GRADED_SHELVES, 'readwrite', { durability: 'strict' });
    const count = (await work.objectStore('counts').get('rows')) ?? 0;
    await Promise.all([
      work.objectStore('replicas').delete(keyedUnder(id)),
      work.objectStore('graded').delete(id),
      work.objectStore('rows').delete(id),
      work.objectStore('counts').put(count + 1, 'rows'),
      work.done,
    ]);
    return null;
  });
}

function ownKept({ id, name }: GradedTrack): Problem {
  return {
    severity: 'warning',
    where: name || id,
    ...say.library.ownKept,
    times: 1,
  };
}
