import type { Problem, Reading } from '../problem.ts';
import type { Direction } from '../terrain/obstacle.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import { say } from '../words/words.ts';
import type { Conflict, Revised } from './conflict.ts';
import { conflictsOf, historyOf, resolved } from './conflict.ts';
import { doing, keyedUnder, none, reading } from './database.ts';
import { copiesToBytes, eachCopy, isCopy } from './exchange.ts';
import type { Filing } from './filing.ts';
import { graded, gradedAnew, gradedBeside, joined, tripOf } from './filing.ts';
import { gradedFrom } from './gradedRecord.ts';
import { besideChoices, edited, editedAt, firstFiled, gradedOf, mendedWith } from './gradedReplica.ts';
import { changed, withReplica } from './gradedShelf.ts';
import type { GradedTrack } from './gradedTrack.ts';
import { rowsNow, rowsWritten } from './knownRows.ts';
import { levelsOf } from './levels.ts';
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
import { mendedProblem, trackProblem } from './storeProblem.ts';
import type { TakeOut } from './takeOut.ts';
import type { TrackRow } from './trackRow.ts';
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

/** Tracks of the archive, the tracks themselves unread. Asks the database whether anything changed, in whatever window. */
export function find(wanted: Wanted): Promise<Reading<readonly TrackRow[]>> {
  return reading(async (database) => {
    const { rows, index } = await rowsNow(database);
    return { value: found(rows, index, wanted), problems: [] };
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

/** A graded track without the images of its photos: null where it cannot be read, and what could not be read of it. */
export interface Bare {
  readonly id: string;
  readonly reading: Reading<GradedTrack>;
}

/** Graded tracks without the images of their photos, in the order of `ids`; those that are not there are left out. */
export async function takeBare(ids: readonly string[]): Promise<Reading<readonly GradedTrack[]>> {
  const { value, problems } = await takeEachBare(ids);
  const readings = value?.map((one) => one.reading) ?? [];
  return {
    value: value && readings.flatMap((one) => one.value ?? []),
    problems: [...problems, ...readings.flatMap((one) => one.problems)],
  };
}

/** The same, told for each by itself. */
export function takeEachBare(ids: readonly string[]): Promise<Reading<readonly Bare[]>> {
  return reading(async (database) => {
    const work = database.transaction(['graded', 'rows']);
    const kept = await Promise.all(
      ids.map((id) => Promise.all([work.objectStore('graded').get(id), work.objectStore('rows').get(id)])),
    );
    const each = kept.flatMap(([record, row], i): Bare[] => {
      if (!record) return [];
      const { value, problems } = gradedFrom(record);
      const told = row && row.conflictCount > 0 ? besideChoices(problems) : problems;
      return [{ id: ids[i], reading: { value, problems: told } }];
    });
    return { value: each, problems: [] };
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
 * does not have yet. What others changed meanwhile stays. `allMeasured` as in `Filing`.
 */
export function file(
  trip: Trip,
  author: Author,
  into: string | null = null,
  allMeasured = false,
): Promise<Reading<FiledInto>> {
  return reading(async (database) => {
    const noted = await database.get('takeOuts', trip.id);
    const id = into ?? noted?.trackId ?? trip.id;
    const known = noted?.trackId === id ? noted.heads : null;
    const filingInto = (replica: Replica): Filing => ({ ...author, newId: slotsOf(replica), allMeasured });
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
        const filing = filingInto(now);
        const after = base
          ? graded(trip, read.value, filing, gradedOf(now).value ?? read.value)
          : gradedBeside(trip, read.value, filing);
        newVisits = visitCount(after) - visitCount(read.value);
        const edit = editedAt(now, after, author, base);
        heads = base && edit.heads;
        return edit.replica;
      },
      { noted: () => ({ tripId: trip.id, trackId: id, heads }) },
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
    const whole: Uint8Array[] = [];
    let corrupt = 0;
    for (const id of ids) {
      const pieces = await database.getAll('replicas', keyedUnder(id));
      const replica = replicaFrom(pieces);
      if (replica === null) corrupt += Math.sign(pieces.length);
      else {
        whole.push(replicaToBytes(replica));
        free(replica);
      }
    }
    return { value: copiesToBytes(whole), problems: corrupt > 0 ? [trackProblem('corrupt')] : [] };
  });
}

/**
 * Merges a file of another device into the archive: afterwards both have everything of both. A history that cannot be read
 * here gives way to the one of the file, and a warning says so. Answers which tracks it held.
 */
export function merge(bytes: Uint8Array, nowMs: number): Promise<Reading<readonly string[]>> {
  return reading(async (database) => {
    const problems: Problem[] = [];
    const ids: string[] = [];
    let read = 0;
    for (const copy of eachCopy(bytes)) {
      if (!isCopy(copy)) {
        problems.push(copy);
        continue;
      }
      read++;
      const { id, replica } = copy;
      const warnings: Problem[] = [];
      const problem = await changed(
        database,
        id,
        nowMs,
        (now) => {
          const own = now ?? emptyReplica();
          const both = merged(own, replica);
          free(own);
          return both;
        },
        {
          mended: (left) => {
            const next = mendedWith(replica, left, nowMs);
            warnings.push(mendedProblem(left?.name || id));
            return next;
          },
        },
      );
      if (problem) problems.push(problem);
      else {
        ids.push(id);
        problems.push(...warnings);
      }
      free(replica);
    }
    return { value: read === 0 && problems.length > 0 ? null : ids, problems };
  });
}

/** Records that are in memory together while tracks are graded. */
const REGRADED_AT_ONCE = 10;

/**
 * Grades tracks by their sizes and puts that into their rows, all in one transaction. What cannot be read stays without a
 * grade. Nothing is lost that could not be worked out again, so the disk is not waited for.
 */
export function regrade(ids: readonly string[]): Promise<StoreProblem | null> {
  return doing(async (database) => {
    const work = database.transaction(['graded', 'rows', 'counts'], 'readwrite', { durability: 'relaxed' });
    const count = ((await work.objectStore('counts').get('rows')) ?? 0) + 1;
    const written = new Map<string, TrackRow>();
    const regraded = async (id: string): Promise<unknown> => {
      const [record, row] = await Promise.all([
        work.objectStore('graded').get(id),
        work.objectStore('rows').get(id),
      ]);
      const { value } = gradedFrom(record);
      if (value === null || row === undefined) return;
      written.set(id, { ...row, levels: levelsOf(value) });
      return work.objectStore('rows').put(written.get(id)!, id);
    };
    const someAtOnce = async (): Promise<void> => {
      for (let i = 0; i < ids.length; i += REGRADED_AT_ONCE)
        await Promise.all(ids.slice(i, i + REGRADED_AT_ONCE).map(regraded));
    };
    await Promise.all([someAtOnce(), work.objectStore('counts').put(count, 'rows'), work.done]);
    rowsWritten(count, written);
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
