import { readFileSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { beforeAll, expect, inject, test } from 'vitest';
import { copiesFrom, copiesToBytes } from '../../src/archive/exchange.ts';
import { edited, gradedOf } from '../../src/archive/gradedReplica.ts';
import { replicaToBytes } from '../../src/archive/replica.ts';
import { tripToJson } from '../../src/archive/share.ts';
import { DEMO } from '../archive/outTrips.ts';
import { engine } from '../archive/replicas.ts';
import { findings, launch, sitDown, WIDE } from './desk.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
  await engine();
});

/** The demonstration's first ford and two of its vehicles, one of which does not go. */
const SMALL = {
  ...DEMO,
  id: 'small',
  name: 'Ember ford',
  obstacles: DEMO.obstacles.slice(0, 1),
  vehicles: DEMO.vehicles.slice(0, 2),
};

/** Measured at the first obstacle on another day, filed as of that day; or all measured again, and found as it was. */
async function file(page: Page, day: string, allMeasured = false): Promise<void> {
  await page.getByRole('button', { name: 'File into the archive' }).click();
  await page.getByLabel('Measured by').fill('Ann');
  await page.getByLabel('Measured on').fill(day);
  const again = page.getByLabel('Every obstacle was measured again on that day');
  if (allMeasured) await again.check();
  else if ((await again.count()) > 0) expect(await again.isChecked()).toBe(false);
  await page.getByRole('button', { name: 'File it' }).click();
  await page.getByText(/^Filed into/).waitFor();
}

/** What another leader, who has the same file, makes of it: another area, and the first obstacle pinned elsewhere. */
function asBen(path: string): Buffer {
  const [{ replica }] = copiesFrom(readFileSync(path)).value!;
  const graded = gradedOf(replica).value!;
  const [one, ...rest] = graded.surveyed;
  const moved = { ...one, obstacle: { ...one.obstacle, lng: one.obstacle.lng + 0.0001 } };
  const track = { ...graded, area: 'Ben was here', surveyed: [moved, ...rest] };
  const after = edited(replica, track, { by: 'Ben', atMs: Date.parse('2025-06-01') });
  return Buffer.from(copiesToBytes([replicaToBytes(after)]));
}

test('a trip is filed, found, measured again, driven, argued about and shared', async () => {
  const { context, page, faults } = await sitDown(browser, `${inject('url')}#/archive`, WIDE, {
    draws: 'coarse map',
  });
  await page.getByRole('link', { name: 'Archive', exact: true }).click();
  await page
    .locator('input[type=file]')
    .first()
    .setInputFiles({
      name: 'small.json',
      mimeType: 'application/json',
      buffer: Buffer.from(tripToJson(SMALL)),
    });
  await page.getByText('Opened Ember ford').waitFor();
  await page.getByRole('link', { name: 'Graded tracks' }).click();
  await page.getByText('No graded tracks yet').waitFor();
  await page.getByRole('navigation', { name: 'Parts' }).getByRole('link', { name: 'Trips' }).click();
  await file(page, '2024-05-04');

  // Found by a word, and not by another; and what the convoy makes of it.
  await page.getByRole('link', { name: 'Graded tracks' }).click();
  const list = page.getByRole('list', { name: 'Graded tracks' });
  await page.getByLabel('Name or area').fill('nowhere');
  await page.getByText('Nothing answers to this').waitFor();
  await page.getByLabel('Name or area').fill('ember');
  await list.getByText('stale').waitFor();
  await page.getByText('Can this convoy do it?').click();
  await page.getByRole('button', { name: 'Ask of the tracks found' }).click();
  await list.getByText(/ on /).waitFor();
  const worst = await list.locator('.word').innerText();
  await list.getByRole('link').click();

  // Another leader takes the file away, and changes it.
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save the file to share' }).click(),
  ]);
  expect(download.suggestedFilename()).toMatch(/\.rutline-tracks$/);
  const theirs = asBen(await download.path());

  // Meanwhile it is measured again here: out onto the desk, deeper and pinned elsewhere, and back.
  await page.getByRole('button', { name: 'Take onto the desk' }).click();
  await page.waitForURL(/#\/scout/);
  await page
    .getByRole('link', { name: /First ford/ })
    .first()
    .click();
  await page.getByLabel('Name of the obstacle').waitFor();
  await page.evaluate(() => document.querySelectorAll('details').forEach((one) => (one.open = true)));
  await page.getByLabel('Depth', { exact: true }).fill('55');
  await page.getByLabel('Along the track').fill('0.75');
  await page.getByRole('link', { name: 'Brief' }).click();
  await page.locator('td a').first().waitFor();
  await file(page, '2025-05-11');
  await page.getByRole('button', { name: 'See it there' }).click();
  await page.getByRole('link', { name: /^First ford/ }).click();
  const chart = page.getByRole('img', { name: 'Condition, visit by visit' });
  await chart.waitFor();
  expect(await chart.locator('.visit').count()).toBe(2);
  expect(await chart.textContent()).toContain('11 May 2025');
  await page.getByText('Deepest water: harder').waitFor();

  // Measured once more, and found the same: that is a visit where it is said.
  await page.getByRole('link', { name: 'Brief' }).click();
  await page.locator('td a').first().waitFor();
  await file(page, '2025-05-18', true);
  await page.getByRole('button', { name: 'See it there' }).click();
  await page.getByRole('link', { name: /^First ford/ }).click();
  await expect.poll(() => chart.locator('.visit').count()).toBe(3);
  expect(await chart.textContent()).toContain('18 May 2025');

  // The other leader's file comes in: what only one changed is taken, what both changed is to choose.
  await page.getByLabel('A file from another leader').setInputFiles({
    name: 'ben.rutline-tracks',
    mimeType: 'application/octet-stream',
    buffer: theirs,
  });
  await page.getByRole('status').filter({ hasText: '1 value to choose.' }).waitFor();
  await page.getByRole('link', { name: 'Brief' }).click();
  await page.getByRole('row').getByText('Two people entered different values here').waitFor();
  await page.getByRole('row').getByRole('link', { name: 'Choose' }).click();
  await page.getByText('First ford, place').waitFor();
  expect(await findings(page)).toEqual([]);
  await page
    .getByRole('button', { name: /^Choose this/ })
    .first()
    .click();
  await page.getByText('First ford, place').waitFor({ state: 'detached' });
  await page.getByText('← The whole track').click();
  await page.getByText('Ben was here').first().waitFor();
  await page.getByText('History', { exact: true }).click();
  await page.getByText('area: empty → Ben was here').waitFor();
  await page.getByText('First ford, place: chose').waitFor();

  // On the day: one tap a vehicle, against what was said.
  await page.getByRole('link', { name: 'Brief' }).click();
  await page.locator('td a').first().click();
  await page.getByRole('link', { name: 'Note what it did' }).first().click();
  await page.locator('li', { hasText: 'Said:' }).first().waitFor();
  const rows = page.locator('li', { hasText: 'Said:' });
  await rows.nth(0).getByRole('button', { name: 'was pulled' }).click();
  await rows.nth(0).getByText('Noted').waitFor();
  expect(await findings(page)).toEqual([]);
  await page.getByRole('link', { name: 'Archive', exact: true }).click();
  await page.getByRole('link', { name: 'Said and done' }).click();
  await page.getByRole('table').waitFor();
  expect(await page.locator('td', { hasText: '1' }).count()).toBe(1);
  await page.getByRole('button', { name: 'Work it out' }).click();
  await page
    .getByText(/says nothing below|hung on traction/)
    .first()
    .waitFor();
  expect(await findings(page)).toEqual([]);
  expect(worst).not.toBe('');

  // The map's library comes after the tracks: it looks at them all the same, and not at the whole earth.
  await page.route(/\/map\.svelte-[^/]*\.js$/, async (route) => {
    await new Promise((resolve) => setTimeout(resolve, 1500));
    await route.continue();
  });
  await page.goto(`${inject('url')}#/archive/tracks`);
  await page.reload();
  await page
    .getByRole('img', { name: /^Scale: the bar is (\d+ m|\d km) long$/ })
    .waitFor({ timeout: 60_000 });
  expect(faults).toEqual([]);
  await context.close();
});
