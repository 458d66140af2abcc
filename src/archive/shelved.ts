import type { Reading } from '../problem.ts';
import { abandon, doing, keyedUnder, none, reading } from './database.ts';
import type { GradedRecord } from './gradedRecord.ts';
import { changed, GRADED_SHELVES, ofRoom } from './gradedShelf.ts';
import { rowsWritten } from './knownRows.ts';
import { emptyReplica, free, merged, replicaFrom } from './replica.ts';
import type { StoreProblem } from './storeProblem.ts';
import { trackProblem } from './storeProblem.ts';
import type { TrackRow } from './trackRow.ts';

/** A graded track as it lies on the shelves of this device, its history unread. */
export interface Shelved {
  readonly id: string;
  /** Of the history, in their order. */
  readonly pieces: readonly (readonly [number: number, bytes: Uint8Array<ArrayBuffer>])[];
  /** Null where it is gone. */
  readonly record: GradedRecord | null;
  /** Null where it is gone. */
  readonly row: TrackRow | null;
}

/** Takes a track off this device, read or not; what is answered puts it back as it was. */
export function remove(id: string): Promise<Reading<Shelved>> {
  return reading(async (database) => {
    const work = database.transaction(GRADED_SHELVES, 'readwrite', { durability: 'strict' });
    const pieces = work.objectStore('replicas');
    const [keys, filed, record, row, before] = await Promise.all([
      pieces.getAllKeys(keyedUnder(id)),
      pieces.getAll(keyedUnder(id)),
      work.objectStore('graded').get(id),
      work.objectStore('rows').get(id),
      work.objectStore('counts').get('rows'),
    ]);
    if (filed.length === 0 && row === undefined) {
      abandon(work);
      return none(trackProblem('missing'));
    }
    const count = (before ?? 0) + 1;
    await Promise.all([
      pieces.delete(keyedUnder(id)),
      work.objectStore('graded').delete(id),
      work.objectStore('rows').delete(id),
      work.objectStore('counts').put(count, 'rows'),
      work.done,
    ]);
    rowsWritten(count, new Map([[id, null]]));
    const value: Shelved = {
      id,
      pieces: filed.map((bytes, i) => [keys[i][1], bytes]),
      record: record ?? null,
      row: row ?? null,
    };
    return { value, problems: [] };
  });
}

/**
 * Puts back what `remove` took off. Where the track has come again meanwhile, as from a server, the two are merged; what
 * cannot be read is then not put over it, and `changed elsewhere` says so.
 */
export function putBack({ id, pieces, record, row }: Shelved, nowMs: number): Promise<StoreProblem | null> {
  return doing(async (database) => {
    const work = database.transaction(GRADED_SHELVES, 'readwrite', { durability: 'strict' });
    const shelf = work.objectStore('replicas');
    try {
      const [there, before] = await Promise.all([
        shelf.count(keyedUnder(id)),
        work.objectStore('counts').get('rows'),
      ]);
      if (there > 0) {
        abandon(work);
        const replica = replicaFrom(pieces.map(([, bytes]) => bytes));
        if (replica === null) return trackProblem('changed elsewhere');
        const problem = await changed(database, id, nowMs, (now) => {
          const own = now ?? emptyReplica();
          const both = merged(own, replica);
          free(own);
          return both;
        });
        free(replica);
        return problem;
      }
      const count = (before ?? 0) + 1;
      const writes: Promise<unknown>[] = pieces.map(([number, bytes]) => shelf.put(bytes, [id, number]));
      if (record) writes.push(work.objectStore('graded').put(record, id));
      if (row) writes.push(work.objectStore('rows').put(row, id));
      await Promise.all([...writes, work.objectStore('counts').put(count, 'rows'), work.done]);
      rowsWritten(count, new Map([[id, row]]));
      return null;
    } catch (error) {
      abandon(work);
      return ofRoom(error);
    }
  });
}

/** The bytes of a track's history as they lie here, damaged or not, one after the other. */
export function historyBytes(id: string): Promise<Reading<readonly Uint8Array<ArrayBuffer>[]>> {
  return reading(async (database) => {
    const pieces = await database.getAll('replicas', keyedUnder(id));
    return pieces.length === 0 ? none(trackProblem('missing')) : { value: pieces, problems: [] };
  });
}
