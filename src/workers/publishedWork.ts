import type { Published } from '../archive/publish/lookInto.ts';
import type { TroubleWord } from '../archive/publish/trouble.ts';

/** What the worker that reads a published archive can be asked. */
export interface PublishedWork {
  readonly open: () => Promise<Pick<Published, 'trackCount' | 'box'>>;
  readonly inBox: Published['inBox'];
  readonly take: Published['take'];
}

/** A question, or bytes that the worker asked the page for. */
export type PublishedAsk =
  | { readonly number: number; readonly name: keyof PublishedWork; readonly given: readonly unknown[] }
  | { readonly piece: number; readonly data: ArrayBuffer; readonly tag: string | null }
  | { readonly piece: number; readonly trouble: TroubleWord };

/** An answer, or a question for bytes: of the index where `file` is null, else of the file of that name beside it. */
export type PublishedSaid =
  | { readonly number: number; readonly answer: unknown }
  | { readonly number: number; readonly trouble: TroubleWord }
  | { readonly piece: number; readonly file: string | null; readonly at: number; readonly length: number };
