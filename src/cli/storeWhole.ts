import { open, rename } from 'node:fs/promises';
import { join } from 'node:path';

/** How files end that were not finished; they are never read. */
export const UNFINISHED = '.unfinished';

/**
 * Stores all of a file or nothing of it, on the disk when this answers: what was there before stays until then.
 * @param mode of POSIX: who may read it
 */
export async function storeWhole(
  folder: string,
  name: string,
  pieces: readonly Uint8Array[],
  mode = 0o600,
): Promise<void> {
  const path = join(folder, name);
  const unfinished = `${path}${UNFINISHED}`;
  const file = await open(unfinished, 'w', mode);
  try {
    for (const piece of pieces) await file.writeFile(piece);
    await file.sync();
  } finally {
    await file.close();
  }
  await rename(unfinished, path);
  const directory = await open(folder, 'r');
  try {
    await directory.sync();
  } finally {
    await directory.close();
  }
}
