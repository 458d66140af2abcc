import { isDateOnly, sameUtcDay } from './dateOnly.ts';
import { partsOf, plainOf } from './heldKey.ts';
import type { Plain } from './reader.ts';
import type { Candidate, Heads, Held, Replica } from './replica.ts';
import { candidatesIn, heldBy, sameScalar } from './replica.ts';
import { same } from './same.ts';

/** What a replica holds, now or as of `heads`, less what another value under the same key says more closely. */
export function agreedIn(replica: Replica, heads: Heads | null = null): Held {
  const held = heldBy(replica, heads);
  if (![...held.values()].some(({ length }) => length > 1)) return held;
  const candidatesOf = candidatesIn(replica, heads);
  return new Map(
    [...held].map(([key, values]) => {
      if (values.length < 2) return [key, values];
      const left = closest(key, candidatesOf(key));
      return [key, values.filter((value) => left.some((one) => sameScalar(one.value, value)))];
    }),
  );
}

/** Those of the values that were put under a key at once which no other says more closely. */
export function closest(key: string, candidates: readonly Candidate[]): Candidate[] {
  const parts = partsOf(key) ?? [];
  return candidates.filter((one) => !candidates.some((other) => saysMore(parts, other, one)));
}

/**
 * Whether two values agree and `more` says it more closely. A date without a time of day is no other time than one of that
 * day, and its place among those of the day is. What nobody ever said in the history that `less` began does not contradict what another history says of it: a track
 * that was published has no texts, nor times of its points.
 */
function saysMore(parts: readonly string[], more: Candidate, less: Candidate): boolean {
  const field = parts.at(-1);
  const some = plainOf(more.value);
  const few = plainOf(less.value);
  if (field === 'atMs') return isTimeOf(some, few);
  if (!less.isFirst) return false;
  if (field === 'note' || field === 'by') return few === '' && some !== '';
  if (parts.length > 1 || same(some, few)) return false;
  if (field === 'track') return isPlain(some) && same(withoutTold(some), few);
  if (field === 'waypoints') return Array.isArray(some) && same(some.map(withoutTold), few);
  return false;
}

function isTimeOf(time: unknown, date: unknown): boolean {
  if (typeof time !== 'number' || typeof date !== 'number') return false;
  return sameUtcDay(time, date) && isDateOnly(date) && (!isDateOnly(time) || time > date);
}

/** A recorded track or a waypoint without what publishing takes off. */
function withoutTold(record: Plain): Plain {
  const bare = 'description' in record ? { ...record, description: '' } : record;
  return Array.isArray(record.timeS) ? { ...bare, timeS: record.timeS.map(() => null) } : bare;
}

function isPlain(value: unknown): value is Plain {
  return typeof value === 'object' && value !== null;
}
