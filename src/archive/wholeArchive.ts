import type { Reading } from '../problem.ts';
import { keyedUnder, reading } from './database.ts';
import { copiesBlob, copyBlob } from './exchange.ts';

/** Tracks read at a time; their bytes need not be in memory together. */
const AT_ONCE = 50;

/**
 * All graded tracks with their whole history as one file that `merge` takes, for whoever keeps this archive: as they lie
 * here, unread, so that what is damaged is kept as it is, too.
 */
export function wholeArchive(): Promise<Reading<Blob>> {
  return reading(async (database) => {
    const ids = await database.getAllKeys('rows');
    const tracks: Blob[] = [];
    for (let i = 0; i < ids.length; i += AT_ONCE) {
      const shelf = database.transaction('replicas').store;
      const all = await Promise.all(ids.slice(i, i + AT_ONCE).map((id) => shelf.getAll(keyedUnder(id))));
      tracks.push(...all.filter((pieces) => pieces.length > 0).map(copyBlob));
    }
    return { value: copiesBlob(tracks), problems: [] };
  });
}
