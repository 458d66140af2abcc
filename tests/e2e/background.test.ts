import type { Browser, Page } from 'playwright-core';
import { beforeAll, expect, inject, test } from 'vitest';
import { launch, sitDown, WIDE } from './desk.ts';
import { vectorTiles } from './vectorTiles.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});

/** In the middle of the demonstration's invented ground. */
const MIDDLE = { lng: 88.6, lat: -33.4 };

/** The map's picture as the user sees it. */
async function picture(page: Page): Promise<string> {
  return (await page.locator('.maplibregl-canvas').screenshot()).toString('base64');
}

/** The same of a map that is drawn whole: several looks in turn agree. */
async function pictureAtRest(page: Page): Promise<string> {
  let [now, looks] = [await picture(page), 0];
  await expect
    .poll(
      async () => {
        const last = now;
        now = await picture(page);
        looks = now === last ? looks + 1 : 0;
        return looks;
      },
      { timeout: 60_000, interval: 500 },
    )
    .toBeGreaterThanOrEqual(4);
  return now;
}

type Changes = Record<'bluer' | 'browner' | 'darker', number>;

/** Shares of the map that are bluer than they were, as waters are, browner, as woods are, and far darker, as lines are. */
async function changes(page: Page, before: string): Promise<Changes> {
  return page.evaluate(
    async ([first, second]) => {
      const dotsOf = async (base64: string) => {
        const bytes = Uint8Array.from(atob(base64), (c) => c.charCodeAt(0));
        const image = await createImageBitmap(new Blob([bytes], { type: 'image/png' }));
        const pen = new OffscreenCanvas(image.width, image.height).getContext('2d')!;
        pen.drawImage(image, 0, 0);
        return pen.getImageData(0, 0, image.width, image.height).data;
      };
      const [was, is] = [await dotsOf(first), await dotsOf(second)];
      let [bluer, browner, darker] = [0, 0, 0];
      for (let i = 0; i < is.length; i += 4) {
        const toBlue = is[i + 2] - is[i] - (was[i + 2] - was[i]);
        if (toBlue > 8) bluer++;
        if (toBlue < -3 && is[i] < was[i] && is[i] > 150) browner++;
        if (was[i] - is[i] > 60) darker++;
      }
      const share = (count: number) => (4 * count) / is.length;
      return { bluer: share(bluer), browner: share(browner), darker: share(darker) };
    },
    [before, await picture(page)],
  );
}

test('a vector file of one’s own is drawn under the map, its waters, woods and ways, and goes again', async () => {
  const { context, page, faults } = await sitDown(browser, inject('url'), WIDE, { draws: 'sharp map' });
  await page.getByRole('button', { name: /^Obstacle 1 / }).waitFor();
  const before = await pictureAtRest(page);
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
    .poll(() => changes(page, before), { timeout: 60_000, interval: 500 })
    .toSatisfy(({ bluer, browner, darker }: Changes) => bluer > 0.03 && browner > 0.015 && darker > 0.002);
  await page.getByRole('button', { name: 'Map ground' }).click();
  await page.getByRole('button', { name: 'Remove Background' }).click();
  await page.getByRole('button', { name: 'Map ground' }).click();
  await expect
    .poll(() => changes(page, before), { timeout: 60_000, interval: 500 })
    .toSatisfy((left: Changes) => Math.max(left.bluer, left.browner, left.darker) < 0.001);
  expect(faults).toEqual([]);
  await context.close();
});
