import type { Browser } from 'playwright-core';
import { beforeAll, expect, inject, test } from 'vitest';
import { PHONE, findings, launch, sitDown } from './desk.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});

const CAUTION = 'Local signs, closures and the people who look after the land outrank this grade.';

test('a leader reads the grade of an obstacle and of the track, and what a vehicle must have', async () => {
  const { context, page, faults } = await sitDown(browser, inject('url'), PHONE);
  await page.getByRole('link', { name: /^Obstacles/ }).click();
  await page.getByRole('link', { name: /First ford/ }).click();
  const grade = page.getByRole('region', { name: 'Grade' });
  await grade.and(page.locator('[aria-busy=false]')).waitFor();
  const ways = grade.locator('dd');
  expect(await ways.locator('.level').allTextContents()).toEqual(['Very difficult', 'Very difficult']);
  expect(await ways.first().textContent()).toMatch(/depth × flow up to .* with its ±; Difficult ends at/);
  await grade.getByText(CAUTION).waitFor();

  await grade.getByText('Classification, what it takes').click();
  await grade.getByLabel('Season').selectOption('wet');
  await ways.getByText('at least Very difficult').first().waitFor();
  await ways
    .getByText(/May be harder: water rises after rain/)
    .first()
    .waitFor();
  await grade.getByRole('button', { name: 'Work out what it takes' }).click();
  await grade.getByRole('row', { name: /Wading depth, at least \d+ cm/ }).waitFor();
  await grade.getByText('Our reading of the words, as numbers').click();
  await grade.getByText(/Every number here is our reading/).waitFor();
  expect(await findings(page)).toEqual([]);

  await page.getByRole('link', { name: /^Track/ }).click();
  const track = page.getByRole('region', { name: 'Grade' });
  expect(await track.getByLabel('Season').inputValue()).toBe('wet');
  await track.getByLabel('Classification').selectOption('South African grades, 1 to 5');
  await track.and(page.locator('[aria-busy=false]')).waitFor();
  await track
    .locator('dd')
    .first()
    .getByText(/Grade 5/)
    .waitFor();
  await track
    .locator('dd')
    .first()
    .getByText(/^set by /)
    .waitFor();
  await track.getByText(CAUTION).waitFor();
  await track.getByRole('button', { name: 'Work out what it takes' }).click();
  await track.getByRole('button', { name: 'Stop' }).click();
  await track.getByRole('button', { name: 'Work out what it takes' }).waitFor();
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(PHONE.width);
  expect(faults).toEqual([]);
  await context.close();
});
