import type { Heads } from '../archive/replica.ts';
import { isHeads, parcelFrom } from '../archive/parcel.ts';
import type { Problem, Reading } from '../problem.ts';
import { say } from '../words/words.ts';
import { acceptParcel, findTracks, offerParcel } from './archive.ts';

/** A club's server: its address, and the key that its keeper gave to whoever works on this device. */
export interface ClubServer {
  readonly address: string;
  readonly key: string;
}

/** How a track stood here and there when both were last the same: without change on either side there is nothing to do. */
export interface Met {
  readonly updatedMs: number;
  readonly heads: Heads;
}

/** What became of one track. */
export interface Passed {
  readonly id: string;
  /** Whether this device got something. */
  readonly came: boolean;
  /** Whether the server got something. */
  readonly went: boolean;
  /** Changes of this device that stayed here, since the key may only take. */
  readonly stayed: boolean;
}

export interface Exchanged {
  readonly passed: readonly Passed[];
  readonly met: ReadonlyMap<string, Met>;
}

/** Why a server did not do what it was asked; `say.clubServer.trouble` says it. */
export type Trouble = keyof typeof say.clubServer.trouble;

interface Listed {
  readonly may: 'read' | 'write';
  readonly tracks: readonly { readonly id: string; readonly heads: Heads }[];
}

/**
 * Exchanges every track with a server, one after the other, and tells the share that is done; stops after the track at
 * hand when `signal` is raised. What passed stays on both sides. Where one track cannot be exchanged, the others are.
 * @param met as it came out the last time
 */
export async function exchangeAll(
  server: ClubServer,
  met: ReadonlyMap<string, Met>,
  onProgress: (share: number) => void,
  signal?: AbortSignal,
): Promise<Reading<Exchanged>> {
  const listed = await list(server);
  if (typeof listed === 'string') return { value: null, problems: [troubleOf(server, listed)] };
  const own = await findTracks();
  if (own.value === null) return { value: null, problems: own.problems };
  const rows = new Map(own.value.map((row) => [row.id, row]));
  const theirs = new Map(listed.tracks.map(({ id, heads }) => [id, heads]));
  const ids = [...new Set([...rows.keys(), ...theirs.keys()])];
  const next = new Map(met);
  const passed: Passed[] = [];
  const problems: Problem[] = [...own.problems];
  for (const [i, id] of ids.entries()) {
    if (signal?.aborted) break;
    const before = met.get(id);
    const heads = theirs.get(id) ?? [];
    const isKnown = before?.updatedMs === rows.get(id)?.updatedMs && sameHeads(before?.heads, heads);
    if (!isKnown) {
      const one = await exchangeOne(server, id, heads, before?.heads ?? [], listed.may);
      if ('problems' in one) problems.push(...one.problems);
      else {
        problems.push(...one.warnings);
        if (one.met) next.set(id, one.met);
        if (one.passed.came || one.passed.went || one.passed.stayed) passed.push(one.passed);
      }
      if ('isOver' in one) break;
    }
    onProgress((i + 1) / ids.length);
  }
  return { value: { passed, met: next }, problems };
}

type One =
  | { readonly passed: Passed; readonly met: Met | null; readonly warnings: readonly Problem[] }
  | { readonly problems: readonly Problem[] }
  | { readonly problems: readonly Problem[]; readonly isOver: true };

async function exchangeOne(
  server: ClubServer,
  id: string,
  theirs: Heads,
  base: Heads,
  may: Listed['may'],
): Promise<One> {
  const offered = await offerParcel(id, theirs, base);
  if (offered.value === null) return { problems: offered.problems };
  const { heads, updatedMs, bytes, asking, gives } = offered.value;
  const went = gives && may === 'write';
  const stayed = gives && !went;
  if (sameHeads(heads, theirs))
    return {
      passed: { id, came: false, went: false, stayed: false },
      met: { updatedMs, heads },
      warnings: [],
    };
  if (stayed && theirs.length === 0)
    return { passed: { id, came: false, went: false, stayed }, met: null, warnings: [] };

  let reply = await post(server, id, went ? bytes : asking);
  if (reply === 'incomplete' && went) {
    // The server lost what both had; it is given everything.
    const whole = await offerParcel(id, [], []);
    if (whole.value === null) return { problems: whole.problems };
    reply = await post(server, id, whole.value.bytes);
  }
  if (typeof reply === 'string') {
    const problems = [troubleOf(server, reply)];
    return reply === 'offline' || reply === 'key' || reply === 'readOnly'
      ? { problems, isOver: true }
      : { problems };
  }
  const accepted = await acceptParcel(id, reply, Date.now());
  if (accepted.value === null) return { problems: accepted.problems };
  const came = (parcelFrom(reply)?.changes.length ?? 0) > 0;
  const met = stayed ? null : { updatedMs, heads: accepted.value };
  return { passed: { id, came, went, stayed }, met, warnings: accepted.problems };
}

function sameHeads(one: Heads | undefined, other: Heads): boolean {
  return one?.length === other.length && one.every((head) => other.includes(head));
}

async function list(server: ClubServer): Promise<Listed | Trouble> {
  const response = await asked(server, 'tracks');
  if (typeof response === 'string') return response;
  try {
    const listed = (await response.json()) as Partial<Listed> | null;
    const isListed =
      (listed?.may === 'read' || listed?.may === 'write') &&
      Array.isArray(listed.tracks) &&
      listed.tracks.every(({ id, heads }) => typeof id === 'string' && isHeads(heads));
    return isListed ? (listed as Listed) : 'notOurs';
  } catch {
    return 'notOurs';
  }
}

async function post(server: ClubServer, id: string, body: Uint8Array<ArrayBuffer>) {
  const response = await asked(server, `tracks/${encodeURIComponent(id)}`, body);
  if (typeof response === 'string') return response;
  try {
    return new Uint8Array(await response.arrayBuffer());
  } catch {
    return 'offline' as const;
  }
}

/** Nothing goes along that the browser keeps for the server: only the key. */
async function asked(
  { address, key }: ClubServer,
  path: string,
  body?: Uint8Array<ArrayBuffer>,
): Promise<Response | Trouble> {
  try {
    const response = await fetch(new URL(path, address.endsWith('/') ? address : `${address}/`), {
      method: body ? 'POST' : 'GET',
      headers: { Authorization: `Bearer ${key}` },
      body,
      cache: 'no-store',
      credentials: 'omit',
      redirect: 'error',
      referrerPolicy: 'no-referrer',
    });
    return response.ok ? response : (TROUBLES[response.status] ?? 'failed');
  } catch {
    return 'offline';
  }
}

const TROUBLES: Readonly<Record<number, Trouble>> = {
  401: 'key',
  403: 'readOnly',
  404: 'notOurs',
  409: 'incomplete',
  413: 'tooLarge',
  422: 'damaged',
  503: 'busy',
};

function troubleOf({ address }: ClubServer, trouble: Trouble): Problem {
  return { severity: 'error', where: new URL(address).host, ...say.clubServer.trouble[trouble], times: 1 };
}
