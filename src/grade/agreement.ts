import type { OutcomeWord } from './outcome.ts';
import { OUTCOME_WORDS } from './outcome.ts';
import type { Share } from './share.ts';
import { shareOf } from './share.ts';
import type { VerdictWord } from './verdict.ts';
import { VERDICT_WORDS } from './verdict.ts';

/** What was said before, and what happened. */
export interface SaidAndDone {
  /** Null where nothing was said. */
  readonly said: VerdictWord | null;
  readonly did: OutcomeWord;
}

/** How an outcome stands to what was said: `easier said` is the dangerous one. */
export type Bearing = 'as said' | 'easier said' | 'harder said' | 'nothing said';

/** What each verdict leads one to expect, as an index into `OUTCOME_WORDS`. */
const EXPECTS: Readonly<Record<VerdictWord, number | null>> = {
  goes: 0,
  'goes with care': 0,
  'needs momentum': 1,
  'needs a pull': 2,
  'does not go': 3,
  'not known': null,
};

const NEEDS_HELP = EXPECTS['needs a pull'] as number;

/** A vehicle that turns back where a pull was said to be needed did as said: it was not pulled, and did not go. */
export function bearingOf({ said, did }: SaidAndDone): Bearing {
  const expected = said === null ? null : EXPECTS[said];
  if (expected === null) return 'nothing said';
  const found = OUTCOME_WORDS.indexOf(did);
  if (found === expected) return 'as said';
  if (did === 'turned back' && expected >= NEEDS_HELP) return 'as said';
  return found > expected ? 'easier said' : 'harder said';
}

/** Whether a vehicle was said to go, with care or without, and did not go at a crawl: what must never happen. */
export function isWrongGoes(one: SaidAndDone): boolean {
  return one.said !== null && EXPECTS[one.said] === 0 && bearingOf(one) === 'easier said';
}

/** What was said against what happened, counted over any number of outcomes. */
export interface Agreement {
  readonly count: number;
  /** Down in the order of `VERDICT_WORDS`, the last row where nothing was said; across in that of `OUTCOME_WORDS`. */
  readonly rows: readonly { readonly said: VerdictWord | null; readonly did: readonly number[] }[];
  /** Of those of which something was said. */
  readonly asSaid: Share;
  readonly easierSaid: Share;
  readonly harderSaid: Share;
  /** Of those said to go, with care or without: how many did not at a crawl. */
  readonly wrongGoes: Share;
}

export function agreementOf(all: readonly SaidAndDone[]): Agreement {
  const rows = [...VERDICT_WORDS, null].map((said) => ({
    said,
    did: OUTCOME_WORDS.map((did) => all.filter((one) => one.said === said && one.did === did).length),
  }));
  const bearings = all.map(bearingOf);
  const count = (bearing: Bearing) => bearings.filter((one) => one === bearing).length;
  const told = all.length - count('nothing said');
  const saidToGo = all.filter(({ said }) => said !== null && EXPECTS[said] === 0);
  return {
    count: all.length,
    rows,
    asSaid: shareOf(count('as said'), told),
    easierSaid: shareOf(count('easier said'), told),
    harderSaid: shareOf(count('harder said'), told),
    wrongGoes: shareOf(saidToGo.filter(isWrongGoes).length, saidToGo.length),
  };
}
