import { outOfHundred } from '../grade/sureness.ts';
import type { RungVerdict, Verdict, VerdictWord } from '../grade/verdict.ts';
import type { Measured } from '../traverse/assess.ts';
import type { System } from '../units.ts';
import { shown, written } from '../units.ts';
import { say } from '../words/words.ts';

/** False for forces that have no place: the vehicle tips at once, and nothing is left to compare. */
export function isCompared({ quantity, stationM }: Measured): boolean {
  return quantity !== 'share' || !Number.isNaN(stationM);
}

/** Distance to the limit as it is said: `12 cm spare`, `short by 0.06 of its weight`; empty where nothing is compared. */
export function marginText(check: Measured, system: System): string {
  if (!isCompared(check)) return '';
  const size = amount(Math.abs(check.margin), check, system);
  if (!/[1-9]/.test(size)) return check.margin < 0 ? say.margins.justShort : say.margins.justEnough;
  return check.margin < 0 ? say.margins.short(size) : say.margins.spare(size);
}

/**
 * The margin of the deciding check, and of which end it is: where it goes, of the hard end of what was measured; where
 * another force is needed, of what was entered, as what is said of that force is at the hard end.
 */
export function limitMarginText({ word, limit }: RungVerdict, system: System): string {
  if (limit === null) return '';
  const margin = marginText(limit, system);
  if (margin === '') return '';
  if (word === 'needs momentum' || word === 'needs a pull') return say.margins.asEntered(margin);
  if (!passes(word)) return margin;
  return limit.margin < 0 ? say.margins.maybe(margin) : say.margins.atWorst(margin);
}

function passes(word: VerdictWord): boolean {
  return word === 'goes' || word === 'goes with care';
}

/** One side of a check in its unit: what there is, or what is needed. */
export function amount(value: number, { quantity }: Pick<Measured, 'quantity'>, system: System): string {
  return quantity === 'share'
    ? say.margins.ofWeight(written(value.toFixed(2)))
    : shown(value, quantity, system);
}

/** What limits: the cause where it fails, the nearest limit where it goes. */
export function limitText({ word, cause, limit }: RungVerdict): string {
  return passes(word) && limit !== null ? say.margins.nearest(say.check[limit.name]) : cause;
}

/** What it takes besides driving: an entry speed, or the force that it lacks; empty where nothing. */
export function demandText({ word, entrySpeedMps, pullN }: RungVerdict, system: System): string {
  if (word === 'needs momentum') return say.margins.enterAt(shown(entrySpeedMps, 'speed', system));
  if (word === 'needs a pull') return say.margins.lacks(shown(pullN, 'force', system));
  return '';
}

/**
 * All that is to be engaged before the obstacle: a rung keeps what those below it engage. Low range comes with all four
 * driven (common practice, no source).
 */
export function engagedText({ rung, ladder }: Verdict): string {
  const at = ladder.findIndex((step) => step.rung === rung);
  const names = ladder.slice(0, at + 1).map((step) => step.rung.name);
  const fourSaid = names[0] === 'as it comes' || rung.aids.lowRange;
  return (at > 0 && fourSaid ? names.slice(1) : names).map((name) => say.rung[name]).join(', ');
}

/** Whether aids and line are worth naming. */
export function goesSomehow(word: VerdictWord): boolean {
  return word !== 'does not go' && word !== 'not known';
}

/** For style sheets. */
export function wordClass(word: VerdictWord): string {
  return word.replaceAll(' ', '-');
}

/** In how many of a hundred draws from what was entered it goes at a crawl; empty where that was not asked. */
export function sureText(goesIn: number | null | undefined): string {
  return goesIn == null ? '' : say.margins.outOfHundred(outOfHundred(goesIn));
}
