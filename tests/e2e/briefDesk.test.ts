import type { Browser } from 'playwright-core';
import { beforeAll, expect, inject, test } from 'vitest';
import { beginTrip, launch, matrix, sitDown } from './desk.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});

test('an empty trip is told what to do before it can be briefed', async () => {
  const { context, page, faults } = await beginTrip(browser, inject('url'));
  const main = page.getByRole('main');
  await page.goto(`${inject('url')}#/brief`);
  await page.getByRole('heading', { name: 'Nothing to brief yet' }).waitFor();
  expect(await page.getByText('Pin the obstacles on the').count()).toBe(1);
  expect(await page.getByText("Then each vehicle's verdict on each obstacle stands here.").count()).toBe(1);
  await main.getByRole('link', { name: 'convoy' }).click();
  await page.getByRole('heading', { name: 'Nobody in the convoy yet' }).waitFor();
  await page.goBack();
  await main.getByRole('link', { name: 'Scout desk' }).click();
  await page.getByRole('heading', { name: 'Start with the track' }).waitFor();
  expect(faults).toEqual([]);
  await context.close();
});

test('the proposed order names every vehicle once, each with a reason', async () => {
  const { context, page } = await sitDown(browser, `${inject('url')}#/brief`);
  await matrix(page);
  const order = page.getByRole('region', { name: 'Who drives where in the line' });
  await order.getByRole('button', { name: 'Find the order in which most go unaided' }).click();
  await order.getByRole('listitem').first().waitFor();
  const rows = await order.getByRole('listitem').all();
  const names = await Promise.all(rows.map((row) => row.locator('strong').textContent()));
  expect(names.toSorted()).toEqual(['Bracken', 'Drover', 'Harrier', 'Larkspur', 'Oxbow', 'Pebble']);
  for (const row of rows) expect((await row.textContent())?.trim()).toMatch(/^\S+\s+\S.*\S$/);
  await context.close();
});
