import type { Browser, Page } from 'playwright-core';
import { beforeAll, expect, inject, test } from 'vitest';
import { STEEPNESS } from '../../src/route/steepness.ts';
import { launch, sitDown, WIDE } from './desk.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});

const drawing = (page: Page) => page.locator('.maplibregl-canvas');
const slider = (page: Page) => page.getByRole('slider', { name: 'Station on the long section' });

async function mapOf(page: Page): Promise<void> {
  await drawing(page).waitFor();
  await page.getByRole('button', { name: /^Obstacle 1 / }).waitFor();
}

/** How many pixels of the map's canvas, seen as the user sees it, have each colour (`#rrggbb`). */
async function colours(page: Page): Promise<Map<string, number>> {
  const png = await drawing(page).screenshot();
  const counted = await page.evaluate(async (base64) => {
    const bytes = Uint8Array.from(atob(base64), (c) => c.charCodeAt(0));
    const image = await createImageBitmap(new Blob([bytes], { type: 'image/png' }));
    const pen = new OffscreenCanvas(image.width, image.height).getContext('2d')!;
    pen.drawImage(image, 0, 0);
    const { data } = pen.getImageData(0, 0, image.width, image.height);
    const counts: Record<string, number> = {};
    for (let i = 0; i < data.length; i += 4) {
      const hex = '#' + [0, 1, 2].map((k) => data[i + k].toString(16).padStart(2, '0')).join('');
      counts[hex] = (counts[hex] ?? 0) + 1;
    }
    return Object.entries(counts);
  }, png.toString('base64'));
  return new Map(counted);
}

/** Bare paper by day: nine tenths of the map where shading fails, three where it is drawn. */
const PAPER = '#eff2ea';

/** Brown, as only contours are. */
function isContour(hex: string): boolean {
  const [red, green, blue] = [1, 3, 5].map((at) => parseInt(hex.slice(at, at + 2), 16));
  return red - blue > 25 && red < 210 && green > 110;
}

function sumOf(seen: Map<string, number>, wanted: (hex: string) => boolean): number {
  return [...seen].reduce((sum, [hex, count]) => sum + (wanted(hex) ? count : 0), 0);
}

test('the map draws the track by its slope on shaded ground, and asks nothing of the network', async () => {
  const { context, page, faults } = await sitDown(browser, 'about:blank', WIDE, { draws: 'sharp map' });
  const asked: string[] = [];
  page.on('request', (request) => asked.push(request.url()));
  await page.goto(inject('url'));
  await mapOf(page);
  await expect
    .poll(
      async () => {
        const seen = await colours(page);
        const pixels = [...seen.values()].reduce((sum, count) => sum + count, 0);
        const slopes = STEEPNESS.slice(0, 4).filter(({ colour }) => (seen.get(colour) ?? 0) > 20);
        return {
          slopes: slopes.length,
          shaded: (seen.get(PAPER) ?? 0) / pixels < 0.5,
          contours: sumOf(seen, isContour) / pixels > 0.02,
        };
      },
      { timeout: 40_000 },
    )
    .toEqual({ slopes: 4, shaded: true, contours: true });
  expect(asked.filter((url) => !url.startsWith(inject('url')) && !/^(blob|data):/.test(url))).toEqual([]);
  expect(await page.getByText('cannot be drawn').count()).toBe(0);
  expect(faults).toEqual([]);
  await context.close();
});

test('map and long section follow each other', async () => {
  const { context, page } = await sitDown(browser, inject('url'), WIDE, { draws: 'coarse map' });
  await mapOf(page);
  const at = () => slider(page).getAttribute('aria-valuenow');
  const before = await at();
  await page.getByRole('button', { name: /^Obstacle 2 / }).scrollIntoViewIfNeeded();
  const pin = await page.getByRole('button', { name: /^Obstacle 2 / }).boundingBox();
  await page.mouse.move(pin!.x - 6, pin!.y + 30, { steps: 4 });
  await expect.poll(at).not.toBe(before);
  await slider(page).hover({ position: { x: 300, y: 90 } });
  await page.locator('.map svg.passing').waitFor();
  await context.close();
});

test('without a pointer: obstacles are reached in order, the section steps from one to the next, Enter points', async () => {
  const { context, page } = await sitDown(browser, inject('url'), WIDE, { draws: 'coarse map' });
  await mapOf(page);
  await slider(page).focus();
  await page.keyboard.press('Home');
  await page.keyboard.press('PageUp');
  const spoken = await slider(page).getAttribute('aria-valuetext');
  expect(spoken).toMatch(/km, \d+ m, (climbs|falls|level) [\d.]+° ± [\d.]+°, \d+ % .*, 1 in /);
  await page.keyboard.press('Enter');
  await expect.poll(() => page.url()).toContain('#/scout/obstacles/');
  await page.getByRole('button', { name: /^Obstacle 1 / }).focus();
  await page.keyboard.press('Tab');
  expect(await page.evaluate(() => document.activeElement?.getAttribute('aria-label'))).toMatch(
    /^Obstacle 2 /,
  );
  await page.goto(inject('url'));
  await mapOf(page);
  await drawing(page).focus();
  await page.keyboard.press('Enter');
  await expect.poll(() => page.getByLabel('Along the track').first().inputValue()).not.toBe('');
  await context.close();
});
