import type { Problem, Reading } from '../problem.ts';
import { agreedIn } from './agreed.ts';
import { joined } from './filing.ts';
import { gradedFrom } from './gradedRecord.ts';
import { entriesOf, isJudged, recordFrom } from './gradedHeld.ts';
import type { GradedTrack } from './gradedTrack.ts';
import { keyOf, partsOf, plainOf } from './heldKey.ts';
import type { Author, Edited, Heads, Held, Replica, Scalar } from './replica.ts';
import { emptyReplica, heldBy, merged, put, sameScalar, slotsOf } from './replica.ts';

/** A graded track that nobody has filed yet. */
export function firstFiled(graded: GradedTrack, author: Author): Replica {
  return edited(emptyReplica(), graded, author);
}

/** What a replica says, now or as of `heads`. That ground in conflict has no length is no problem of its own. */
export function gradedOf(replica: Replica, heads: Heads | null = null): Reading<GradedTrack> {
  const held = agreedIn(replica, heads);
  const { value, problems } = gradedFrom(recordFrom(held));
  const torn = [...held].some(([key, { length }]) => length > 1 && isJudged(partsOf(key) ?? []));
  return { value, problems: torn ? besideChoices(problems) : problems };
}

/** What is wrong with a track besides lengths of ground that are not known until someone has chosen. */
export function besideChoices(problems: readonly Problem[]): Problem[] {
  return problems.filter(({ where }) => !where.endsWith('.lengthM'));
}

/** The track that a replica says that it is; null where it says none. */
export function idOf(replica: Replica): string | null {
  const id = plainOf(heldBy(replica).get('id')?.[0]);
  return typeof id === 'string' && gradedOf(replica).value !== null ? id : null;
}

/**
 * The replica after someone, who saw the track as it was at `heads` (null: as it is), made it into `after`. Only what they
 * changed is changed: what others did since then stays, and a value that both changed is kept twice.
 */
export function edited(
  replica: Replica,
  after: GradedTrack,
  author: Author,
  heads: Heads | null = null,
): Replica {
  return editedAt(replica, after, author, heads).replica;
}

/**
 * A copy of a replica in the place of one that cannot be read, of which only the plain record `left` remains, or null. What
 * that has more is added; where both have something, the replica's stands. `nowMs` is the time of day.
 */
export function mendedWith(replica: Replica, left: GradedTrack | null, nowMs: number): Replica {
  const copy = merged(emptyReplica(), replica);
  const own = left && gradedOf(copy).value;
  if (left === null || own === null) return copy;
  const all = joined(own, left);
  const words = { name: own.name || left.name, area: own.area || left.area, note: own.note || left.note };
  return edited(copy, { ...all, ...words }, { by: '', atMs: nowMs });
}

/** The same, with the state that says exactly what `after` says. */
export function editedAt(
  replica: Replica,
  after: GradedTrack,
  author: Author,
  heads: Heads | null = null,
): Edited {
  const held = agreedIn(replica, heads);
  const newSlot = slotsOf(replica);
  const before = held.size === 0 ? null : gradedFrom(recordFrom(held)).value;
  const had = before ? entriesOf(before, held, newSlot) : new Map<string, Scalar>();
  return put(replica, difference(had, entriesOf(after, held, newSlot), held), author, heads);
}

/**
 * What must be put to come from one to the other. What is removed is only marked as gone. Whoever changes something marks
 * it as there, with all that it stands in, so that one who removes it at the same time is in conflict with them.
 */
function difference(
  had: ReadonlyMap<string, Scalar>,
  wanted: ReadonlyMap<string, Scalar>,
  held: Held,
): Map<string, Scalar> {
  const puts = new Map<string, Scalar>();
  const gone = [...had.keys()].filter((key) => isMark(key) && !wanted.has(key));
  for (const key of gone) if (!marksOver(key).some((over) => gone.includes(over))) puts.set(key, 'false');
  for (const [key, value] of wanted) {
    if (sameScalar(had.get(key), value)) continue;
    puts.set(key, value);
    for (const mark of marksOver(key))
      if (wanted.has(mark) && (held.get(mark)?.length ?? 1) === 1) puts.set(mark, 'true');
  }
  return puts;
}

function isMark(key: string): boolean {
  return key.endsWith('/there');
}

/** The marks of everything that a key stands in, its own not among them. */
function marksOver(key: string): string[] {
  const parts = partsOf(key) ?? [];
  const own = isMark(key) ? parts.slice(0, -2) : parts.slice(0, -1);
  return own.map((_, i) => keyOf(...own.slice(0, i + 1), 'there'));
}
