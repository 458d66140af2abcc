import type { Browser } from 'playwright-core';
import { beforeAll, expect, inject, test } from 'vitest';
import { PHONE, findings, launch, matrix, sitDown } from './desk.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});

test('a driver sees what the engine holds of a descent, and what holds the rest', async () => {
  const { context, page, faults } = await sitDown(browser, `${inject('url')}#/brief`, PHONE);
  await matrix(page);
  await page
    .getByRole('row', { name: /Ember drop/ })
    .locator('td a')
    .nth(2)
    .click();
  const sheet = page.getByRole('complementary', { name: 'Why' });
  const heading = sheet.getByRole('heading', { name: 'Pebble on Ember drop' });
  await heading.waitFor();
  const said = /down with first low and a foot on the brake: the engine holds \d+\.\d° of \d+\.\d°/;
  await sheet.getByText(said).waitFor();
  await sheet.getByText(/Stability control stands down in low range/).waitFor();

  const open = sheet.locator('details[open]');
  const engine = open.getByRole('row', { name: /^engine braking: engine and gearing; brakes hold the rest/ });
  const [thereIs, needed, margin, atWorst] = await engine.getByRole('cell').allTextContents();
  expect(parseFloat(thereIs)).toBeLessThan(parseFloat(needed));
  expect(margin).toMatch(/^short by/);
  expect(atWorst).toMatch(/^short by/);
  // It opened below the matrix, and was brought into sight.
  const box = await heading.boundingBox();
  expect(box!.y).toBeGreaterThanOrEqual(0);
  expect(box!.y).toBeLessThan(PHONE.height / 4);
  expect(await findings(page)).toEqual([]);
  expect(faults).toEqual([]);
  await context.close();
});
