import { partsOfCopies } from '../archive/exchange.ts';
import type { Reading } from '../problem.ts';
import { mergeCopies } from '../workers/archive.ts';

/** Of a file of graded tracks, merged at a time. */
const PART_BYTES = 16_000_000;

/**
 * Merges a file of graded tracks with their history into the archive, part by part, since it may be larger than there is
 * memory for; of each part, `onMerged` is told which tracks it held. Rejects when `signal` is raised: what was merged until
 * then stays.
 */
export async function mergeFile(
  file: Blob,
  onMerged: (merged: Reading<readonly string[]>) => void,
  onProgress: (share: number) => void = () => {},
  signal?: AbortSignal,
): Promise<void> {
  let read = 0;
  for await (const part of partsOfCopies(file, PART_BYTES)) {
    signal?.throwIfAborted();
    if (!(part instanceof Uint8Array)) {
      onMerged({ value: null, problems: [part] });
      continue;
    }
    onMerged(await mergeCopies(part, Date.now()));
    onProgress((read += part.length) / file.size);
  }
}
