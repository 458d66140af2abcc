import type { Heads, Replica } from './replica.ts';
import { bytesSince, hasCome, headsOf, knownOf, replicaToBytes, withChanges } from './replica.ts';

/** What one side of an exchange sends the other: how far it has got with a track, and the changes the other may lack. */
export interface Parcel {
  readonly heads: Heads;
  /** Where both sides stood after their last exchange; empty where they had none. */
  readonly base: Heads;
  /** Empty where nothing is sent. */
  readonly changes: Uint8Array;
}

/** SHA-256 as hexadecimal digits, as the engine names its changes. */
const HEAD = /^[0-9a-f]{64}$/;

/** Heads that anyone may claim: more people than ever change one track at once. */
const MOST_HEADS = 1_000;

/** Bytes of the first line. */
const LINE_BYTES = 2 * MOST_HEADS * 70;

/**
 * What the other side lacks of a replica. It has `theirs`; where it has got somewhere that this side has not, `base` as well,
 * which it is not asked about: whoever lost that lacks something then, and says so.
 */
export function parcelOf(replica: Replica, theirs: Heads, base: Heads): Parcel {
  const heads = headsOf(replica);
  const ours = knownOf(replica, base);
  const seen = knownOf(replica, theirs);
  const known = seen.length === theirs.length ? seen : [...new Set([...seen, ...ours])];
  const hasAll = heads.every((head) => known.includes(head));
  const whole = () => (known.length === 0 ? replicaToBytes(replica) : bytesSince(replica, known));
  return { heads, base: ours, changes: hasAll ? new Uint8Array(0) : whole() };
}

/** One line of JSON, then the changes. */
export function parcelToBytes({ heads, base, changes }: Parcel): Uint8Array<ArrayBuffer> {
  const line = new TextEncoder().encode(`${JSON.stringify({ heads, base })}\n`);
  const bytes = new Uint8Array(line.length + changes.length);
  bytes.set(line);
  bytes.set(changes, line.length);
  return bytes;
}

/** Null where the bytes are something else. */
export function parcelFrom(bytes: Uint8Array): Parcel | null {
  const end = bytes.subarray(0, LINE_BYTES).indexOf(10);
  if (end < 0) return null;
  try {
    const line: unknown = JSON.parse(new TextDecoder().decode(bytes.subarray(0, end)));
    const { heads, base } = line as { readonly heads?: unknown; readonly base?: unknown };
    return isHeads(heads) && isHeads(base) ? { heads, base, changes: bytes.subarray(end + 1) } : null;
  } catch {
    return null;
  }
}

export function isHeads(value: unknown): value is Heads {
  return (
    Array.isArray(value) &&
    value.length <= MOST_HEADS &&
    value.every((head) => typeof head === 'string' && HEAD.test(head))
  );
}

/**
 * The replica with all that a parcel brings; null where it is damaged, or builds on changes that are neither here nor in
 * it. The replica that is given is used up.
 */
export function unpacked(replica: Replica, { heads, changes }: Parcel): Replica | null {
  const next = changes.length === 0 ? replica : withChanges(replica, changes);
  return next !== null && hasCome(next, heads) ? next : null;
}
