import type { Attempt } from '../grade/neededAdhesion.ts';
import { spoken } from '../words/words.ts';

/** Attempts asked at once: few enough that progress moves and stopping is prompt. */
const AT_ONCE = 8;

/**
 * The adhesion that each attempt needed, worked out off the page; null in its place where that cannot be told. Null when
 * cancelled.
 */
export async function neededInWorker(
  attempts: readonly Attempt[],
  onProgress: (done: number) => void = () => {},
  signal?: AbortSignal,
): Promise<(number | null)[] | null> {
  if (attempts.length === 0) return [];
  const worker = new Worker(new URL('./needed.worker.ts', import.meta.url), { type: 'module', name: spoken });
  const answer = (some: readonly Attempt[]) =>
    new Promise<(number | null)[]>((resolve, reject) => {
      worker.onmessage = ({ data }: MessageEvent<(number | null)[]>) => resolve(data);
      worker.onerror = (event) => reject(new Error(event.message));
      worker.postMessage(some.map((one) => ({ ...one, obstacle: { ...one.obstacle, photos: [] } })));
    });
  try {
    const needed: (number | null)[] = [];
    for (let i = 0; i < attempts.length && !signal?.aborted; i += AT_ONCE) {
      needed.push(...(await answer(attempts.slice(i, i + AT_ONCE))));
      onProgress(needed.length);
    }
    return signal?.aborted ? null : needed;
  } finally {
    worker.terminate();
  }
}
