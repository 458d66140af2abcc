import { spoken } from '../words/words.ts';
import type { BenchWork } from './bench.ts';

/** A worker of the workbench; an ask waits for the one before it. */
export class BenchWorker {
  readonly #worker = new Worker(new URL('./workbench.worker.ts', import.meta.url), {
    type: 'module',
    name: spoken,
  });
  #before: Promise<unknown> = Promise.resolve();

  ask<K extends keyof BenchWork>(kind: K, task: BenchWork[K]['task']): Promise<BenchWork[K]['answer']> {
    const asked = this.#before.then(() => this.#answer(kind, task));
    this.#before = asked.catch(() => {});
    return asked;
  }

  stop(): void {
    this.#worker.terminate();
  }

  #answer<K extends keyof BenchWork>(kind: K, task: BenchWork[K]['task']): Promise<BenchWork[K]['answer']> {
    return new Promise((resolve, reject) => {
      this.#worker.onmessage = ({ data }: MessageEvent<BenchWork[K]['answer']>) => resolve(data);
      this.#worker.onerror = (event) => reject(new Error(event.message));
      this.#worker.postMessage({ kind, task });
    });
  }
}
