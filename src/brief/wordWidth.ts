/**
 * Widths of letters in Arial, in parts of the size of the font, regular and bold, rounded up within each group. The other
 * fonts that the page names are as wide.
 */
const WIDTHS: readonly (readonly [letters: RegExp, regular: number, bold: number])[] = [
  [/[ijlftI.,:;!'’|]/u, 0.28, 0.34],
  [/[r()\-/\u00ad]/u, 0.34, 0.39],
  [/[ckvxyszJ]/u, 0.5, 0.56],
  [/[ae0-9]/u, 0.56, 0.56],
  [/[bdghnopqu]/u, 0.56, 0.62],
  [/[FLTZß]/u, 0.62, 0.62],
  [/[ABEKPSVXY]/u, 0.67, 0.73],
  [/[CDHNRU]/u, 0.73, 0.73],
  [/[GOQw]/u, 0.78, 0.78],
  [/[mM]/u, 0.84, 0.89],
];
const WIDEST = 1;

export type Weight = 'regular' | 'bold';

/** How wide a word is, in parts of the size of the font; never less than it is printed. */
function widthOf(word: string, weight: Weight): number {
  return Array.from(word.normalize('NFD').replace(/\p{M}/gu, '')).reduce((sum, letter) => {
    const group = WIDTHS.find(([letters]) => letters.test(letter));
    return sum + (group?.[weight === 'bold' ? 2 : 1] ?? WIDEST);
  }, 0);
}

/** Width of the widest word of a text. Words end at spaces, at hyphens and where they may be parted. */
export function widestWord(text: string, weight: Weight): number {
  return Math.max(0, ...text.split(/[^\S\u00a0]+|(?<=[-\u00ad])/u).map((word) => widthOf(word, weight)));
}

/** Letters from which on a word may be parted, and the fewest before its first parting. */
const LONG = 17;
const STAY = 3;
const HYPHEN = '\u00ad';

/** A vowel, what closes its syllable, and the one sound that begins the next. */
const SYLLABLE =
  /([aeiouyäöü][^aeiouyäöü]*?)((?:sch[lmnrw]?|ch|ck|ph|th|[^aeiouyäöü])(?=[aeiouyäöü]\p{L}{2}))/giu;
const NO_SYLLABLES = new RegExp(`[^${HYPHEN}]{${LONG}}(?=[^${HYPHEN}])`, 'gu');

/**
 * A text whose long words may be parted before the last consonant between two vowels (the rule of German spelling, good
 * enough for English), and where there are none, every `LONG` letters. A hyphen shows only where a word is parted.
 */
export function parted(text: string): string {
  return text.replace(/[\p{L}\p{N}]+/gu, (word) =>
    word.length < LONG
      ? word
      : word
          .replace(SYLLABLE, (whole, closed: string, opens: string, at: number) =>
            at + closed.length < STAY ? whole : `${closed}${HYPHEN}${opens}`,
          )
          .replace(NO_SYLLABLES, `$&${HYPHEN}`),
  );
}
