import { readFileSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { beforeAll, expect, inject, test } from 'vitest';
import { withExif } from '../exif.ts';
import type { Taken } from '../exif.ts';
import { PHONE, beginTrip, findings, launch, openFile, pin } from './desk.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});

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
  await page.getByRole('link', { name: 'Archive', exact: true }).click();
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
  const { context, page, faults } = await beginTrip(browser, inject('url'), PHONE);
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
  await expect.poll(() => page.locator('.keeping').textContent()).toMatch(/^\s*stored\s*$/);

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

test('obstacles are pinned from photos by position and by time, each on the leader’s word', async () => {
  const { context, page, faults } = await beginTrip(browser, inject('url'), PHONE, {
    timezoneId: 'Europe/Rome',
  });
  const point = (lat: number, minute: number) =>
    `<trkpt lat="${lat}" lon="7"><ele>500</ele><time>2026-05-01T08:0${minute}:00Z</time></trkpt>`;
  const gpx = `<gpx version="1.1" creator="t" xmlns="http://www.topografix.com/GPX/1/1"><trk><name>Spur</name><trkseg>${[0, 1, 2, 3, 4].map((i) => point(45 + i / 1000, i)).join('')}</trkseg></trk></gpx>`;
  await page
    .getByLabel('GPX or trip file')
    .first()
    .setInputFiles({ name: 'spur.gpx', mimeType: 'application/gpx+xml', buffer: Buffer.from(gpx) });
  await page.getByText(/^Read Spur/).waitFor();
  await page.getByRole('link', { name: /^Obstacles/ }).click();
  await page.getByText('Pins from photos', { exact: true }).click();
  const small: [number, number] = [800, 600];
  await page
    .getByLabel('Photos to pin from')
    .setInputFiles([
      await picture(page, 'there.jpg', { lat: 45.001, lng: 7.0001 }, small),
      await picture(page, 'then.jpg', { time: '2026:05:01 10:03:30' }, small),
      await picture(page, 'bare.jpg', {}, small),
    ]);
  const row = (name: string) => page.getByRole('listitem', { name });
  await row('bare.jpg').getByText('neither where nor when').waitFor();
  await row('there.jpg').getByText('by its position, 8 m from the track').waitFor();
  await row('then.jpg').getByText('0.39 km').waitFor();
  await page.getByRole('textbox', { name: 'Camera clock ahead, in minutes' }).fill('1,5');
  await row('then.jpg').getByText('0.22 km').waitFor();
  expect(await findings(page)).toEqual([]);

  await row('then.jpg').getByLabel('What lies at then.jpg').selectOption('Ford');
  await row('then.jpg').getByRole('button', { name: 'Pin it' }).click();
  await page.getByText('Pinned ford at 0.22 km.').waitFor();
  await page.getByRole('textbox', { name: 'Camera clock ahead, in minutes' }).fill('0');
  await row('there.jpg').getByLabel('What lies at there.jpg').selectOption('Ledge');
  await row('there.jpg').getByRole('button', { name: 'Pin it' }).click();
  await row('bare.jpg').getByRole('button', { name: 'Leave out bare.jpg' }).click();
  await page.getByRole('link', { name: /Ford/ }).click();
  await page.getByRole('button', { name: 'Photo 1 of Ford' }).waitFor();
  expect((await savedTrip(page)).obstacles.map(({ photos }) => photos.length)).toEqual([1, 1]);
  expect(faults).toEqual([]);
  await context.close();
});

test('photos go to the obstacle that they were chosen for, whatever is open when they have been read', async () => {
  const { context, page, faults } = await beginTrip(browser, inject('url'), PHONE);
  await openFile(page, 'quarry.gpx');
  await page.getByText('Old quarry & ridge: 2.18 km').waitFor();
  await pin(page, '0.3', /^Ledge/);
  await page.getByRole('link', { name: /All obstacles/ }).click();
  await pin(page, '0.6', /^Log/);
  let read = (): void => undefined;
  const held = new Promise<void>((resolve) => (read = resolve));
  await page.route(/photo\.worker/, async (route) => {
    await held;
    await route.continue();
  });
  const one = [await picture(page, 'one.jpg', {}, [800, 600])];
  const all = page.getByRole('link', { name: /All obstacles/ });
  await page.getByText('Photos (0)').click();
  await page.getByLabel('Photos from files').setInputFiles(one);
  await page.getByText('Reading photo 1 of 1').waitFor();
  await all.click();
  await page.getByRole('link', { name: /Ledge/ }).first().click();
  await page.getByText('Photos (0)').waitFor();
  await all.click();
  read();
  await page.getByText('Added the photo to Log.').waitFor();
  await page.getByRole('link', { name: /Log/ }).first().click();
  await page.getByText('Photos (1)').waitFor();
  await all.click();
  await page.getByRole('link', { name: /Ledge/ }).first().click();
  await page.getByText('Photos (0)').waitFor();
  expect(faults).toEqual([]);
  await context.close();
});

test('while photos are read the page does not begin anew; where their obstacle was removed meanwhile, it is told', async () => {
  const { context, page, faults } = await beginTrip(browser, inject('url'), PHONE);
  await openFile(page, 'quarry.gpx');
  await page.getByText('Old quarry & ridge: 2.18 km').waitFor();
  await pin(page, '0.3', /^Ledge/);
  let read = (): void => undefined;
  const held = new Promise<void>((resolve) => (read = resolve));
  await page.route(/photo\.worker/, async (route) => {
    await held;
    await route.continue();
  });
  await page.getByText('Photos (0)').click();
  await page.getByLabel('Photos from files').setInputFiles([await picture(page, 'one.jpg', {}, [800, 600])]);
  await page.getByText('Reading photo 1 of 1').waitFor();
  await page.getByRole('button', { name: 'View' }).click();
  await page.getByRole('combobox', { name: 'Language' }).selectOption({ label: 'Deutsch' });
  await page.getByText(/^First let the photos be read/).waitFor();
  await page.getByRole('button', { name: 'Remove this obstacle' }).click();
  read();
  await page.getByText('Ledge was removed meanwhile, so that its new photos could not be added').waitFor();
  expect(faults).toEqual([]);
  await context.close();
});
