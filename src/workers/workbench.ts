import { spoken } from '../words/words.ts';
import type { BenchWork } from './bench.ts';

/** Who waits for an answer; answers come in the order of asking. */
interface Asked {
  readonly answered: (answer: unknown) => void;
  readonly failed: (error: Error) => void;
}

/** A worker of the workbench, started when it is asked; a fault ends it, and the next ask starts another. */
export class BenchWorker {
  #worker: Worker | null = null;
  #asked: Asked[] = [];

  ask<K extends keyof BenchWork>(kind: K, task: BenchWork[K]['task']): Promise<BenchWork[K]['answer']> {
    const worker = (this.#worker ??= this.#started());
    worker.postMessage({ kind, task });
    return new Promise((answered, failed) => {
      this.#asked.push({ answered: answered as Asked['answered'], failed });
    });
  }

  /** Ends what it is at; what was asked is never answered. */
  drop(): void {
    if (this.#asked.length > 0) this.stop();
  }

  stop(): void {
    this.#worker?.terminate();
    this.#worker = null;
    this.#asked = [];
  }

  #started(): Worker {
    const worker = new Worker(new URL('./workbench.worker.ts', import.meta.url), {
      type: 'module',
      name: spoken,
    });
    const asked = this.#asked;
    worker.onmessage = ({ data }: MessageEvent<unknown>) => asked.shift()?.answered(data);
    worker.onerror = ({ message }) => {
      this.stop();
      for (const { failed } of asked) failed(new Error(message));
    };
    return worker;
  }
}
