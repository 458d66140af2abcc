import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { launch, sitDown, WIDE } from './desk.ts';
import { vectorTiles } from './vectorTiles.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(() => browser.close());

/** In the middle of the demonstration's invented ground. */
const MIDDLE = { lng: 88.6, lat: -33.4 };

/** Shares of the map's picture, as the user sees it, that are bluish as waters are, and greyish dark as lines are. */
async function shares(page: Page): Promise<{ readonly blue: number; readonly dark: number }> {
  const png = await page.locator('.maplibregl-canvas').screenshot();
  return page.evaluate(async (base64) => {
    const bytes = Uint8Array.from(atob(base64), (c) => c.charCodeAt(0));
    const image = await createImageBitmap(new Blob([bytes], { type: 'image/png' }));
    const pen = new OffscreenCanvas(image.width, image.height).getContext('2d')!;
    pen.drawImage(image, 0, 0);
    const { data } = pen.getImageData(0, 0, image.width, image.height);
    let [blue, dark] = [0, 0];
    for (let i = 0; i < data.length; i += 4) {
      if (data[i + 2] - data[i] > 8) blue++;
      if (Math.max(data[i], data[i + 1], data[i + 2]) < 130) dark++;
    }
    return { blue: (4 * blue) / data.length, dark: (4 * dark) / data.length };
  }, png.toString('base64'));
}

test('a vector file of one’s own is drawn under the map, its waters and its ways, and goes again', async () => {
  const { context, page, faults } = await sitDown(browser, inject('url'), WIDE, { sharp: true });
  await page.getByRole('button', { name: /^Obstacle 1 / }).waitFor();
  const before = await shares(page);
  await page.getByRole('link', { name: 'Track', exact: true }).click();
  await page.getByRole('button', { name: 'Lay it along the track' }).waitFor();
  await page
    .locator('input[type=file]')
    .first()
    .setInputFiles({ name: 'hills.pmtiles', mimeType: '', buffer: vectorTiles(MIDDLE) });
  await page.getByText('The map now lies on hills.pmtiles').waitFor();
  await page.getByRole('link', { name: /^Obstacles/ }).click();
  await page.getByRole('button', { name: /^Obstacle 1 / }).waitFor();
  await expect
    .poll(async () => (await shares(page)).blue, { timeout: 60_000 })
    .toBeGreaterThan(before.blue + 0.03);
  await expect
    .poll(async () => (await shares(page)).dark, { timeout: 60_000 })
    .toBeGreaterThan(before.dark + 0.002);
  await page.getByRole('button', { name: 'Map ground' }).click();
  await page.getByRole('button', { name: 'Remove Background' }).click();
  await expect
    .poll(async () => (await shares(page)).blue, { timeout: 60_000 })
    .toBeLessThan(before.blue + 0.02);
  expect(faults).toEqual([]);
  await context.close();
});
