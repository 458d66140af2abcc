import type { Ask, Said } from './kept.ts';

/** What the page is told. */
export interface Told {
  /** Everything is on the device, and this page is served from there; or why not. */
  readonly said: (said: Said) => void;
  /** Another build is on the device and waits. `use` lets it take over and answers when it has. */
  readonly newer: (use: () => Promise<void>) => void;
}

/** Has the program kept on the device, and looks for a newer build whenever someone comes back to the page. */
export async function keep(script: string, told: Told): Promise<void> {
  if (!('serviceWorker' in navigator)) return;
  const container = navigator.serviceWorker;
  container.addEventListener('message', (event) => told.said(event.data as Said));
  container.startMessages();
  await container.register(script, { updateViaCache: 'none' });
  const registration = await container.getRegistration();
  if (registration === undefined) return;

  const offer = () => told.newer(() => takeOver(registration));
  const watch = () => {
    const { installing, active } = registration;
    installing?.addEventListener('statechange', () => {
      if (installing.state === 'installed' && active !== null) offer();
    });
  };
  if (registration.waiting && registration.active) offer();
  registration.addEventListener('updatefound', watch);
  watch();
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'visible') registration.update().catch(() => undefined);
  });

  const { active } = await container.ready;
  if (active) told.said(await answerOf(active));
}

function answerOf(worker: ServiceWorker): Promise<Said> {
  const { port1, port2 } = new MessageChannel();
  return new Promise((resolve) => {
    port1.onmessage = (event) => resolve(event.data as Said);
    worker.postMessage('make sure' satisfies Ask, [port2]);
  });
}

/** Where another window has already let it, there is nothing to wait for. */
function takeOver({ waiting }: ServiceWorkerRegistration): Promise<void> {
  return new Promise((resolve) => {
    if (waiting === null) return resolve();
    waiting.addEventListener('statechange', () => {
      if (waiting.state === 'activated') resolve();
    });
    waiting.postMessage('take over' satisfies Ask);
  });
}
