import { keptServer } from './clubAddress.ts';
import { archivesToRead } from './publishedAddress.ts';
import { typedAddress } from './tileAddress.ts';

/** What this page may fetch from beside itself; null where no policy binds it. */
let allowed: ReadonlySet<string> | null = null;

/**
 * Lets this page fetch from nowhere but itself and the servers whose addresses the user typed, for as long as it is open:
 * the policy of the built page would let it fetch from any, and can only be made narrower from here on. The development
 * server has no policy.
 */
export function narrowPolicy(): void {
  if (document.querySelector('meta[http-equiv="Content-Security-Policy"]') === null) return;
  const typed = [typedAddress(), keptServer()?.address ?? null, ...archivesToRead()];
  allowed = new Set(typed.filter((address) => address !== null).map((address) => new URL(address).origin));
  const meta = document.createElement('meta');
  meta.httpEquiv = 'Content-Security-Policy';
  meta.content = ["connect-src 'self'", ...allowed].join(' ');
  document.head.append(meta);
}

/** Whether this page may fetch from there, or has to be loaded again once the address is kept. */
export function mayFetch({ origin }: URL): boolean {
  return allowed === null || origin === location.origin || allowed.has(origin);
}
