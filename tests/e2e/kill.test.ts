import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
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
  for await (const kill of kills(desk(inject('url')), { folder: join(folder, 'desk'), count: 6, seed: 1 }))
    all.push(kill);
  expect(all.flatMap(({ lost }) => lost)).toEqual([]);
  expect(all).toHaveLength(6);
  expect(all.reduce((sum, { kept }) => sum + kept, 0)).toBeGreaterThan(10);
  expect(all.some(({ midway }) => midway)).toBe(true);
});

test('a page that says so before it is written is found out', async () => {
  const hasty: Subject = {
    name: 'says it too early',
    begin: (page) => page.goto(`${inject('url')}manifest.webmanifest`).then(() => undefined),
    open: (page) => page.goto(`${inject('url')}manifest.webmanifest`).then(() => undefined),
    edit: (page, from) =>
      page.evaluate((n) => {
        localStorage.setItem('n', String(n));
        void (globalThis as unknown as { kept: (n: number) => Promise<void> }).kept(n);
      }, from),
    found: (page) => page.evaluate(() => (localStorage.getItem('n') === null ? [] : [1])),
  };
  const lost: number[] = [];
  for await (const kill of kills(hasty, { folder: join(folder, 'hasty'), count: 1, seed: 1 }))
    lost.push(...kill.lost);
  expect(lost).toEqual([1]);
});
