import { INDEX_NAME } from '../archive/publish/published.ts';
import { isServerAddress } from './clubAddress.ts';

const KEPT = 'rutline.published';
const GOING = 'rutline.published.going';

/** Addresses that are remembered; the one that was read longest ago goes first. */
const MOST = 30;

/**
 * The address of the index out of what someone typed: of the folder that it lies in, or its own. Null where it is none;
 * without `https://` it is taken for that.
 */
export function indexAddress(typed: string): URL | null {
  const text = typed.trim();
  const whole = /^[a-z][a-z0-9+.-]*:\/\//i.test(text) ? text : `https://${text}`;
  if (text === '' || !isServerAddress(whole)) return null;
  const url = new URL(whole);
  if (/\.pmtiles$/i.test(url.pathname)) return url;
  return new URL(INDEX_NAME, `${url.origin}${url.pathname.replace(/\/*$/, '/')}`);
}

/** An address as it is shown: without what every one of them has. */
export function shownAddress(address: string): string {
  const { protocol, host, pathname } = new URL(address);
  const path = pathname.endsWith(`/${INDEX_NAME}`) ? pathname.slice(0, -INDEX_NAME.length - 1) : pathname;
  return `${protocol === 'https:' ? '' : 'http://'}${host}${path}`;
}

/** A page that came by `https:` asks by plain `http:` on its own machine only. */
export function isWithheld({ protocol, hostname }: URL, page: Pick<Location, 'protocol'>): boolean {
  const isHere = hostname === 'localhost' || hostname === '[::1]' || hostname.startsWith('127.');
  return page.protocol === 'https:' && protocol === 'http:' && !isHere;
}

/** The archives that were read on this device, the newest first. */
export function keptArchives(): readonly string[] {
  const list = stored('localStorage', KEPT);
  return Array.isArray(list) ? list.filter(isKept).slice(0, MOST) : [];
}

export function keepArchive(address: string): void {
  store('localStorage', KEPT, [address, ...keptArchives().filter((one) => one !== address)].slice(0, MOST));
}

/** This page may still fetch from there until it is loaded again. */
export function forgetArchive(address: string): void {
  store(
    'localStorage',
    KEPT,
    keptArchives().filter((one) => one !== address),
  );
}

/** Notes which archive to read once the page has been loaded again. */
export function goTo(address: string): void {
  store('sessionStorage', GOING, address);
}

/** The archive that someone asked for before the page was loaded again, once. */
export function takeGoing(): string | null {
  const address = going();
  store('sessionStorage', GOING, null);
  return address;
}

/** What the page may need to fetch from. */
export function archivesToRead(): readonly string[] {
  return [going(), ...keptArchives()].filter((address) => address !== null);
}

function going(): string | null {
  const address = stored('sessionStorage', GOING);
  return isKept(address) ? address : null;
}

function isKept(address: unknown): address is string {
  return typeof address === 'string' && isServerAddress(address) && indexAddress(address)?.href === address;
}

/** A browser that keeps nothing may refuse even to name its storage. */
type Shelf = 'localStorage' | 'sessionStorage';

function stored(shelf: Shelf, key: string): unknown {
  try {
    return JSON.parse(globalThis[shelf].getItem(key) ?? 'null');
  } catch {
    return null;
  }
}

/** Not kept where the browser keeps nothing: then it has to be typed again. */
function store(shelf: Shelf, key: string, value: unknown): void {
  try {
    globalThis[shelf].setItem(key, JSON.stringify(value));
  } catch {
    return;
  }
}
