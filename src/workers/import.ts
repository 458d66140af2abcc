import type { Reading } from '../problem.ts';
import type { Recording } from '../route/track.ts';
import { spoken } from '../words/words.ts';
import type { GpxMessage } from './gpx.worker.ts';
import { say } from '../words/words.ts';

/**
 * Reads a GPX file in a worker of its own. Cancelling ends the worker and rejects with the signal's reason; bad input
 * never rejects.
 */
export function importGpx(
  file: Blob,
  onProgress?: (bytesRead: number) => void,
  signal?: AbortSignal,
): Promise<Reading<Recording>> {
  return new Promise((resolve, reject) => {
    signal?.throwIfAborted();
    const worker = new Worker(new URL('./gpx.worker.ts', import.meta.url), { type: 'module', name: spoken });
    const cancel = () => {
      worker.terminate();
      // eslint-disable-next-line @typescript-eslint/prefer-promise-reject-errors
      reject(signal?.reason);
    };
    signal?.addEventListener('abort', cancel, { once: true });
    const end = () => {
      signal?.removeEventListener('abort', cancel);
      worker.terminate();
    };
    worker.addEventListener('message', ({ data }: MessageEvent<GpxMessage>) => {
      if ('bytesRead' in data) {
        onProgress?.(data.bytesRead);
        return;
      }
      end();
      resolve(data.reading);
    });
    worker.addEventListener('error', (event) => {
      end();
      reject(new Error(say.gpx.cannotStart(event.message)));
    });
    worker.postMessage(file);
  });
}
