import type { Browser, Page } from 'playwright-core';
import { beforeAll, expect, inject, test } from 'vitest';
import { PHONE, beginTrip, findings, launch, openFile, putInto } from './desk.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});

test('without a track, obstacles are pinned where one stands, in that order, and a track may follow', async () => {
  const { context, page, faults } = await beginTrip(browser, inject('url'), PHONE, {
    draws: 'coarse map',
    isMobile: true,
    hasTouch: true,
    permissions: ['geolocation'],
    geolocation: { longitude: 7.5, latitude: 45.5, accuracy: 4 },
  });
  await page.getByRole('link', { name: 'Pin obstacles without a track' }).click();
  const pinHere = async (preset: RegExp) => {
    await page.getByRole('button', { name: 'Where I stand' }).click();
    await page.getByText('Your place is known to 4 m.').waitFor();
    await page.getByRole('button', { name: 'Pin here' }).click();
    await page.getByRole('button', { name: preset }).click();
    await page.getByLabel('Name of the obstacle').waitFor();
    await page.getByRole('link', { name: /All obstacles/ }).click();
  };
  await pinHere(/^Ford/);
  await context.setGeolocation({ longitude: 7.5, latitude: 45.499, accuracy: 4 });
  await pinHere(/^Ledge/);
  await context.setGeolocation({ longitude: 7.5, latitude: 45.4995, accuracy: 4 });
  await pinHere(/^Log/);
  const rows = page.locator('ol .words');
  expect((await rows.allTextContents()).map((row) => row.replace(/\s+/g, ' ').trim())).toEqual([
    'Ford 0.00 km · slope not known',
    'Ledge 0.11 km · slope not known',
    'Log 0.17 km · slope not known',
  ]);
  await page.getByRole('button', { name: 'Obstacle 1 Ford' }).waitFor();
  expect(await findings(page)).toEqual([]);

  await openFile(page, 'quarry.gpx');
  await page.getByText('Old quarry & ridge: 2.18 km').waitFor();
  await page.getByRole('link', { name: /^Obstacles/ }).click();
  await page.getByLabel('Along the track').waitFor();
  expect(await rows.count()).toBe(3);
  expect(faults).toEqual([]);
  await context.close();
});

test('without a track, a place pointed at on the map is marked and can be pinned', async () => {
  const { context, page } = await beginTrip(browser, inject('url'), PHONE, { draws: 'coarse map' });
  const map = page.locator('.maplibregl-canvas');
  await map.click({ position: { x: 200, y: 200 } });
  await page.getByText('the first pin').waitFor();
  await page.getByRole('button', { name: 'Pin here' }).click();
  await page.getByRole('button', { name: /^Ditch/ }).click();
  await page.getByLabel('Name of the obstacle').waitFor();
  await page.getByRole('button', { name: 'Obstacle 1 Ditch' }).waitFor();
  await context.close();
});

/** How many watches of the receiver the page holds. */
const watching = (page: Page) =>
  page.evaluate(() => (window as unknown as { watches: Set<number> }).watches.size);

/** Runs in the page, before it: keeps count of the watches. */
function countWatches(): void {
  const watches = new Set<number>();
  Object.assign(window, { watches });
  const { geolocation } = navigator;
  const begin = geolocation.watchPosition.bind(geolocation);
  const end = geolocation.clearWatch.bind(geolocation);
  geolocation.watchPosition = (...args) => {
    const watch = begin(...args);
    watches.add(watch);
    return watch;
  };
  geolocation.clearWatch = (watch) => {
    watches.delete(watch);
    end(watch);
  };
}

test('the map shows where one is while that is wanted, and no longer', async () => {
  const { context, page, faults } = await beginTrip(browser, inject('url'), PHONE, {
    draws: 'coarse map',
    isMobile: true,
    hasTouch: true,
    permissions: ['geolocation'],
    geolocation: { longitude: 173.100258, latitude: -41.200259, accuracy: 4 },
  });
  await context.addInitScript(countWatches);
  await openFile(page, 'quarry.gpx');
  await page.getByText('Old quarry & ridge: 2.18 km').waitFor();
  await page.getByRole('link', { name: /^Obstacles/ }).click();
  await page.reload();
  const button = page.getByRole('button', { name: 'Show where I am' });
  const mark = page.locator('.maplibregl-canvas-container svg.here');
  const words = page.locator('.whereabouts p');
  await page.getByLabel('Along the track').waitFor();
  expect(await button.getAttribute('aria-pressed')).toBe('false');
  expect(await watching(page)).toBe(0);

  await button.focus();
  await page.keyboard.press('Enter');
  await mark.waitFor();
  await words.getByText('You are 0 m from the track, 0.04 km along it, to within 4 m.').waitFor();
  await page
    .getByRole('status')
    .filter({ hasText: 'along it, to within 4 m.' })
    .waitFor({ state: 'attached' });
  const { width, height } = (await button.boundingBox())!;
  expect(Math.min(width, height)).toBeGreaterThanOrEqual(44);
  expect(await button.getAttribute('aria-pressed')).toBe('true');
  expect(await findings(page)).toEqual([]);
  for (const light of ['sun', 'night', 'day'] as const) {
    await putInto(page, light);
    expect(await findings(page, 'colours')).toEqual([]);
  }

  const stood = await mark.getAttribute('style');
  await context.setGeolocation({ longitude: 173.1, latitude: -41.201, accuracy: 40 });
  await words.getByText(/to within 40 m\.$/).waitFor();
  expect(await mark.getAttribute('style')).not.toBe(stood);
  const ringM = await mark.locator('.ring').last().getAttribute('r');
  expect(Number(ringM)).toBeGreaterThan(2);

  const hide = (hidden: boolean) =>
    page.evaluate((is) => {
      Object.defineProperty(document, 'hidden', { configurable: true, get: () => is });
      document.dispatchEvent(new Event('visibilitychange'));
    }, hidden);
  await hide(true);
  expect(await watching(page)).toBe(0);
  await hide(false);
  await mark.waitFor();
  expect(await watching(page)).toBe(1);

  await page.getByRole('link', { name: 'Brief', exact: true }).click();
  await page.getByRole('heading', { name: 'Old quarry & ridge', exact: true }).first().waitFor();
  expect(await watching(page)).toBe(0);
  await page.getByRole('link', { name: 'Scout', exact: true }).click();
  expect(await button.getAttribute('aria-pressed')).toBe('false');
  await button.click();
  await mark.waitFor();
  await button.click();
  await mark.waitFor({ state: 'detached' });
  expect(await watching(page)).toBe(0);
  expect(await words.count()).toBe(0);
  expect(faults).toEqual([]);
  await context.close();
});

test('without a map, and where the place is refused, words say so', async () => {
  const { context, page } = await beginTrip(browser, inject('url'), PHONE, {
    permissions: ['geolocation'],
    geolocation: { longitude: 7.5, latitude: 45.5, accuracy: 4 },
  });
  await page.getByRole('link', { name: 'Pin obstacles without a track' }).click();
  const button = page.getByRole('button', { name: 'Show where I am' });
  const words = page.locator('.whereabouts p');
  await page.getByText('The map cannot be drawn on this device').waitFor();
  await button.click();
  await words.getByText('You are at 45.50000°, 7.50000°, to within 4 m.').waitFor();
  await button.click();
  await context.clearPermissions();
  await button.click();
  await words.getByText('this page may not know it').waitFor();
  await page
    .getByRole('status')
    .filter({ hasText: 'this page may not know it' })
    .waitFor({ state: 'attached' });
  expect(await button.getAttribute('aria-pressed')).toBe('false');
  await context.close();
});
