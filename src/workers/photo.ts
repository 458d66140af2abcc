import { spoken } from '../words/words.ts';
import type { PhotoAnswer, PhotoTask } from './redraw.ts';

/** Draws a photo anew in a worker of its own, so that the page stays awake. */
export function redrawnInWorker(task: PhotoTask): Promise<PhotoAnswer> {
  return new Promise((resolve, reject) => {
    const worker = new Worker(new URL('./photo.worker.ts', import.meta.url), {
      type: 'module',
      name: spoken,
    });
    worker.onmessage = ({ data }: MessageEvent<PhotoAnswer>) => {
      worker.terminate();
      resolve(data);
    };
    worker.onerror = (event) => {
      worker.terminate();
      reject(new Error(event.message));
    };
    worker.postMessage(task);
  });
}
