import * as Automerge from '@automerge/automerge/slim';

/** What one key of a replica holds: JSON text, or bytes. */
export type Scalar = string | Uint8Array<ArrayBuffer>;

/** A flat record that any number of people change, each on a copy of their own, with the history of every key. */
export type Replica = Automerge.Doc<Readonly<Record<string, unknown>>>;

/** The state of a replica at some moment, as the changes that nothing had followed yet. */
export type Heads = readonly string[];

/** Who changes something, and when: a name as they want to be named, which may be empty. */
export interface Author {
  readonly by: string;
  /** Milliseconds since 1970-01-01T00:00:00Z; kept to the second. */
  readonly atMs: number;
}

/** One of the values that were put under a key at once. */
export interface Candidate extends Author {
  /** Names the change, here and in every copy. */
  readonly id: string;
  readonly value: Scalar;
  /** Whether nothing came before the change: a history began with it. */
  readonly isFirst: boolean;
}

/** Every key with its value; where several people put different ones at once all of them, the same first everywhere. */
export type Held = ReadonlyMap<string, readonly Scalar[]>;

/** One change of one key; `before` is empty where there was nothing, and has several values where one was chosen. */
export interface Put {
  readonly key: string;
  readonly before: readonly Scalar[];
  readonly after: Scalar;
}

/** All that one person changed at one moment. */
export interface Revision extends Author {
  readonly id: string;
  /** Whether nothing came before it. */
  readonly isFirst: boolean;
  readonly puts: readonly Put[];
}

let ready: Promise<unknown> | null = null;

let broken = false;

/** Whether the engine gave way, as to bytes that unpack to more than there is memory: then it must be started anew elsewhere. */
export function engineIsBroken(): boolean {
  return broken;
}

/** Whether an error is the engine's giving way, which is noted. */
export function engineGaveWay(error: unknown): boolean {
  const gaveWay = error instanceof WebAssembly.RuntimeError;
  if (gaveWay) broken = true;
  return gaveWay;
}

/** Must have ended before anything else is asked. `wasm` is the engine's code: its bytes, or the answer that brings them. */
export function startReplicas(wasm: () => Uint8Array | Promise<Response>): Promise<unknown> {
  ready ??= Automerge.initializeWasm(wasm() as Uint8Array).catch((error: unknown) => {
    ready = null;
    throw error;
  });
  return ready;
}

/** With nothing in it. */
export function emptyReplica(): Replica {
  return Automerge.init();
}

/** A replica after a change, and the state that whoever made the change has before them: without what others did since. */
export interface Edited {
  readonly replica: Replica;
  readonly heads: Heads;
}

/**
 * Puts values as they were decided on at `heads`: what others did since stays, and where they put another value under
 * the same key both are kept. Null stands for now. The replica that is given is used up; go on with the one that comes out.
 */
export function put(
  replica: Replica,
  values: ReadonlyMap<string, Scalar>,
  { by, atMs }: Author,
  heads: Heads | null = null,
): Edited {
  const about = { message: by, time: Math.floor(atMs / 1000) };
  const now = Automerge.getHeads(replica);
  if (values.size === 0) return { replica, heads: heads ?? now };
  const engine = Automerge.getBackend(replica);
  const at = heads ? [...heads] : now;
  const standing = new Map([...values.keys()].map((key) => [key, engine.getAll('_root', key, at)]));
  const write = (record: Record<string, unknown>) => {
    for (const [key, value] of values) {
      // The engine leaves out what changes nothing, and of a choice notes only what was not chosen; both are said here.
      if (standing.get(key)!.some((full) => sameScalar(scalarOf(full) ?? undefined, value)))
        delete record[key];
      record[key] = typeof value === 'string' ? new Automerge.ImmutableString(value) : value;
    }
  };
  if (heads === null || sameHeads(heads, now)) {
    const changed = Automerge.change(replica, about, write);
    return { replica: changed, heads: Automerge.getHeads(changed) };
  }
  const { newDoc, newHeads } = Automerge.changeAt(replica, [...heads], about, write);
  return { replica: newDoc, heads: newHeads ?? heads };
}

/** Everything that either holds. */
export function merged(one: Replica, other: Replica): Replica {
  return Automerge.merge(Automerge.clone(one), other);
}

export function isReplica(one: object): one is Replica {
  return Automerge.isAutomerge(one);
}

export function headsOf(replica: Replica): Heads {
  return Automerge.getHeads(replica);
}

/** Whether a replica has got as far as `heads`. */
export function hasCome(replica: Replica, heads: Heads): boolean {
  return Automerge.hasHeads(replica, [...heads]);
}

function sameHeads(one: Heads, other: Heads): boolean {
  return one.length === other.length && one.every((head) => other.includes(head));
}

/** How many single values were ever put. */
export function putCount(replica: Replica): number {
  return Automerge.stats(replica).numOps;
}

/** Names that nobody else gives, one after the other. */
export function slotsOf(replica: Replica): () => string {
  const prefix = `${Automerge.getActorId(replica)}-${Automerge.stats(replica).numChanges}`;
  let given = 0;
  return () => `${prefix}-${given++}`;
}

/** All that a replica holds, now or as of `heads`. */
export function heldBy(replica: Replica, heads: Heads | null = null): Held {
  const at = heads ? [...heads] : undefined;
  const engine = Automerge.getBackend(replica);
  const held = new Map<string, Scalar[]>();
  for (const key of engine.keys('_root', at)) {
    const values = distinct(engine.getAll('_root', key, at).flatMap((full) => scalarOf(full) ?? []));
    if (values.length > 0) held.set(key, values);
  }
  return held;
}

/** Tells the values under a key, now or as of `heads`, with who put them, first the one that stands in for them meanwhile. */
export function candidatesIn(replica: Replica, heads: Heads | null = null): (key: string) => Candidate[] {
  const at = heads ? [...heads] : undefined;
  const authorOf = authorsOf(replica);
  const engine = Automerge.getBackend(replica);
  return (key) => {
    const all = engine.getAll('_root', key, at).flatMap((full): Candidate[] => {
      const value = scalarOf(full);
      const id = full[2];
      return value === null || id === undefined ? [] : [{ id, value, ...authorOf(id) }];
    });
    return all.reverse();
  };
}

/** Everything that was ever changed, oldest first, and what followed on something after it whatever the clocks said. */
export function revisionsOf(replica: Replica): Revision[] {
  const values = new Map<string, Scalar>();
  return changesOf(replica).map((change) => {
    const over = new Map<string, Scalar[]>();
    const puts = change.ops.flatMap(({ key, value, pred }, i): Put[] => {
      const before = [...(over.get(key) ?? []), ...pred.flatMap((id) => values.get(id) ?? [])];
      over.set(key, before);
      const after = opValue(value);
      if (after === null) return [];
      values.set(`${change.startOp + i}@${change.actor}`, after);
      return [{ key, before: distinct(before), after }];
    });
    const isFirst = change.deps.length === 0;
    return { id: change.hash, isFirst, by: change.message ?? '', atMs: change.time * 1000, puts };
  });
}

function changesOf(replica: Replica): Automerge.DecodedChange[] {
  const times = new Map<string, number>();
  const changes = Automerge.topoHistoryTraversal(replica).flatMap((hash) => {
    const change = Automerge.inspectChange(replica, hash);
    if (change) times.set(hash, Math.max(change.time, ...change.deps.map((dep) => times.get(dep) ?? 0)));
    return change ?? [];
  });
  const time = ({ hash }: Automerge.DecodedChange) => times.get(hash) ?? 0;
  return changes.sort((a, b) => time(a) - time(b) || a.startOp - b.startOp || (a.hash < b.hash ? -1 : 1));
}

export function replicaToBytes(replica: Replica): Uint8Array<ArrayBuffer> {
  return Automerge.save(replica) as Uint8Array<ArrayBuffer>;
}

/** What came after `heads`; can be appended to the bytes of a replica of that state. */
export function bytesSince(replica: Replica, heads: Heads): Uint8Array<ArrayBuffer> {
  return Automerge.saveSince(replica, [...heads]) as Uint8Array<ArrayBuffer>;
}

/** Those of `heads` that a replica has got as far as. */
export function knownOf(replica: Replica, heads: Heads): Heads {
  return heads.filter((head) => Automerge.hasHeads(replica, [head]));
}

/**
 * The replica with changes that came as bytes, those of `bytesSince` or a whole one; null where they are damaged. The
 * replica that is given is used up.
 */
export function withChanges(replica: Replica, bytes: Uint8Array): Replica | null {
  try {
    return Automerge.loadIncremental(replica, bytes);
  } catch (error) {
    engineGaveWay(error);
    return null;
  }
}

/** Null where the bytes, or any of the pieces that were appended to one another, are damaged or something else. */
export function replicaFrom(pieces: readonly Uint8Array[]): Replica | null {
  try {
    const whole = new Uint8Array(pieces.reduce((sum, { length }) => sum + length, 0));
    pieces.reduce((at, piece) => (whole.set(piece, at), at + piece.length), 0);
    return whole.length === 0 ? null : Automerge.load(whole);
  } catch (error) {
    engineGaveWay(error);
    return null;
  }
}

/** Gives the memory back that a replica took; nothing may be asked of it afterwards. */
export function free(replica: Replica): void {
  Automerge.free(replica);
}

function authorsOf(replica: Replica): (opId: string) => Omit<Candidate, 'id' | 'value'> {
  const byActor = new Map<string, Automerge.ChangeMetadata[]>();
  for (const change of Automerge.getChangesMetaSince(replica, []))
    byActor.set(change.actor, [...(byActor.get(change.actor) ?? []), change]);
  return (opId) => {
    const [counter, actor] = opId.split('@');
    const made = byActor
      .get(actor)
      ?.find(({ startOp, maxOp }) => startOp <= Number(counter) && Number(counter) <= maxOp);
    const isFirst = made?.deps.length === 0;
    return { by: made?.message ?? '', atMs: (made?.time ?? 0) * 1000, isFirst };
  };
}

function scalarOf([type, value]: readonly unknown[]): Scalar | null {
  return type === 'str' || type === 'bytes' ? (value as Scalar) : null;
}

/** History tells bytes as a list. */
function opValue(value: unknown): Scalar | null {
  if (Array.isArray(value)) return new Uint8Array(value as number[]);
  return typeof value === 'string' ? value : null;
}

/** Each value once, the last of the engine's first: that is the one it lets stand in for all. */
function distinct(values: readonly Scalar[]): Scalar[] {
  const once: Scalar[] = [];
  for (const value of [...values].reverse())
    if (!once.some((other) => sameScalar(other, value))) once.push(value);
  return once;
}

export function sameScalar(one: Scalar | undefined, other: Scalar | undefined): boolean {
  if (!(one instanceof Uint8Array) || !(other instanceof Uint8Array)) return one === other;
  return one.length === other.length && one.every((byte, i) => byte === other[i]);
}
