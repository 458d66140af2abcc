import { COPIES_EXTENSION } from '../archive/exchange.ts';
import { say } from '../words/words.ts';
import { copyArchive, findTracks } from '../workers/archive.ts';
import type { Backed } from './backups.svelte.ts';

/** The club's archive as something to back up: all of it, history, names and photos too, as it is one's own copy. */
export async function archiveNow(): Promise<Backed | null> {
  const { value: rows, problems } = await findTracks();
  if (rows === null) throw new Error(problems[0]?.what);
  if (rows.length === 0) return null;
  // Every change lets a row rise.
  const version = `${rows.length} ${rows.reduce((sum, { updatedMs }) => sum + updatedMs, 0)}`;
  return {
    version,
    make: async () => {
      const { value, problems } = await copyArchive();
      if (value === null) throw new Error(problems[0]?.what);
      return {
        key: 'archive',
        name: say.storage.archive,
        ending: COPIES_EXTENSION.slice(1),
        content: value,
      };
    },
  };
}
