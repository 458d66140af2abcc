import { keyedUnder, none, reading } from './database.ts';
import { idOf } from './gradedReplica.ts';
import { changed } from './gradedShelf.ts';
import { parcelFrom, parcelOf, parcelToBytes, unpacked } from './parcel.ts';
import type { Heads } from './replica.ts';
import { emptyReplica, free, headsOf, replicaFrom } from './replica.ts';
import { trackProblem } from './storeProblem.ts';
import type { Reading } from '../problem.ts';

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

/** What a server lacks of a track that it has as far as `theirs`; `base` is where both stood when they last met. */
export function offerParcel(id: string, theirs: Heads, base: Heads): Promise<Reading<Offered>> {
  return reading(async (database) => {
    const work = database.transaction(['replicas', 'rows']);
    const [pieces, row] = await Promise.all([
      work.objectStore('replicas').getAll(keyedUnder(id)),
      work.objectStore('rows').get(id),
    ]);
    const replica = pieces.length === 0 ? emptyReplica() : replicaFrom(pieces);
    if (replica === null) return none<Offered>(trackProblem('corrupt'));
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

/** Takes in what a server answered to an offer; how far the track has got then. Nothing of it is kept where it is damaged. */
export function acceptParcel(id: string, bytes: Uint8Array, nowMs: number): Promise<Reading<Heads>> {
  return reading(async (database) => {
    const parcel = parcelFrom(bytes);
    if (parcel === null) return none<Heads>(trackProblem('corrupt'));
    if (parcel.changes.length === 0) return { value: parcel.heads, problems: [] };
    let heads: Heads = [];
    const problem = await changed(database, id, nowMs, (now) => {
      const next = unpacked(now ?? emptyReplica(), parcel);
      if (next === null || idOf(next) !== id) return trackProblem('corrupt');
      heads = headsOf(next);
      return next;
    });
    return problem ? none<Heads>(problem) : { value: heads, problems: [] };
  });
}
