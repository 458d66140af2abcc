import { keptServer } from './clubAddress.ts';

const ADDRESS = 'rutline.tiles';

/** The address of tiles as the user typed it, or null. */
export function typedAddress(): string | null {
  try {
    const typed = localStorage.getItem(ADDRESS);
    return typed !== null && isTileAddress(typed) ? typed : null;
  } catch {
    return null;
  }
}

/** Keeps an address for the next time that the page is loaded: this page was told what it may fetch when it began. */
export function typeAddress(template: string): void {
  localStorage.setItem(ADDRESS, template);
}

export function forgetAddress(): void {
  try {
    localStorage.removeItem(ADDRESS);
  } catch {
    return;
  }
}

export function isTileAddress(text: string): boolean {
  if (!['{z}', '{x}', '{y}'].every((part) => text.includes(part))) return false;
  try {
    const { protocol, hostname, username } = new URL(text);
    return protocol === 'https:' && username === '' && !/[{}]|%7B/i.test(hostname);
  } catch {
    return false;
  }
}

/**
 * Lets this page fetch from nowhere but itself and the servers whose addresses the user typed, for as long as it is open:
 * the policy of the built page would let it fetch from any, and can only be made narrower from here on. The development
 * server has no policy.
 */
export function narrowPolicy(): void {
  if (document.querySelector('meta[http-equiv="Content-Security-Policy"]') === null) return;
  const typed = [typedAddress(), keptServer()?.address ?? null].filter((address) => address !== null);
  const meta = document.createElement('meta');
  meta.httpEquiv = 'Content-Security-Policy';
  meta.content = ["connect-src 'self'", ...typed.map((address) => new URL(address).origin)].join(' ');
  document.head.append(meta);
}
