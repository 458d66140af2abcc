import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createServer } from 'vite';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { clubArchive } from './killedArchive.ts';
import { desk } from './killedDesk.ts';
import type { Kill, Subject } from './kills.ts';
import { kills } from './kills.ts';

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'rutline-kills-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

test('what the page said was stored is there after its processes were killed, whichever, at any moment', async () => {
  const all: Kill[] = [];
  for await (const kill of kills(desk(inject('url')), { folder: join(folder, 'desk'), count: 3, seed: 1 }))
    all.push(kill);
  expect(all.flatMap(({ lost }) => lost)).toEqual([]);
  expect(all).toHaveLength(3);
  expect(all.reduce((sum, { kept }) => sum + kept, 0)).toBeGreaterThan(5);
  expect(all.some(({ midway }) => midway)).toBe(true);
});

test('what the archive said was filed, noted or merged is there after a kill, whole and without a choice to make', async () => {
  const server = await createServer({
    configFile: false,
    logLevel: 'error',
    server: { port: 0, host: '127.0.0.1', hmr: false },
    optimizeDeps: { noDiscovery: true },
    worker: { format: 'es' },
  });
  try {
    await server.listen();
    const subject = clubArchive(server.resolvedUrls!.local[0]);
    const all: Kill[] = [];
    for await (const kill of kills(subject, { folder: join(folder, 'club'), count: 3, seed: 2 }))
      all.push(kill);
    expect(all.flatMap(({ lost }) => lost)).toEqual([]);
    expect(all.reduce((sum, { kept }) => sum + kept, 0)).toBeGreaterThan(0);
  } finally {
    await server.close();
  }
});

test('a page that says so before it is written is found out', async () => {
  const hasty: Subject = {
    name: 'says it too early',
    mostMs: 120,
    begin: (page) => page.goto(`${inject('url')}manifest.webmanifest`).then(() => undefined),
    open: (page) => page.goto(`${inject('url')}manifest.webmanifest`).then(() => undefined),
    edit: (page, from) =>
      page.evaluate((n) => {
        localStorage.setItem('n', String(n));
        void (globalThis as unknown as { kept: (n: number) => Promise<void> }).kept(n);
      }, from),
    found: (page) =>
      page.evaluate(() => Array.from({ length: Number(localStorage.getItem('n') ?? 0) }, (_, i) => i + 1)),
  };
  // A kill may come before the page has said anything, or after the browser has written after all; not every time.
  const lost: number[] = [];
  for await (const kill of kills(hasty, { folder: join(folder, 'hasty'), count: 8, seed: 1 })) {
    lost.push(...kill.lost);
    if (lost.length > 0) break;
  }
  expect(lost).not.toEqual([]);
});
