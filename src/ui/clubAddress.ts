import type { ClubServer, Met } from '../workers/clubServer.ts';

const SERVER = 'rutline.clubServer';
const MET = 'rutline.clubServer.met';

/** When everything was last exchanged, milliseconds since 1970-01-01T00:00:00Z, and how each track stood when it was. */
export interface Meeting {
  readonly atMs: number | null;
  readonly met: ReadonlyMap<string, Met>;
}

/** The club's server as the user typed it in; null where none is kept. */
export function keptServer(): ClubServer | null {
  const { address, key } = (kept(SERVER) ?? {}) as Partial<ClubServer>;
  if (typeof address !== 'string' || typeof key !== 'string') return null;
  return isServerAddress(address) && isKey(key) ? { address, key } : null;
}

/** Keeps a server for the next time that the page is loaded: this page was told what it may fetch when it began. */
export function keepServer(server: ClubServer): void {
  if (keptServer()?.address !== server.address) localStorage.removeItem(MET);
  localStorage.setItem(SERVER, JSON.stringify(server));
}

export function forgetServer(): void {
  try {
    localStorage.removeItem(SERVER);
    localStorage.removeItem(MET);
  } catch {
    return;
  }
}

/** Null where they have not met, or it could not be kept: then each track is asked about again, and nothing is lost. */
export function lastMeeting(): Meeting | null {
  const { atMs, met } = (kept(MET) ?? {}) as { readonly atMs?: unknown; readonly met?: unknown };
  if (!Array.isArray(met)) return null;
  return { atMs: typeof atMs === 'number' ? atMs : null, met: new Map(met as [string, Met][]) };
}

export function keepMeeting({ atMs, met }: Meeting): void {
  try {
    localStorage.setItem(MET, JSON.stringify({ atMs, met: [...met] }));
  } catch {
    localStorage.removeItem(MET);
  }
}

/** `https:` anywhere. Plain `http:`, in which the key can be read on the way, only within this machine or its network. */
export function isServerAddress(text: string): boolean {
  try {
    const { protocol, hostname, username, search, hash } = new URL(text);
    if (username !== '' || search !== '' || hash !== '') return false;
    return protocol === 'https:' || (protocol === 'http:' && isNear(hostname));
  } catch {
    return false;
  }
}

/** What a header may carry, and what keys are made of. */
export function isKey(text: string): boolean {
  return /^[\w-]{1,200}$/.test(text);
}

/** RFC 1122 section 3.2.1.3 (loopback), RFC 1918 (private use), RFC 3927 (link-local), RFC 6761 and 6762 (names). */
function isNear(hostname: string): boolean {
  if (hostname === 'localhost' || hostname === '[::1]' || hostname.endsWith('.local')) return true;
  const parts = /^(\d+)\.(\d+)\.\d+\.\d+$/.exec(hostname);
  if (parts === null) return false;
  const [first, second] = [Number(parts[1]), Number(parts[2])];
  return (
    first === 10 ||
    first === 127 ||
    (first === 172 && second >= 16 && second <= 31) ||
    (first === 192 && second === 168) ||
    (first === 169 && second === 254)
  );
}

function kept(key: string): unknown {
  try {
    return JSON.parse(localStorage.getItem(key) ?? 'null');
  } catch {
    return null;
  }
}
