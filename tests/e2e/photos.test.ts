import { readFileSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { withExif } from '../exif.ts';
import type { Taken } from '../exif.ts';
import { findings, launch, newTrip, openFile, PHONE, pin, sitDown } from './desk.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(() => browser.close());

/** A picture as a camera would write it, drawn by the browser. */
async function picture(page: Page, name: string, taken: Taken, [width, height] = [2400, 1800]) {
  const base64 = await page.evaluate(
    async ([width, height]) => {
      const canvas = new OffscreenCanvas(width, height);
      const pen = canvas.getContext('2d')!;
      pen.fillStyle = '#7a5c34';
      pen.fillRect(0, 0, width, height);
      pen.fillStyle = '#3b79a8';
      pen.fillRect(0, 0, width, height / 3);
      const blob = await canvas.convertToBlob({ type: 'image/jpeg' });
      const bytes = new Uint8Array(await blob.arrayBuffer());
      return btoa(String.fromCharCode(...bytes));
    },
    [width, height],
  );
  return { name, mimeType: 'image/jpeg', buffer: withExif(Buffer.from(base64, 'base64'), taken) };
}

interface Filed {
  readonly obstacles: readonly {
    readonly name: string;
    readonly photos: readonly { image: string; caption: string }[];
  }[];
}

/** The trip as the file that is saved of it. */
async function savedTrip(page: Page): Promise<Filed> {
  await page.getByRole('link', { name: 'Archive' }).click();
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page
      .getByRole('button', { name: /^Save as file/ })
      .first()
      .click(),
  ]);
  return JSON.parse(readFileSync(await download.path(), 'utf8')) as Filed;
}

test('photos are added to an obstacle, shown large, captioned, removed and put back, stored and carried in the file', async () => {
  const { context, page, faults } = await sitDown(browser, inject('url'), PHONE);
  await newTrip(page);
  await openFile(page, 'quarry.gpx');
  await page.getByText('Old quarry & ridge: 2.18 km').waitFor();
  await pin(page, '0.3', /^Ledge/);
  await page.getByText('Photos (0)').click();
  const from = page.getByLabel('Photos from files');
  const taken = { lat: 45.1, lng: 7.2, time: '2026:05:01 10:00:00', orientation: 6 };
  await from.setInputFiles([
    await picture(page, 'one.jpg', taken),
    { name: 'two.jpg', mimeType: 'image/jpeg', buffer: Buffer.from('<svg onload="alert(1)"/>') },
  ]);
  await page.getByText('two.jpg is no picture that this browser can open').waitFor();
  await page.getByText('Photos (1)').waitFor();
  await page.getByRole('button', { name: 'Photo 1 of Ledge' }).click();
  const large = page.getByRole('dialog', { name: 'Photo' });
  await expect
    .poll(() =>
      large.locator('img').evaluate((img: HTMLImageElement) => [img.naturalWidth, img.naturalHeight]),
    )
    .toEqual([1200, 1600]);
  await large.getByLabel('What it shows').fill('The step, from below');
  expect(await findings(page)).toEqual([]);
  await large.getByRole('button', { name: 'Remove' }).click();
  await page.getByText('Photos (0)').waitFor();
  await page.getByRole('button', { name: 'Put it back' }).click();
  await page.getByRole('button', { name: 'The step, from below' }).waitFor();

  await page.reload();
  await page.getByRole('button', { name: 'The step, from below' }).waitFor();
  const [photo] = (await savedTrip(page)).obstacles[0].photos;
  const image = Buffer.from(photo.image, 'base64');
  expect(photo.caption).toBe('The step, from below');
  expect(image.subarray(0, 3).toString('hex')).toBe('ffd8ff');
  expect(image.includes('Exif')).toBe(false);
  expect(image.includes('2026:05:01')).toBe(false);
  expect(faults).toEqual([]);
  await context.close();
});
