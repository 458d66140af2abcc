import { readFileSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { beforeAll, expect, inject, test } from 'vitest';
import { beginTrip, launch } from './desk.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});

/** What a screen reader would call the element that has the focus. */
function focused(page: Page): Promise<string> {
  return page.evaluate(() => {
    const one = document.activeElement as HTMLElement | null;
    const labels = one instanceof HTMLInputElement || one instanceof HTMLSelectElement ? one.labels : null;
    const words = one?.getAttribute('aria-label') ?? labels?.[0]?.textContent ?? one?.textContent ?? '';
    return words.replace(/\s+/g, ' ').trim();
  });
}

/** Steps on with the Tab key until it comes to what is called so. */
async function tabTo(page: Page, name: RegExp): Promise<void> {
  for (let i = 0; i < 160; i++) {
    await page.keyboard.press('Tab');
    if (name.test(await focused(page))) return;
  }
  throw new Error(`The Tab key never came to ${name}.`);
}

async function press(page: Page, name: RegExp): Promise<void> {
  await tabTo(page, name);
  await page.keyboard.press('Enter');
}

async function type(page: Page, name: RegExp, text: string): Promise<void> {
  await tabTo(page, name);
  await page.keyboard.press('Control+a');
  await page.keyboard.type(text);
}

test('the whole job by keyboard alone, from a track to the briefing on paper', async () => {
  const { context, page, faults } = await beginTrip(browser, inject('url'));
  const choosing = page.waitForEvent('filechooser');
  await press(page, /^Open a GPX or trip file/);
  await (await choosing).setFiles(new URL('./in/quarry.gpx', import.meta.url).pathname);
  await page.getByText('Old quarry & ridge: 2.18 km').waitFor();

  await press(page, /^Obstacles/);
  await type(page, /^Along the track/, '0.8');
  await press(page, /^Pin here/);
  await press(page, /^Rutted climb/);
  await page.getByLabel('Name of the obstacle').waitFor();
  await type(page, /^Slope/, '6');
  await type(page, /^Left rut depth/, '24');
  await type(page, /^Right rut depth/, '22');

  await press(page, /^Convoy/);
  await page.getByRole('heading', { name: 'Nobody in the convoy yet' }).waitFor();
  await tabTo(page, /^Class of vehicle/);
  await page.keyboard.press('c');
  await press(page, /^Add vehicle/);
  await page.getByLabel('Driver of Compact 4x4').waitFor();

  await press(page, /^Brief$/);
  await page.locator('td a .word').first().waitFor();
  await expect.poll(() => page.locator('td').first().textContent()).not.toContain('working it out');
  await press(page, /^(goes|needs|does not go)/);
  const why = page.getByRole('complementary', { name: 'Why' });
  await why.waitFor();
  expect(await why.getByRole('heading', { level: 2 }).textContent()).toBe('Compact 4x4 on Rutted climb');
  await press(page, /^Close/);
  await why.waitFor({ state: 'detached' });

  const downloading = page.waitForEvent('download');
  await press(page, /^Save them as a page/);
  const briefing = readFileSync(await (await downloading).path(), 'utf8');
  expect(briefing).toContain('Rutted climb');
  expect(briefing).toContain('24 cm');
  expect(briefing).toContain('Compact 4x4');
  expect(faults).toEqual([]);
  await context.close();
});
