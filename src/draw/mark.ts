import type { VerdictWord } from '../grade/verdict.ts';

/**
 * A way through a gate, seen from above, in a box of 28 by 24: the bar is the vehicle's path, the posts are the limit. It
 * passes wide, passes between wedges, passes with a run-up, is drawn through by a ring, stops at a wall, or is not drawn yet.
 */
export const MARKS: Readonly<Record<VerdictWord, string>> = {
  goes: 'M2 12H26M14 1V5M14 19V23',
  'goes with care': 'M2 12H26M10.5 2H17.5L14 7ZM10.5 22H17.5L14 17Z',
  'needs momentum': 'M2 12H8M16 12H26M8 7l5 5-5 5M13 7l5 5-5 5',
  'needs a pull': 'M2 12H17M23.5 12a3.25 3.25 0 1 1-6.5 0a3.25 3.25 0 1 1 6.5 0M14 1V8M14 16V23',
  'does not go': 'M2 12H12M12 3H18V21H12Z',
  'not known': 'M2 12H5M9 12H12M16 12H19M23 12H26',
};

/** Marks that are filled, not drawn in outline. */
export const FILLED: ReadonlySet<VerdictWord> = new Set(['goes with care', 'does not go']);

/** The mark of a verdict as SVG text, in the ink of the words around it. */
export function markSvg(word: VerdictWord, widthPx: number): string {
  const fill = FILLED.has(word) ? 'currentColor' : 'none';
  return (
    `<svg class="mark" viewBox="0 0 28 24" width="${widthPx}" height="${Math.round((widthPx * 24) / 28)}" aria-hidden="true">` +
    `<path d="${MARKS[word]}" fill="${fill}" stroke="currentColor" stroke-width="2.6"/></svg>`
  );
}
