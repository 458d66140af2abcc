import type { TroubleWord } from '../archive/publish/trouble.ts';

/** Bytes of a file on a web host, and what tells this state of it from any other, where the host says so. */
export interface Range {
  readonly data: ArrayBuffer;
  readonly tag: string | null;
}

/** A host that says nothing for this long counts as one that does not answer. */
const PATIENCE_MS = 30_000;

/** Where a status says what is wrong; of the others, those from 500 are the host's own fault. */
const TROUBLES: Readonly<Record<number, TroubleWord>> = {
  401: 'refused',
  403: 'refused',
  404: 'nothingThere',
  410: 'nothingThere',
  416: 'brokenIndex',
  429: 'busy',
};

/**
 * A range of a file (RFC 9110, section 14), or why there is none. Nothing goes along that the browser keeps for the host.
 * The page fetches, and not a worker, which the page's policy would not bind.
 * @param at first byte
 * @param length count of bytes; fewer come at the end of the file
 */
export async function fetchRange(
  address: URL,
  at: number,
  length: number,
  signal: AbortSignal,
): Promise<Range | TroubleWord> {
  const waiting = AbortSignal.any([signal, AbortSignal.timeout(PATIENCE_MS)]);
  try {
    const response = await fetch(address, {
      headers: { Range: `bytes=${at}-${at + length - 1}` },
      ...PLAIN,
      signal: waiting,
    });
    if (response.status === 206) {
      const data = await read(response, length);
      if (data === null) return 'wholeFiles';
      const tag = response.headers.get('etag') ?? response.headers.get('last-modified');
      return { data, tag };
    }
    if (response.status === 200 && at === 0) return (await isTiles(response)) ? 'wholeFiles' : 'noArchive';
    await response.body?.cancel();
    return troubleOf(response);
  } catch {
    if (globalThis.navigator?.onLine === false) return 'noNetwork';
    return !signal.aborted && (await answersOthers(address, waiting)) ? 'noCors' : 'unreachable';
  }
}

const PLAIN = {
  cache: 'no-store',
  credentials: 'omit',
  redirect: 'manual',
  referrerPolicy: 'no-referrer',
} as const;

function troubleOf({ status, type }: Response): TroubleWord {
  if (type === 'opaqueredirect' || (status >= 300 && status < 400)) return 'moved';
  if (status === 200) return 'wholeFiles';
  return TROUBLES[status] ?? (status >= 500 ? 'busy' : 'refused');
}

/** What came, or null where more came than was asked for. */
async function read(response: Response, length: number): Promise<ArrayBuffer | null> {
  const bytes = new Uint8Array(length);
  let count = 0;
  const reader = response.body?.getReader();
  for (let piece = await reader?.read(); piece && !piece.done; piece = await reader?.read()) {
    if (count + piece.value.length > length) {
      await reader?.cancel();
      return null;
    }
    bytes.set(piece.value, count);
    count += piece.value.length;
  }
  return count === length ? bytes.buffer : bytes.buffer.slice(0, count);
}

/** Whether a whole file that came begins as one of tiles does; the rest of it is not waited for. */
async function isTiles(response: Response): Promise<boolean> {
  const reader = response.body?.getReader();
  const first = (await reader?.read())?.value ?? new Uint8Array(0);
  await reader?.cancel();
  return new TextDecoder().decode(first.subarray(0, 7)) === 'PMTiles';
}

/** Whether a host answers to a question whose answer no page may read; then it was only not let to be read. */
async function answersOthers(address: URL, signal: AbortSignal): Promise<boolean> {
  try {
    await fetch(address, { ...PLAIN, redirect: 'follow', method: 'HEAD', mode: 'no-cors', signal });
    return true;
  } catch {
    return false;
  }
}
