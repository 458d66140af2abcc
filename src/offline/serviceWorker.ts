import type { Ask, Kept, Said } from './kept.ts';
import { keptAddress } from './kept.ts';
import { Shelf } from './shelf.ts';

declare const self: ServiceWorkerGlobalScope;

/** Written in front of this file when it is built. */
declare const KEPT: Kept;

const folder = self.registration.scope;
const shelf = new Shelf(folder, KEPT);

self.addEventListener('install', (event) => event.waitUntil(fill()));

async function fill(): Promise<void> {
  try {
    await shelf.fill();
  } catch (cause) {
    for (const page of await pages()) page.postMessage(failure(cause));
    throw cause;
  }
}

/** A page of the build before this one may still be open and fetch of its files. */
self.addEventListener('activate', (event) =>
  event.waitUntil(pages().then((open) => (open.length > 1 ? undefined : shelf.clearOthers()))),
);

self.addEventListener('fetch', (event) => {
  const { request } = event;
  const address = request.method === 'GET' ? keptAddress(request.url, folder) : null;
  if (address !== null) event.respondWith(shelf.at(address).then((kept) => kept ?? fetch(request)));
});

self.addEventListener('message', (event) => {
  const ask = event.data as Ask;
  event.waitUntil(ask === 'take over' ? self.skipWaiting() : makeSure(event.ports[0]));
});

/** Serves the page that asks from now on too, which the network may have brought, and answers whether all is kept. */
async function makeSure(answer: MessagePort): Promise<void> {
  try {
    await self.clients.claim();
    if (!(await shelf.isFull())) await shelf.fill();
    answer.postMessage({ kept: true } satisfies Said);
  } catch (cause) {
    answer.postMessage(failure(cause));
  }
}

function failure(cause: unknown): Said {
  return { kept: false, noRoom: cause instanceof DOMException && cause.name === 'QuotaExceededError' };
}

function pages(): Promise<readonly Client[]> {
  return self.clients.matchAll({ type: 'window', includeUncontrolled: true });
}
