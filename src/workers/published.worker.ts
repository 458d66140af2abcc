import './language.ts';
import type { Published, Ranged } from '../archive/publish/lookInto.ts';
import { lookInto } from '../archive/publish/lookInto.ts';
import { Trouble } from '../archive/publish/trouble.ts';
import type { PublishedAsk, PublishedSaid, PublishedWork } from './publishedWork.ts';

type Piece = Exclude<PublishedAsk, { number: number }>;

const waiting = new Map<number, (piece: Piece) => void>();
let asked = 0;
let published: Promise<Published> | null = null;

const WORK: PublishedWork = {
  open: async () => {
    const { trackCount, box } = await opened();
    return { trackCount, box };
  },
  inBox: async (box) => (await opened()).inBox(box),
  take: async (row) => (await opened()).take(row),
};

self.onmessage = ({ data }: MessageEvent<PublishedAsk>) => {
  if ('piece' in data) {
    waiting.get(data.piece)?.(data);
    waiting.delete(data.piece);
    return;
  }
  const { number, name, given } = data;
  const work = WORK[name] as (...given: readonly unknown[]) => Promise<unknown>;
  work(...given).then(
    (answer) => say({ number, answer }),
    (error: unknown) => say({ number, trouble: error instanceof Trouble ? error.word : 'brokenIndex' }),
  );
};

function say(said: PublishedSaid): void {
  self.postMessage(said);
}

function opened(): Promise<Published> {
  let first: string | null = null;
  const index = source(null, ({ tag }) => {
    if (first !== null && tag !== first) throw new Trouble('changed');
    first ??= tag;
  });
  published ??= lookInto(index, (file) => source(file, () => undefined));
  return published;
}

/** A file of which the page fetches the ranges. */
function source(file: string | null, look: (piece: Piece & { readonly tag: string | null }) => void): Ranged {
  return {
    getKey: () => file ?? 'index',
    getBytes: async (at, length) => {
      const piece = await new Promise<Piece>((resolve) => {
        const number = asked++;
        waiting.set(number, resolve);
        say({ piece: number, file, at, length });
      });
      if ('trouble' in piece) throw new Trouble(file === null ? piece.trouble : ofRecords(piece.trouble));
      look(piece);
      return { data: piece.data };
    },
  };
}

/** The file of the records is named by what is in it: where it is gone, another archive stands there by now. */
function ofRecords(word: Trouble['word']): Trouble['word'] {
  if (word === 'nothingThere' || word === 'noArchive') return 'changed';
  return word === 'brokenIndex' ? 'brokenRecord' : word;
}
