import { agreedIn, closest } from './agreed.ts';
import type { Author, Candidate, Held, Replica, Scalar } from './replica.ts';
import { candidatesIn, put, revisionsOf, sameScalar } from './replica.ts';
import type { Spot, ToldValue } from './spot.ts';
import { spotsIn, toldValue } from './spot.ts';

/** One of the values that were entered at once, who entered it, and when. */
export interface Claim extends Author, ToldValue {
  /** Names it when it is chosen. */
  readonly id: string;
}

/** A value that two people changed without knowing of each other. Where verdicts follow from it, that ground is not known. */
export interface Conflict {
  /** Names the value, here and in every copy of the track. */
  readonly key: string;
  readonly spot: Spot;
  /** Two or more, different from each other; the first stands in for it in lists and drawings until someone chooses. */
  readonly claims: readonly Claim[];
}

/** Everything over which someone must choose, what verdicts follow from first. */
export function conflictsOf(replica: Replica): Conflict[] {
  const held = agreedIn(replica);
  const spotOf = spotsIn(held);
  const candidatesOf = candidatesIn(replica);
  const all = [...held].flatMap(([key, values]): Conflict[] => {
    const spot = values.length > 1 ? spotOf(key) : null;
    if (spot === null) return [];
    const claims = onceEach(closest(key, candidatesOf(key))).map(({ id, by, atMs, value }) => ({
      id,
      by,
      atMs,
      ...toldValue(key, value),
    }));
    return [{ key, spot, claims }];
  });
  return all.sort((a, b) => Number(b.spot.isJudged) - Number(a.spot.isJudged));
}

/** How many there are. */
export function conflictCount(held: Held): number {
  const spotOf = spotsIn(held);
  return [...held].filter(([key, { length }]) => length > 1 && spotOf(key) !== null).length;
}

/** The replica after someone chose one of the claims; null where that claim is no longer one of several. */
export function resolved(replica: Replica, key: string, claimId: string, author: Author): Replica | null {
  const candidates = closest(key, candidatesIn(replica)(key));
  const chosen = candidates.find(({ id }) => id === claimId);
  if (!chosen || onceEach(candidates).length < 2) return null;
  return put(replica, new Map([[key, chosen.value]]), author).replica;
}

/** Of those who entered the same, the first. */
function onceEach(candidates: readonly Candidate[]): Candidate[] {
  return candidates.filter(
    ({ value }, i) => candidates.findIndex((other) => sameScalar(other.value, value)) === i,
  );
}

/** One value that changed. `before` is empty where there was none, and has several where this was the choice between them. */
export interface Changed {
  readonly spot: Spot;
  readonly before: readonly ToldValue[];
  readonly after: ToldValue;
}

/** What one person did at one moment. */
export interface Revised extends Author {
  readonly id: string;
  /** Whether with it the track was first filed; everything is new then. */
  readonly isFirst: boolean;
  readonly changes: readonly Changed[];
}

/** Who changed what and when, oldest first. */
export function historyOf(replica: Replica): Revised[] {
  const spotOf = spotsIn(agreedIn(replica));
  return revisionsOf(replica).map(({ puts, ...revision }) => ({
    ...revision,
    changes: puts.flatMap(({ key, before, after }): Changed[] => {
      const spot = isSaidAgain(before, after) ? null : spotOf(key);
      const told = (value: Scalar) => toldValue(key, value);
      return spot === null ? [] : [{ spot, before: before.map(told), after: told(after) }];
    }),
  }));
}

function isSaidAgain(before: readonly Scalar[], after: Scalar): boolean {
  return before.length === 1 && sameScalar(before[0], after);
}
