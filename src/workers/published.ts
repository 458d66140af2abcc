import type { FoundIn, Published } from '../archive/publish/lookInto.ts';
import type { PublishedRow } from '../archive/publish/published.ts';
import type { TroubleWord } from '../archive/publish/trouble.ts';
import type { GradedTrack } from '../archive/gradedTrack.ts';
import type { Box } from '../archive/trackRow.ts';
import type { Reading } from '../problem.ts';
import { spoken } from '../words/words.ts';
import type { PublishedAsk, PublishedSaid, PublishedWork } from './publishedWork.ts';
import { fetchRange } from './range.ts';

/** What was asked for, or why it cannot be had. */
export type Got<T> = { readonly value: T } | { readonly trouble: TroubleWord };

/** One published archive, read in a worker that has the page fetch ranges for it. */
export class PublishedReader {
  readonly #worker: Worker;
  readonly #stopper = new AbortController();
  readonly #waiting = new Map<number, (got: Got<unknown>) => void>();
  #asked = 0;
  #ended: TroubleWord | null = null;

  /**
   * @param address of the index
   * @param onRead is told of bytes that came
   */
  constructor(
    readonly address: URL,
    readonly onRead: (bytes: number) => void,
  ) {
    this.#worker = new Worker(new URL('./published.worker.ts', import.meta.url), {
      type: 'module',
      name: spoken,
    });
    this.#worker.onmessage = ({ data }: MessageEvent<PublishedSaid>) => {
      if ('piece' in data) return void this.#fetch(data);
      this.#waiting.get(data.number)?.('trouble' in data ? data : { value: data.answer });
      this.#waiting.delete(data.number);
    };
    this.#worker.onerror = () => this.#end(navigator.onLine ? 'brokenIndex' : 'noNetwork');
  }

  open(): Promise<Got<Pick<Published, 'trackCount' | 'box'>>> {
    return this.#ask('open', []);
  }

  inBox(box: Box): Promise<Got<FoundIn>> {
    return this.#ask('inBox', [[...box]]);
  }

  take({ id, record, hash }: PublishedRow): Promise<Got<Reading<GradedTrack>>> {
    return this.#ask('take', [{ id, record: [...record], hash }]);
  }

  /** Nothing more is fetched; what was asked is never answered. */
  close(): void {
    this.#stopper.abort();
    this.#worker.terminate();
    this.#waiting.clear();
  }

  /** The worker did not come, or broke. */
  #end(trouble: TroubleWord): void {
    this.#ended = trouble;
    this.#waiting.forEach((answer) => answer({ trouble }));
    this.#waiting.clear();
  }

  #ask<K extends keyof PublishedWork, T>(name: K, given: readonly unknown[]): Promise<Got<T>> {
    if (this.#ended !== null) return Promise.resolve({ trouble: this.#ended });
    return new Promise((resolve) => {
      const number = this.#asked++;
      this.#waiting.set(number, (got) => resolve(got as Got<T>));
      this.#worker.postMessage({ number, name, given } satisfies PublishedAsk);
    });
  }

  async #fetch({ piece, file, at, length }: Extract<PublishedSaid, { piece: number }>): Promise<void> {
    const address = file === null ? this.address : new URL(file, this.address);
    const range = await fetchRange(address, at, length, this.#stopper.signal);
    if (typeof range === 'string') {
      this.#worker.postMessage({ piece, trouble: range } satisfies PublishedAsk);
      return;
    }
    const { data, tag } = range;
    this.onRead(data.byteLength);
    this.#worker.postMessage({ piece, data, tag } satisfies PublishedAsk, [data]);
  }
}
