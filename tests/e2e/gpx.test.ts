import type { Browser } from 'playwright-core';
import { beforeAll, expect, inject, test } from 'vitest';
import { beginTrip, launch, openFile, sitDown } from './desk.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});

test('a GPX cut short says what is wrong with it, and gives what it holds', async () => {
  const { context, page } = await beginTrip(browser, inject('url'));
  await openFile(page, 'cut-short.gpx');
  const problems = page.getByRole('alert', { name: /^Problems in/ });
  await problems.waitFor();
  expect(await problems.getByRole('listitem').count()).toBeGreaterThan(1);
  expect(await problems.textContent()).toContain('line ');
  await page.getByText(/^Read Old quarry & ridge/).waitFor();
  await page.getByRole('button', { name: 'Dismiss' }).click();
  expect(await problems.count()).toBe(0);
  await context.close();
});

test('a file that is no GPX at all changes nothing and says so', async () => {
  const { context, page } = await sitDown(browser, `${inject('url')}#/archive`);
  const name = await page.getByLabel('Trip name').inputValue();
  await page.getByRole('link', { name: 'Archive', exact: true }).click();
  await page
    .locator('input[type=file]')
    .first()
    .setInputFiles({
      name: 'holiday.gpx',
      mimeType: 'application/gpx+xml',
      buffer: Buffer.from('this is a shopping list'),
    });
  await page.getByRole('alert').waitFor();
  expect(await page.getByRole('alert').textContent()).toContain('holiday.gpx');
  expect(await page.getByLabel('Trip name').inputValue()).toBe(name);
  await context.close();
});

test('a file of several tracks asks which one', async () => {
  const { context, page } = await beginTrip(browser, inject('url'));
  await openFile(page, 'two-tracks.gpx');
  await page.getByRole('dialog', { name: 'Which track?' }).waitFor();
  await page.getByRole('button', { name: /^Down the creek/ }).click();
  await expect.poll(() => page.getByLabel('Trip name').inputValue()).toBe('Down the creek');
  await context.close();
});

test('a GPX dropped onto the page is read', async () => {
  const { context, page } = await beginTrip(browser, inject('url'));
  const dropped = await page.evaluateHandle(() => {
    const points = [0, 1, 2].map(
      (i) => `<trkpt lat="${45 + i / 1000}" lon="7"><ele>${900 + i}</ele></trkpt>`,
    );
    const gpx = `<gpx version="1.1" xmlns="http://www.topografix.com/GPX/1/1"><trk><name>Dropped</name><trkseg>${points.join('')}</trkseg></trk></gpx>`;
    const transfer = new DataTransfer();
    transfer.items.add(new File([gpx], 'dropped.gpx'));
    return transfer;
  });
  await page.dispatchEvent('main', 'drop', { dataTransfer: dropped });
  await expect.poll(() => page.getByLabel('Trip name').inputValue()).toBe('Dropped');
  await context.close();
});
