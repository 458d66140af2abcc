import type { Reading } from '../problem.ts';
import { agreedIn } from './agreed.ts';
import { conflictCount } from './conflict.ts';
import type { Database } from './database.ts';
import { abandon, keyedUnder, none, reading } from './database.ts';
import { recordFrom } from './gradedHeld.ts';
import { gradedFrom, gradedRecord } from './gradedRecord.ts';
import type { GradedTrack } from './gradedTrack.ts';
import { rowsWritten } from './knownRows.ts';
import { withPhotos } from './photoRecord.ts';
import type { Replica } from './replica.ts';
import { bytesSince, free, headsOf, isReplica, replicaFrom, replicaToBytes } from './replica.ts';
import type { StoreProblem } from './storeProblem.ts';
import type { TakeOut } from './takeOut.ts';
import { problemOf, trackProblem } from './storeProblem.ts';
import { trackRowOf } from './trackRow.ts';

/** The shelves of graded tracks. */
export const GRADED_SHELVES = ['replicas', 'graded', 'rows', 'counts', 'takeOuts'] as const;

/** Pieces that may lie one after the other before they are written anew as one. */
const PIECES = 32;

/** What else belongs to a change. */
interface Besides {
  /** Asked after it: a trip whose state is to be remembered with it. */
  readonly noted?: () => TakeOut | null;
  /**
   * Asked in its place where the history here cannot be read: what is to lie there instead of it. `left` is what the plain
   * record beside it says, null where that cannot be read either. Without this, such a history is not written over.
   */
  readonly mended?: (left: GradedTrack | null) => Replica | StoreProblem;
}

/**
 * All of a change or nothing of it, on the disk when this answers. It is made on what the database holds at that moment:
 * another window's changes are under it, and none is lost.
 */
export async function changed(
  database: Database,
  id: string,
  nowMs: number,
  change: (now: Replica | null) => Replica | StoreProblem,
  { noted = () => null, mended = () => trackProblem('corrupt') }: Besides = {},
): Promise<StoreProblem | null> {
  const work = database.transaction(GRADED_SHELVES, 'readwrite', { durability: 'strict' });
  const pieces = work.objectStore('replicas');
  try {
    const [keys, filed, row, count] = await Promise.all([
      pieces.getAllKeys(keyedUnder(id)),
      pieces.getAll(keyedUnder(id)),
      work.objectStore('rows').get(id),
      work.objectStore('counts').get('rows'),
    ]);
    const now = filed.length === 0 ? null : replicaFrom(filed);
    const heads = now ? headsOf(now) : [];
    const isDamaged = filed.length > 0 && now === null;
    const next = isDamaged ? mended(gradedFrom(await work.objectStore('graded').get(id)).value) : change(now);
    if (!isReplica(next)) {
      abandon(work);
      return next;
    }
    const held = agreedIn(next);
    const { value } = gradedFrom(recordFrom(held));
    if (value === null) {
      abandon(work);
      return trackProblem('corrupt');
    }
    const updatedMs = Math.max(nowMs, (row?.updatedMs ?? 0) + 1);
    const changedRow = trackRowOf(value, conflictCount(held), updatedMs);
    const writes: Promise<unknown>[] = [
      work.objectStore('graded').put(gradedRecord(withoutImages(value)), id),
      work.objectStore('rows').put(changedRow, id),
      work.objectStore('counts').put((count ?? 0) + 1, 'rows'),
    ];
    const piece = bytesSince(next, heads);
    const appended = filed.slice(1).reduce((sum, { length }) => sum + length, piece.length);
    if (now === null || filed.length >= PIECES || appended > filed[0].length) {
      writes.push(pieces.delete(keyedUnder(id)), pieces.put(replicaToBytes(next), [id, 0]));
    } else if (piece.length > 0) {
      writes.push(pieces.put(piece, [id, keys[keys.length - 1][1] + 1]));
    }
    const takeOut = noted();
    if (takeOut) writes.push(work.objectStore('takeOuts').put(takeOut, takeOut.tripId));
    await Promise.all([...writes, work.done]);
    rowsWritten((count ?? 0) + 1, new Map([[id, changedRow]]));
    free(next);
    return null;
  } catch (error) {
    abandon(work);
    return ofRoom(error);
  }
}

/** That there is no room for a change to a track, in words that fit it; any other fault is thrown on. */
export function ofRoom(error: unknown): StoreProblem {
  if (problemOf(error).trouble === 'full') return trackProblem('full');
  throw error;
}

function withoutImages(track: GradedTrack): GradedTrack {
  const surveyed = track.surveyed.map((one) => {
    const [obstacle] = withPhotos([one.obstacle], () => null);
    return { ...one, obstacle };
  });
  return { ...track, surveyed };
}

/** Asks the history of a track; what it is asked must not outlive the answer. */
export function withReplica<T>(id: string, ask: (replica: Replica) => Reading<T>): Promise<Reading<T>> {
  return reading(async (database) => {
    const pieces = await database.getAll('replicas', keyedUnder(id));
    if (pieces.length === 0) return none<T>(trackProblem('missing'));
    const replica = replicaFrom(pieces);
    if (replica === null) return none<T>(trackProblem('corrupt'));
    const answer = ask(replica);
    free(replica);
    return answer;
  });
}
