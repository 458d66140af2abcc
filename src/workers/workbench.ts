import type { BenchWork } from './bench.ts';

/** A worker of the workbench; it answers one thing at a time, so whoever asks waits for the answer before the next. */
export class BenchWorker {
  readonly #worker = new Worker(new URL('./workbench.worker.ts', import.meta.url), { type: 'module' });

  ask<K extends keyof BenchWork>(kind: K, task: BenchWork[K]['task']): Promise<BenchWork[K]['answer']> {
    return new Promise((resolve, reject) => {
      this.#worker.onmessage = ({ data }: MessageEvent<BenchWork[K]['answer']>) => resolve(data);
      this.#worker.onerror = (event) => reject(new Error(event.message));
      this.#worker.postMessage({ kind, task });
    });
  }

  stop(): void {
    this.#worker.terminate();
  }
}
