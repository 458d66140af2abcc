import { cpSync, mkdtempSync, readFileSync, readdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import type { Server } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterEach, beforeAll, beforeEach, expect, inject, test } from 'vitest';
import { preview } from 'vite';
import { seal } from '../../src/build/offline.ts';
import type { Draws } from './desk.ts';
import { launch, matrix, sitDown, WIDE } from './desk.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});

/** A copy of the program on a server of its own, in a folder below the top. */
let root: string;
let dist: string;
let server: Server | null = null;
let port = 0;
let url: string;

beforeEach(async () => {
  root = mkdtempSync(join(tmpdir(), 'rutline-'));
  dist = join(root, 'site', 'club', 'rutline');
  cpSync(inject('dist'), dist, { recursive: true });
  await serve();
  url = `http://127.0.0.1:${port}/club/rutline/`;
});
afterEach(async () => {
  await stop();
  port = 0;
  rmSync(root, { recursive: true, force: true });
});

async function serve(): Promise<void> {
  const { httpServer } = await preview({
    configFile: false,
    root,
    appType: 'mpa',
    logLevel: 'warn',
    build: { outDir: 'site' },
    preview: { host: '127.0.0.1', port, strictPort: port !== 0 },
  });
  server = httpServer as Server;
  port = (server.address() as { port: number }).port;
}

async function stop(): Promise<void> {
  const closing = server;
  server = null;
  if (closing === null) return;
  closing.closeAllConnections();
  await new Promise((resolve) => closing.close(resolve));
}

const open = (draws: Draws = 'no map') =>
  sitDown(browser, `${url}#/archive`, WIDE, { serviceWorkers: 'allow', draws });

const ready = (page: Page) => page.getByRole('status').filter({ hasText: 'Ready without network' }).waitFor();

const OFFER = 'A newer Rutline is here';

/** Whether a page is that of the newer build. */
const isNewer = (page: Page) => page.evaluate(() => document.documentElement.id === 'newer');
const newer = (page: Page) => page.waitForFunction(() => document.documentElement.id === 'newer');

/** Delivers another build: its page says so, and one of its workers goes by another name. */
function deliverNewer(): void {
  const assets = join(dist, 'assets');
  const worker = readdirSync(assets).find((name) => name.startsWith('workbench.worker'))!;
  renameSync(join(assets, worker), join(assets, 'workbench.worker-newer.js'));
  for (const file of readdirSync(assets).filter((name) => name.endsWith('.js'))) {
    const text = readFileSync(join(assets, file), 'utf8');
    writeFileSync(join(assets, file), text.replaceAll(worker, 'workbench.worker-newer.js'));
  }
  const page = join(dist, 'index.html');
  writeFileSync(page, readFileSync(page, 'utf8').replace('<html ', '<html id="newer" '));
  seal(dist);
}

/** By its address: the desks on the way there take their time to draw. */
async function openWorkbench(page: Page): Promise<void> {
  await page.evaluate((obstacle) => (location.hash = `#/workbench/${obstacle}`), 'obstacle-2');
  await page.getByText(/^(Goes:|No band)/).waitFor();
}

test('after the first load it starts without network, with its map, its verdicts and its workbench', async () => {
  const { context, page, faults } = await open('coarse map');
  await ready(page);
  const words = await matrix(page);
  await context.setOffline(true);
  await stop();
  await page.goto(url);
  await ready(page);
  await page.locator('canvas.maplibregl-canvas').waitFor();
  await page.getByText(/^Contours every/).waitFor();
  expect(await matrix(page)).toEqual(words);
  await openWorkbench(page);
  expect(faults).toEqual([]);
  await context.close();
});

test('the page that was open when the network went can open what it had not opened before', async () => {
  const { context, page, faults } = await open();
  await ready(page);
  await context.setOffline(true);
  await stop();
  await openWorkbench(page);
  expect(faults).toEqual([]);
  await context.close();
});

test('a newer program is offered, and taken only when someone says so; nothing is lost', async () => {
  const { context, page, faults } = await open();
  await ready(page);
  await page.getByLabel('Trip name').fill('Ember Range, with Wren');
  deliverNewer();
  // As when someone comes back to the page.
  await page.evaluate(() => document.dispatchEvent(new Event('visibilitychange')));
  await page.getByText(OFFER).waitFor();
  await page.reload();
  await page.getByText(OFFER).waitFor();
  expect(await isNewer(page)).toBe(false);

  await page.getByLabel('Trip name').fill('Ember Range, with Wren and Ash');
  await page.getByRole('button', { name: 'Use it now' }).click();
  await newer(page);
  await ready(page);
  expect(await page.getByLabel('Trip name').inputValue()).toBe('Ember Range, with Wren and Ash');
  expect(await page.getByText(OFFER).count()).toBe(0);
  await context.setOffline(true);
  await stop();
  await page.reload();
  expect(await isNewer(page)).toBe(true);
  await openWorkbench(page);
  expect(faults).toEqual([]);
  await context.close();
});

/** One pixel. */
const PNG =
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==';

test('a newer program is not taken while photos wait that would be lost with the page', async () => {
  const { context, page } = await open();
  await ready(page);
  await page.getByRole('link', { name: 'Scout' }).click();
  await page.getByText('Pins from photos', { exact: true }).click();
  await page
    .getByLabel('Photos to pin from')
    .setInputFiles({ name: 'bare.png', mimeType: 'image/png', buffer: Buffer.from(PNG, 'base64') });
  const leaveOut = page.getByRole('button', { name: 'Leave out bare.png' });
  await leaveOut.waitFor();
  deliverNewer();
  await page.evaluate(() => document.dispatchEvent(new Event('visibilitychange')));
  await page.getByText(OFFER).waitFor();
  await page.getByRole('button', { name: 'Use it now' }).click();
  await page.getByText(/^First pin or leave out the photos/).waitFor();
  expect(await isNewer(page)).toBe(false);
  await leaveOut.click();
  await page.getByRole('button', { name: 'Close', exact: true }).click();
  await page.getByRole('button', { name: 'Use it now' }).click();
  await newer(page);
  await context.close();
});

test('of two windows, the one that did not ask works on as it was', async () => {
  const { context, page, faults } = await open();
  await ready(page);
  deliverNewer();
  const other = await context.newPage();
  await other.goto(`${url}#/archive`);
  for (const one of [page, other]) await one.getByText(OFFER).waitFor();
  expect(await isNewer(other)).toBe(false);
  await other.getByRole('button', { name: 'Use it now' }).click();
  await newer(other);

  await context.setOffline(true);
  await stop();
  await openWorkbench(page);
  expect(await isNewer(page)).toBe(false);
  await page.getByRole('button', { name: 'Use it now' }).click();
  await newer(page);
  await openWorkbench(page);
  expect(faults).toEqual([]);
  await context.close();
});

test('where the device has no room it says so, and works with a network', async () => {
  const { context, page } = await sitDown(browser, 'about:blank', WIDE, { serviceWorkers: 'allow' });
  const devtools = await context.newCDPSession(page);
  await devtools.send('Storage.overrideQuotaForOrigin', {
    origin: new URL(url).origin,
    quotaSize: 1_000_000,
  });
  await page.goto(url);
  await page.getByText('This device has no room to keep Rutline for use without network.').waitFor();
  await page.getByRole('link', { name: 'Brief' }).click();
  await page.locator('td .word').first().waitFor();
  expect(await page.getByText('Ready without network').count()).toBe(0);
  expect(await page.evaluate(() => caches.keys())).toEqual([]);
  await context.close();
});

test('a file that is not what the build holds is not kept, and neither is the rest', async () => {
  writeFileSync(join(dist, 'demo/outing.json'), readFileSync(join(dist, 'demo/outing.json'), 'utf8') + '\n');
  const { context, page } = await open();
  await page.getByText('Rutline could not be kept on this device').waitFor();
  expect(await page.evaluate(() => caches.keys())).toEqual([]);
  await context.close();
});
