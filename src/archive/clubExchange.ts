import { keyedUnder, none, reading } from './database.ts';
import { idOf, mendedWith } from './gradedReplica.ts';
import { changed } from './gradedShelf.ts';
import type { GradedTrack } from './gradedTrack.ts';
import { parcelFrom, parcelOf, parcelToBytes, unpacked } from './parcel.ts';
import type { Heads, Replica } from './replica.ts';
import { emptyReplica, free, headsOf, isReplica, replicaFrom } from './replica.ts';
import type { StoreProblem } from './storeProblem.ts';
import { mendedProblem, trackProblem } from './storeProblem.ts';
import type { Problem, Reading } from '../problem.ts';

/** What a server is sent of a track. */
export interface Offered {
  /** How far the track has got on this device; empty where it is not here. */
  readonly heads: Heads;
  /** Of its row, as of the same moment; 0 where it is not here. */
  readonly updatedMs: number;
  /** The parcel, and the same without changes, for a key that may only take. */
  readonly bytes: Uint8Array<ArrayBuffer>;
  readonly asking: Uint8Array<ArrayBuffer>;
  /** Whether there is anything to give. */
  readonly gives: boolean;
}

/**
 * What a server lacks of a track that it has as far as `theirs`; `base` is where both stood when they last met. Where the
 * history here cannot be read, nothing is given and everything asked for.
 */
export function offerParcel(id: string, theirs: Heads, base: Heads): Promise<Reading<Offered>> {
  return reading(async (database) => {
    const work = database.transaction(['replicas', 'rows']);
    const [pieces, row] = await Promise.all([
      work.objectStore('replicas').getAll(keyedUnder(id)),
      work.objectStore('rows').get(id),
    ]);
    const read = pieces.length === 0 ? emptyReplica() : replicaFrom(pieces);
    if (read === null && theirs.length === 0) return none<Offered>(trackProblem('corrupt'));
    const replica = read ?? emptyReplica();
    const parcel = parcelOf(replica, theirs, base);
    const heads = headsOf(replica);
    free(replica);
    const value = {
      heads,
      updatedMs: row?.updatedMs ?? 0,
      bytes: parcelToBytes(parcel),
      asking: parcelToBytes({ ...parcel, changes: new Uint8Array(0) }),
      gives: parcel.changes.length > 0,
    };
    return { value, problems: [] };
  });
}

/**
 * Takes in what a server answered to an offer; how far the track has got then. Nothing of it is kept where it is damaged. A
 * history that cannot be read here gives way to the server's, and a warning says so.
 */
export function acceptParcel(id: string, bytes: Uint8Array, nowMs: number): Promise<Reading<Heads>> {
  return reading(async (database) => {
    const parcel = parcelFrom(bytes);
    if (parcel === null) return none<Heads>(trackProblem('corrupt'));
    if (parcel.changes.length === 0) return { value: parcel.heads, problems: [] };
    let heads: Heads = [];
    const warnings: Problem[] = [];
    const cameTo = (now: Replica | null): Replica | StoreProblem => {
      const next = unpacked(now ?? emptyReplica(), parcel);
      if (next === null || idOf(next) !== id) return trackProblem('corrupt');
      heads = headsOf(next);
      return next;
    };
    const mended = (left: GradedTrack | null): Replica | StoreProblem => {
      const came = cameTo(null);
      if (!isReplica(came)) return came;
      const next = mendedWith(came, left, nowMs);
      free(came);
      heads = headsOf(next);
      warnings.push(mendedProblem(left?.name || id));
      return next;
    };
    const problem = await changed(database, id, nowMs, cameTo, { mended });
    return problem ? none<Heads>(problem) : { value: heads, problems: warnings };
  });
}
