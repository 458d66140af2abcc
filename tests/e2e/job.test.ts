import { readFileSync } from 'node:fs';
import type { Browser } from 'playwright-core';
import { beforeAll, expect, inject, test } from 'vitest';
import { VERDICT_WORDS } from '../../src/grade/verdict.ts';
import { addVehicle, beginTrip, launch, matrix, openFile, pin, sitDown, WIDE } from './desk.ts';

const DEMO = JSON.parse(readFileSync(new URL('../../public/demo/outing.json', import.meta.url), 'utf8')) as {
  obstacles: unknown[];
  vehicles: unknown[];
};

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});

test('on a device that has never seen it, the program starts with an outing and its verdicts', async () => {
  const { context, page, faults } = await sitDown(browser, inject('url'));
  const words = await matrix(page);
  expect(words).toHaveLength(DEMO.obstacles.length);
  for (const row of words) {
    expect(row).toHaveLength(DEMO.vehicles.length);
    for (const word of row) expect(VERDICT_WORDS).toContain(word);
  }
  expect(new Set(words.flat()).size).toBeGreaterThan(2);
  expect(faults).toEqual([]);
  await context.close();
});

test('the whole job: a track, an obstacle with its ruts, two vehicles, two verdicts, and all of it there after a reload', async () => {
  const { context, page, faults } = await beginTrip(browser, inject('url'), WIDE, { draws: 'coarse map' });
  await openFile(page, 'quarry.gpx');
  await page.getByText('Old quarry & ridge: 2.18 km').waitFor();
  expect(await page.getByRole('alert').textContent()).toContain('no elevation');
  await page.getByRole('button', { name: 'Dismiss' }).click();
  await expect.poll(() => page.getByLabel('Trip name').inputValue()).toBe('Old quarry & ridge');
  expect(await page.getByRole('row', { name: /^Parts/ }).textContent()).toContain('2, with gaps between');

  await pin(page, '0.8', /^Rutted climb/);
  await page.getByLabel('What I type now is').selectOption('taped');
  await page.getByLabel('Slope', { exact: true }).first().fill('6');
  await page.getByLabel('Left rut depth', { exact: true }).fill('24');
  await page.getByLabel('Right rut depth', { exact: true }).fill('24');
  await page.getByLabel('Ruts apart, middle to middle', { exact: true }).fill('1,5');
  await page.getByText(/^The reading at the pin is used/).waitFor();
  await page.getByText(/^Surface/).click();
  await page.getByLabel('Ground', { exact: true }).selectOption('rock');

  await addVehicle(page, 'full-size wagon');
  await addVehicle(page, 'all-wheel-drive soft-roader');
  const before = await matrix(page);
  expect(before).toHaveLength(1);
  expect(before[0]).toHaveLength(2);
  expect(before[0][0]).not.toBe(before[0][1]);

  await page.reload();
  expect(await page.getByLabel('Trip name').inputValue()).toBe('Old quarry & ridge');
  expect(await matrix(page)).toEqual(before);
  await page.getByRole('link', { name: /Rutted climb/ }).click();
  expect(await page.getByLabel('Left rut depth', { exact: true }).inputValue()).toBe('24');
  await page.getByText(/^Shapes in the ground/).click();
  await page.getByText('Rut, left, 24 cm deep').click();
  expect(await page.getByLabel('How depth was got').first().inputValue()).toBe('taped');
  expect(faults).toEqual([]);
  await context.close();
});

test('what was done last is there even when the page is closed at once', async () => {
  const { context, page } = await beginTrip(browser, inject('url'));
  await addVehicle(page, 'compact 4x4');
  await page.getByLabel('Driver of Compact 4x4').fill('Wren');
  await page.reload();
  await page.getByLabel('Driver of Compact 4x4').waitFor();
  expect(await page.getByLabel('Driver of Compact 4x4').inputValue()).toBe('Wren');
  await context.close();
});

test('a number that cannot be stays in its box with a sentence, over a reload too, and the trip keeps the last good one', async () => {
  const { context, page } = await beginTrip(browser, inject('url'));
  await addVehicle(page, 'compact 4x4');
  await page.getByRole('link', { name: /^Compact 4x4/ }).click();
  const width = page.getByLabel('Width over mirrors', { exact: true });
  await width.fill('1.68');
  await width.fill('168');
  await page.getByText('Width over mirrors is 168.00 m; it must lie between 1.20 m and 2.80 m.').waitFor();
  await page.reload();
  await page.getByText('it must lie between').waitFor();
  expect(await width.inputValue()).toBe('168');
  expect(await width.getAttribute('aria-invalid')).toBe('true');
  await page.getByRole('link', { name: 'Whole convoy' }).click();
  await page.getByText('1.68 m wide').waitFor();
  await context.close();
});

test('undo and redo go through the edits, typing in one box counting as one', async () => {
  const { context, page } = await beginTrip(browser, inject('url'));
  await addVehicle(page, 'compact 4x4');
  await addVehicle(page, 'dual-cab utility');
  const driver = page.getByLabel('Driver of Compact 4x4');
  await driver.pressSequentially('Ash');
  await driver.blur();
  const undo = page.getByRole('button', { name: /^Undo/ });
  const redo = page.getByRole('button', { name: /^Redo/ });
  await undo.click();
  expect(await driver.inputValue()).toBe('');
  await undo.click();
  expect(await page.getByLabel('Driver of Dual-cab utility').count()).toBe(0);
  await redo.click();
  await redo.click();
  expect(await driver.inputValue()).toBe('Ash');
  await page.locator('body').press('Control+z');
  expect(await driver.inputValue()).toBe('');
  await page.locator('body').press('Control+Shift+z');
  expect(await driver.inputValue()).toBe('Ash');
  await page.getByRole('button', { name: 'Remove Compact 4x4' }).click();
  await page.getByRole('button', { name: 'Put it back' }).click();
  expect(await driver.inputValue()).toBe('Ash');
  await context.close();
});

test('what was offered to be put back is not, once something else was done', async () => {
  const { context, page } = await beginTrip(browser, inject('url'));
  await addVehicle(page, 'compact 4x4');
  await page.getByRole('button', { name: 'Remove Compact 4x4' }).click();
  await page.getByRole('button', { name: 'Put it back' }).waitFor();
  await addVehicle(page, 'dual-cab utility');
  await page.getByRole('button', { name: 'Put it back' }).waitFor({ state: 'detached' });
  await context.close();
});

test('the browser goes back through the desks', async () => {
  const { context, page } = await sitDown(browser, inject('url'));
  await page.getByRole('link', { name: 'Brief' }).click();
  await page.getByRole('link', { name: 'Archive', exact: true }).click();
  await page.goBack();
  await page.getByRole('heading', { name: 'Before anyone sets off' }).waitFor();
  await context.close();
});

test('a trip saved as a file opens on another device as it was', async () => {
  const { context, page } = await sitDown(browser, `${inject('url')}#/brief`);
  const words = await matrix(page);
  await page.getByRole('link', { name: 'Archive', exact: true }).click();
  const downloading = page.waitForEvent('download');
  await page.getByRole('button', { name: /^Save as file/ }).click();
  const file = await (await downloading).path();

  const other = await beginTrip(browser, inject('url'));
  await other.page.locator('input[type=file]').first().setInputFiles(file);
  await expect.poll(() => other.page.getByLabel('Trip name').inputValue()).toBe('Ember Range, spring outing');
  expect(await matrix(other.page)).toEqual(words);
  await context.close();
  await other.context.close();
});

test('removing a stored trip can be taken back', async () => {
  const { context, page } = await sitDown(browser, `${inject('url')}#/archive`);
  await page.getByRole('link', { name: 'Archive', exact: true }).click();
  await page.getByRole('button', { name: 'Remove Ember Range, spring outing' }).click();
  await page.getByText('Removed Ember Range, spring outing.').waitFor();
  await page.getByRole('button', { name: 'Put it back' }).click();
  await page.getByRole('heading', { name: 'Ember Range, spring outing' }).waitFor();
  await expect.poll(() => page.getByLabel('Trip name').inputValue()).toBe('Ember Range, spring outing');
  await context.close();
});

test('where the verdicts cannot be worked out, no verdict is shown and a sentence says so', async () => {
  const { context, page } = await sitDown(browser, 'about:blank');
  await page.route('**/matrix.worker*', (route) => route.abort());
  await page.goto(inject('url'));
  await page.getByRole('link', { name: 'Brief' }).click();
  await page.getByText('The verdicts could not be worked out').waitFor();
  expect(await page.locator('td .word').count()).toBe(0);
  expect(await page.getByRole('button', { name: 'Print the matrix' }).isDisabled()).toBe(true);
  await context.close();
});

test('the briefing with its cards is given as a page', async () => {
  const { context, page } = await sitDown(browser, `${inject('url')}#/brief`);
  await matrix(page);
  const downloading = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save them as a page' }).click();
  const file = readFileSync(await (await downloading).path(), 'utf8');
  expect(file).toContain('Odile Farrow');
  expect(file).toContain('Hobnail ruts');
  await context.close();
});

test('the advised order can be taken, and put back', async () => {
  const { context, page } = await sitDown(browser, `${inject('url')}#/brief`);
  await matrix(page);
  await page.getByRole('button', { name: 'Find the order in which most go unaided' }).click();
  const heads = () => page.locator('thead th').allTextContents();
  const before = await heads();
  await page.getByRole('button', { name: 'Take this order' }).click();
  await expect.poll(heads).not.toEqual(before);
  expect(await heads()).toHaveLength(before.length);
  await page.getByRole('button', { name: 'Put it back' }).click();
  await expect.poll(heads).toEqual(before);
  await context.close();
});
