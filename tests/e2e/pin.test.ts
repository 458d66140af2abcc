import type { Browser } from 'playwright-core';
import { beforeAll, expect, inject, test } from 'vitest';
import { PHONE, beginTrip, findings, launch, openFile } from './desk.ts';

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
