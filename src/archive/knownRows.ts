import { BoxIndex } from './boxIndex.ts';
import type { Database } from './database.ts';
import type { TrackRow } from './trackRow.ts';
import { byName } from './wanted.ts';

/** The rows of all graded tracks by name, and their boxes. */
export interface KnownRows {
  readonly rows: readonly TrackRow[];
  readonly index: BoxIndex;
}

/** Rows as of a count of changes that the database holds; in order, with their index, once they were asked for. */
let known: { count: number; readonly rows: Map<string, TrackRow>; sorted: KnownRows | null } | null = null;

/** All rows as the database has them now. They are read only where anything else than this window changed some since. */
export async function rowsNow(database: Database): Promise<KnownRows> {
  const work = database.transaction(['rows', 'counts']);
  const count = (await work.objectStore('counts').get('rows')) ?? 0;
  if (known?.count !== count) {
    const all = await work.objectStore('rows').getAll();
    known = { count, rows: new Map(all.map((row) => [row.id, row])), sorted: null };
  }
  known.sorted ??= sorted([...known.rows.values()]);
  return known.sorted;
}

function sorted(all: readonly TrackRow[]): KnownRows {
  const rows = all.toSorted(byName);
  return { rows, index: new BoxIndex(rows.map(({ box }) => box)) };
}

/**
 * Tells what this window wrote, once it is on the disk: the rows that changed, null for those that are gone, and the count
 * that was written with them.
 */
export function rowsWritten(count: number, changed: ReadonlyMap<string, TrackRow | null>): void {
  if (known?.count !== count - 1) return;
  known.count = count;
  known.sorted = null;
  for (const [id, row] of changed)
    if (row === null) known.rows.delete(id);
    else known.rows.set(id, row);
}
