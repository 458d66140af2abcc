import type { Browser, Page } from 'playwright-core';
import { beforeAll, expect, inject, test } from 'vitest';
import { beginTrip, findings, launch, openFile, pin } from './desk.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});

const box = (page: Page, name: string) => page.getByLabel(name, { exact: true });
const size = (page: Page, path: string) => page.locator(`input[id$="/${path}"]`);
const undo = (page: Page) => page.getByRole('button', { name: /^Undo/ }).click();
const shapes = async (page: Page) => (await page.getByText(/^Shapes in the ground/).textContent())?.trim();

/** A rutted climb of which nothing was answered yet, its shapes unfolded. */
async function rutted(page: Page): Promise<void> {
  await openFile(page, 'quarry.gpx');
  await page.getByRole('button', { name: 'Dismiss' }).click();
  await pin(page, '0.8', /^Rutted climb/);
  await page.getByText(/^Shapes in the ground/).click();
  await page.getByText(/^Rut, left/).click();
}

test('an answer leaves alone what was changed by hand, and the answers shown are those of the ground', async () => {
  const { context, page, faults } = await beginTrip(browser, inject('url'));
  await rutted(page);
  await box(page, 'Left rut depth').fill('24');
  expect(await size(page, 'features.0.depthM').inputValue()).toBe('24');
  await size(page, 'features.0.depthM').fill('40');
  await page.getByText('Its shapes were entered or changed one by one').waitFor();
  expect(await box(page, 'Left rut depth').count()).toBe(0);
  expect(await findings(page)).toEqual([]);
  await page.getByLabel('Shape to add').selectOption('rock');
  await page.getByRole('button', { name: 'Add it' }).click();
  await box(page, 'Slope').fill('6');
  expect(await shapes(page)).toBe('Shapes in the ground (3)');
  expect(await size(page, 'features.0.depthM').inputValue()).toBe('40');

  await page.getByRole('button', { name: 'Lay its shapes anew' }).click();
  expect(await shapes(page)).toBe('Shapes in the ground (2)');
  expect(await box(page, 'Slope').inputValue()).toBe('6');
  expect(await box(page, 'Left rut depth').inputValue()).toBe('');
  await page.getByRole('button', { name: 'Put it back' }).click();
  expect(await shapes(page)).toBe('Shapes in the ground (3)');

  for (let i = 0; i < 3; i++) await undo(page);
  expect(await box(page, 'Left rut depth').inputValue()).toBe('24');
  expect(faults).toEqual([]);
  await context.close();
});

test('an answer that was undone does not come back with the next one', async () => {
  const { context, page } = await beginTrip(browser, inject('url'));
  await rutted(page);
  await box(page, 'Left rut depth').fill('24');
  await undo(page);
  expect(await box(page, 'Left rut depth').inputValue()).toBe('');
  await box(page, 'Right rut depth').fill('20');
  expect(await size(page, 'features.0.depthM').inputValue()).toBe('30');
  await page.reload();
  expect(await box(page, 'Left rut depth').inputValue()).toBe('');
  expect(await box(page, 'Right rut depth').inputValue()).toBe('20');
  await context.close();
});
