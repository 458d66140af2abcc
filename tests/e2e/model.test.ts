import { readFileSync } from 'node:fs';
import type { Browser } from 'playwright-core';
import { beforeAll, expect, inject, test } from 'vitest';
import { archiveGeoJson } from '../../src/archive/out/archiveGeoJson.ts';
import { attemptsOf } from '../../src/archive/attempts.ts';
import { gradedAnew } from '../../src/archive/filing.ts';
import type { GradedTrack, Outcome } from '../../src/archive/gradedTrack.ts';
import { readTrip } from '../../src/archive/share.ts';
import { neededAdhesion } from '../../src/grade/neededAdhesion.ts';
import { gripOf } from '../../src/terrain/surface.ts';
import { ladder } from '../../src/vehicle/aids.ts';
import { piecesOf } from '../archive/pieces.ts';
import { findings, launch, sitDown } from './desk.ts';

let browser: Browser;

beforeAll(async () => {
  browser = await launch();
});

test('an elevation model is laid along the track, takes the slopes over, and stays with the trip without its file', async () => {
  const { context, page, faults } = await sitDown(browser, inject('url'));
  await page.getByRole('link', { name: 'Track', exact: true }).click();
  await page.getByRole('button', { name: 'Lay it along the track' }).click();
  const source = page.getByLabel('Slopes are read off');
  await source.waitFor();
  expect(await source.inputValue()).toBe('recorded');
  const steepest = page.getByRole('row', { name: /^Steepest 20 m up/ });
  const recorded = await steepest.textContent();
  await page.locator('.profile .other').waitFor({ state: 'attached' });
  await page.getByText('dotted: elevation model').waitFor();

  await source.selectOption('model');
  await page.getByText('dotted: as recorded').waitFor();
  await expect.poll(() => steepest.textContent()).not.toBe(recorded);
  await page.getByText(/a pitch shorter than \d+ m does not show/).waitFor();
  await page.getByText(/farthest from that at [\d.]+ km/).waitFor();
  await page.getByText(/^hillside .* side high$/).waitFor();
  expect(await findings(page)).toEqual([]);

  // Less error, less ±.
  const wide = await steepest.textContent();
  await page.getByLabel('Vertical error', { exact: true }).fill('1');
  await expect.poll(() => steepest.textContent()).not.toBe(wide);
  await page.getByText('stored', { exact: true }).waitFor();

  // The file of the model cannot be had any more.
  await page.route('**/*.asc.gz', (route) => route.abort());
  await page.reload();
  await page.getByText('dotted: as recorded').waitFor();
  expect(await page.getByLabel('Slopes are read off').inputValue()).toBe('model');
  await page.getByRole('button', { name: 'Take the model off the track' }).click();
  await page.getByText('dotted: as recorded').waitFor({ state: 'detached' });
  await expect.poll(() => steepest.textContent()).toBe(recorded);
  await page.getByRole('button', { name: /^Undo/ }).click();
  await page.getByText('dotted: as recorded').waitFor();
  expect(faults.filter((fault) => !fault.includes('net::ERR_FAILED'))).toEqual([]);
  await context.close();
}, 240_000);

test('what outcomes suggest is held by a press, only slipperier, is said where the ground is named, and taken back', async () => {
  const { context, page, faults } = await sitDown(browser, inject('url'));
  const { graded, name, material, condition } = hardDay();
  await page.getByRole('link', { name: 'Track', exact: true }).click();
  await page.getByRole('button', { name: 'Lay it along the track' }).waitFor();
  await page
    .locator('input[type=file]')
    .first()
    .setInputFiles({
      name: 'club.geojson',
      mimeType: 'application/geo+json',
      buffer: Buffer.from((await piecesOf(archiveGeoJson([graded]))).join('')),
    });
  await page.getByText('1 track in the archive.').waitFor();
  await page.getByRole('link', { name: 'Said and done' }).click();
  await page.getByRole('button', { name: 'Work it out' }).click();
  const ground = page.getByRole('group', { name: new RegExp(`^${material}, ${condition}`, 'i') });
  const hold = ground.getByRole('button', { name: /^Hold it slipperier in “Ember Range/ });
  await hold.click();
  await ground.getByText(/held slipperier after outcomes: 0\.\d\d instead of 0\.\d\d/).waitFor();
  expect(await hold.count()).toBe(0);
  expect(await findings(page)).toEqual([]);

  await page.getByRole('link', { name: 'Scout' }).click();
  await page.getByRole('link', { name: /^Obstacles/ }).click();
  await page
    .getByRole('link', { name: new RegExp(name) })
    .first()
    .click();
  const held = page.getByText(/Surface: [^]*held slipperier/).first();
  await held.waitFor();
  await page.getByText('stored', { exact: true }).waitFor();
  await page.reload();
  await held.waitFor();
  await held.click();
  await page.getByRole('button', { name: 'Take the tables’ grip again' }).click();
  await held.waitFor({ state: 'detached' });
  await page.getByRole('button', { name: /^Undo/ }).click();
  await held.waitFor();
  expect(faults).toEqual([]);
  await context.close();
}, 240_000);

/** An obstacle of the demonstration, alone in a graded track, at which one vehicle turned back ten times where tables say that it has grip to spare. */
function hardDay() {
  const trip = readTrip(readFileSync('public/demo/outing.json', 'utf8')).value!;
  const track = gradedAnew(trip, 'hard-day', { atMs: 1, by: '', newId: ids() });
  for (const one of track.surveyed)
    for (const vehicle of trip.vehicles) {
      const outcome: Outcome = {
        id: 'out',
        atMs: 2,
        by: '',
        vehicle: { ...vehicle, driver: '' },
        lineId: one.obstacle.lines[0].id,
        direction: 'as recorded',
        rung: ladder(vehicle.values)[0].name,
        said: 'goes',
        did: 'turned back',
        note: '',
      };
      const outcomes = Array.from({ length: 10 }, (_, i) => ({ ...outcome, id: `${one.obstacle.id}-${i}` }));
      const graded: GradedTrack = {
        ...track,
        track: null,
        waypoints: [],
        surveyed: [{ ...one, outcomes }],
      };
      const [{ attempt, surface }] = attemptsOf(graded);
      const needed = neededAdhesion(attempt);
      if (needed !== null && needed < gripOf(surface).peak.low - 0.1)
        return { graded, name: one.obstacle.name, ...surface };
    }
  throw new Error('No obstacle of the demonstration hangs on traction with grip to spare.');
}

function ids(): () => string {
  let n = 0;
  return () => `visit-${++n}`;
}
