/** One entry of the catalogue: a text, or a function that makes one of its values. */
export interface Leaf {
  readonly path: string;
  readonly value: string | ((...given: unknown[]) => string);
}

/** Every entry of a catalogue by its path, such as `obstacle.step.remove` or `bench.tone.0`. */
export function leavesOf(words: object, path = ''): Leaf[] {
  return Object.entries(words).flatMap(([key, value]: [string, unknown]) => {
    const at = path === '' ? key : `${path}.${key}`;
    return typeof value === 'object' && value !== null
      ? leavesOf(value, at)
      : [{ path: at, value: value as Leaf['value'] }];
  });
}

/** What an entry says of made-up values. */
export interface Answer {
  readonly text: string;
  /** The values that stand in the text. */
  readonly kept: readonly string[];
  /** What stands between them. */
  readonly parts: readonly string[];
}

/** Values for entries that choose by what they are given; for all others made-up words do. */
const CHOOSING: Readonly<Record<string, readonly unknown[]>> = {
  'lines.offsetHelp': ['qaa', 'left'],
};

const LETTERS = 'abcdefghij';
const BETWEEN = /x?(?:qaa|qbb|qcc|qdd|qee|qff|qgg|qhh|qii|qjj)|4[1-9]/i;
const MADE_UP = /^x?q([a-j])\1$/;

/** What an entry says of values that no language has; of `count` where it takes numbers. Null where that is no text. */
export function answerOf({ path, value }: Leaf, count?: number): Answer | null {
  if (typeof value === 'string') return { text: value, kept: [], parts: [value] };
  for (const given of samples(path, value.length, count)) {
    const text = tried(value, given);
    if (text === null || !isText(text)) continue;
    const words = given.flat().filter((one) => typeof one === 'string' && MADE_UP.test(one)) as string[];
    return {
      text,
      kept: words.filter((word) => text.toLowerCase().includes(word)),
      parts: text.split(BETWEEN),
    };
  }
  return null;
}

/** Lists of values to try: words first, then lists of words, numbers, records by key, yes and no. */
function samples(path: string, length: number, count: number | undefined): readonly unknown[][] {
  const words = [...LETTERS].map((letter) => `q${letter}${letter}`);
  const kinds: ((i: number) => unknown)[] = [
    (i) => words[i],
    (i) => [words[i], `x${words[i]}`],
    (i) => 41 + i,
    () => true,
  ];
  if (count !== undefined) kinds.unshift(() => count);
  if (path in CHOOSING) return [[...CHOOSING[path]]];
  let lists: unknown[][] = [[]];
  for (let i = 0; i < length; i++) lists = lists.flatMap((list) => kinds.map((kind) => [...list, kind(i)]));
  return lists.length > 4000 ? lists.slice(0, 4000) : lists;
}

function tried(value: (...given: unknown[]) => string, given: readonly unknown[]): string | null {
  try {
    const text: unknown = value(...given);
    return typeof text === 'string' ? text : null;
  } catch {
    return null;
  }
}

function isText(text: string): boolean {
  return text.trim() !== '' && !/undefined|NaN|\[object|=>/.test(text);
}
