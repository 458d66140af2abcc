import type { Check } from '../traverse/assess.ts';
import type { Aids } from '../vehicle/aids.ts';

/** From best to worst. `not known` stands apart: something must be measured first. */
export const VERDICT_WORDS = [
  'goes',
  'goes with care',
  'needs momentum',
  'needs a pull',
  'does not go',
  'not known',
] as const;

export type VerdictWord = (typeof VERDICT_WORDS)[number];

/** What is said of one vehicle on one line in one direction. */
export interface Verdict {
  readonly word: VerdictWord;
  /** Name of the least rung of the ladder of aids that earns this word, and what is engaged on it. */
  readonly rung: string;
  readonly aids: Aids;
  /** What limits, in a driver's words. */
  readonly cause: string;
  /** The limiting check at its worst within the ± of what was entered; null when not known. */
  readonly limit: Check | null;
  /** All checks at that rung with the values as entered. */
  readonly checks: readonly Check[];
  /** Least entry speed for `needs momentum`, else 0. */
  readonly entrySpeedMps: number;
  /** Pull for `needs a pull`, else 0. */
  readonly pullN: number;
  /** The word on each rung from the lowest up, so that what an aid would add can be seen. */
  readonly ladder: readonly { readonly rung: string; readonly word: VerdictWord; readonly cause: string }[];
}

/** Position in `VERDICT_WORDS`; lower is better. */
export function rankOf(word: VerdictWord): number {
  return VERDICT_WORDS.indexOf(word);
}
