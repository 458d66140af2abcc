import { readFileSync } from 'node:fs';
import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import { rankOf, VERDICT_WORDS } from '../../src/grade/verdict.ts';
import { G_MPS2 } from '../../src/traverse/gravity.ts';
import { addressOf } from '../../src/ui/place.ts';
import type { Vehicle } from '../../src/vehicle/vehicle.ts';
import { totalMassKg } from '../../src/vehicle/vehicle.ts';
import type { Desk } from './desk.ts';
import { beginTrip, launch, sitDown } from './desk.ts';

interface Named {
  readonly id: string;
  readonly name: string;
}

interface Told {
  readonly kind: string;
  readonly parts: readonly string[];
}

interface Filed {
  readonly obstacles: readonly (Named & { readonly lines: readonly Named[] })[];
  readonly vehicles: readonly Vehicle[];
}

const textOf = (path: string) => readFileSync(new URL(path, import.meta.url), 'utf8');
const DEMO = JSON.parse(textOf('../../public/demo/outing.json')) as Filed;
const RUTS = JSON.parse(textOf('./in/ruts.json')) as Filed;

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});

/** Answers come from workers, which a busy machine keeps waiting. */
const PATIENT = { timeout: 60_000 };

const named = <One extends Named>(ones: readonly One[], name: string) =>
  ones.find((one) => one.name === name) ?? expect.fail(name);

const drawing = (page: Page, name: RegExp) =>
  page.getByRole('figure').filter({ has: page.getByRole('img', { name }) });
const VIEWS = [
  /^Cut across under the rear axle/,
  /^Cut across under the front axle/,
  /^Side view/,
  /^The obstacle from above/,
];
const pathOf = (one: Locator) => one.first().getAttribute('d');

describe('one vehicle at one obstacle', () => {
  const RUTS = named(DEMO.obstacles, 'Hobnail ruts');
  const PEBBLE = named(DEMO.vehicles, 'Pebble');
  let desk: Desk;
  let page: Page;

  beforeAll(async () => {
    const place = { obstacleId: RUTS.id, vehicleId: PEBBLE.id, lineId: null };
    desk = await sitDown(browser, inject('url') + addressOf({ desk: 'workbench', ...place }));
    page = desk.page;
    await page.getByRole('heading', { name: 'Wheel loads' }).waitFor(PATIENT);
  });

  afterAll(async () => {
    expect(desk.faults).toEqual([]);
    await desk.context.close();
  });

  test('another to compare with stands in every drawing as a lighter outline, and is gone again', async () => {
    const others = (view: RegExp) => drawing(page, view).locator('.vehicle.other');
    for (const view of VIEWS) expect(await others(view).count()).toBe(0);
    await page.getByLabel('Compare with').selectOption('Oxbow');
    for (const view of VIEWS) {
      await expect.poll(() => others(view).count(), PATIENT).toBe(1);
      const inked = (which: string) =>
        drawing(page, view)
          .locator(`.vehicle${which} .body`)
          .evaluate((one) => {
            const { strokeDasharray, strokeWidth } = getComputedStyle(one);
            return { d: one.getAttribute('d'), dashes: strokeDasharray, widthPx: parseFloat(strokeWidth) };
          });
      const [own, other] = [await inked(':not(.other)'), await inked('.other')];
      expect(other.d).not.toBe(own.d);
      expect(other.dashes).not.toBe('none');
      expect(other.widthPx).toBeLessThan(own.widthPx);
    }
    await page.getByLabel('Compare with').selectOption('nobody');
    for (const view of VIEWS) await expect.poll(() => others(view).count(), PATIENT).toBe(0);
  });

  test('loads add up to the weight, as figures and as bars', async () => {
    const section = page.getByRole('region', { name: 'Wheel loads' });
    await page.getByLabel(/^Station of mid-wheelbase/).fill('-7');
    const told = await section.locator('.load').allTextContents();
    const loads = told.map((load) => (load === 'in the air' ? 0 : Number(/^([\d.]+) kN$/.exec(load)?.[1])));
    const bars = await section
      .locator('.bar')
      .evaluateAll((ones) => ones.map((one) => one.getAttribute('width')));
    const weightKn = (totalMassKg(PEBBLE.values) * G_MPS2) / 1000;
    const sumKn = loads.reduce((sum, load) => sum + load, 0);
    // Less by the slope, whose cosine it is.
    expect(sumKn).toBeGreaterThan(0.93 * weightKn);
    expect(sumKn).toBeLessThan(1.02 * weightKn);
    // A bar's end is 60 % of the weight.
    for (const [i, load] of loads.entries())
      expect(Math.abs(Number(bars[i]) - (100 * load) / weightKn / 0.6)).toBeLessThan(2);
  });

  test('a rung that is chosen changes strip and verdict', async () => {
    const said = () => page.locator('.bench > .verdict strong').textContent();
    const looked = () => pathOf(page.locator('.strip .margin.looked'));
    const before = { said: await said(), strip: await looked() };
    const other = page
      .getByRole('group', { name: 'Aids engaged' })
      .getByRole('radio', { checked: false })
      .first();
    const words = await other.locator('..').locator('.words > span').first().textContent();
    const rung = words!.replace(/^\d+\. (\+ )?/, '');
    expect(before.said).not.toContain(`, ${rung}: `);
    await other.check();
    await expect.poll(said, PATIENT).toMatch(new RegExp(`^Pebble, ${rung}: `));
    await expect.poll(looked, PATIENT).not.toBe(before.strip);
  });

  test("a size that is typed changes the drawing and the trip; a line's own link opens the workbench on it", async () => {
    const ground = () => pathOf(drawing(page, VIEWS[0]).locator('.surface'));
    await page.getByLabel(/^Station of mid-wheelbase/).fill('0');
    const before = await ground();
    const sizes = page.getByRole('region', { name: 'Sizes' });
    await sizes
      .getByText(/^Rut, left/)
      .first()
      .click();
    await sizes.getByLabel('Depth', { exact: true }).first().fill('44');
    await expect.poll(ground, PATIENT).not.toBe(before);
    await page.getByRole('link', { name: RUTS.name }).click();
    await page.getByText(/^Shapes in the ground/).click();
    await page.getByText(/^Rut, left, 44 cm deep/).waitFor();

    const line = RUTS.lines.at(-1)!;
    await page.getByRole('link', { name: new RegExp(`^Workbench ?: ${line.name}$`) }).click();
    await page.getByRole('heading', { name: 'Workbench', exact: true }).waitFor();
    const chosen = page.getByLabel('Line', { exact: true }).locator('option:checked');
    expect(await chosen.textContent()).toBe(line.name);
  });
});

test('from the sheet of a pull to the workbench: how strong it must be, who could give it, and what else would help, the best first', async () => {
  const { context, page, faults } = await sitDown(
    browser,
    inject('url') +
      addressOf({
        desk: 'brief',
        cell: {
          obstacleId: named(DEMO.obstacles, 'Hobnail ruts').id,
          vehicleId: named(DEMO.vehicles, 'Larkspur').id,
        },
      }),
  );
  const why = page.getByRole('complementary', { name: 'Why' });
  const pull = why.locator('section > div').filter({ hasText: 'A pull of about' }).first();
  await pull.waitFor(PATIENT);
  expect(await pull.getByRole('heading').textContent()).toMatch(/^A pull of about [\d.]+ kN$/);
  const helpers = await pull.getByRole('listitem').allTextContents();
  expect(helpers.length).toBeGreaterThan(0);
  for (const helper of helpers) expect(helper).toMatch(/^\s*\S+ by (winch|tow)( in \d parts of rope)?\./);
  expect(await pull.textContent()).toContain('Look at points, gear and ground before anyone pulls.');
  expect(await pull.locator('.fault').allTextContents()).toContain(
    'Larkspur has no rated recovery point in front.',
  );

  await why.getByRole('link', { name: 'Open the workbench' }).click();
  const whatIf = page.getByRole('region', { name: 'What if' });
  await expect.poll(() => whatIf.getAttribute('aria-busy'), PATIENT).toBe('false');
  const changes = await whatIf.getByRole('listitem').evaluateAll((items): Told[] =>
    items.map((item) => ({
      kind: item.getAttribute('class') ?? '',
      parts: [...item.querySelectorAll(':scope > span')].map((part): string =>
        part.textContent.replace(/\s+/g, ' ').trim(),
      ),
    })),
  );
  expect(changes.length).toBeGreaterThan(2);
  const gains = changes.map(({ kind, parts: [name, verdict, margins] }) => {
    expect(name).not.toBe('');
    // The margin of what limits now, before and after.
    expect(margins).toMatch(/^[^:]+: .+ → .+$/);
    if (verdict.startsWith('still ')) return { words: 0, kind };
    const [before, after] = verdict.split(' → ').map((word) => VERDICT_WORDS.find((one) => one === word)!);
    return { words: rankOf(before) - rankOf(after), kind };
  });
  expect(gains.map(({ words }) => words)).toEqual(gains.map(({ words }) => words).toSorted((a, b) => b - a));
  for (const { words, kind } of gains) if (words !== 0) expect(kind).toMatch(words > 0 ? 'better' : 'worse');
  expect(gains[0].kind).toMatch('better');
  const worse = gains.findIndex(({ kind }) => kind.includes('worse'));
  if (worse >= 0) expect(gains.slice(worse).every(({ kind }) => kind.includes('worse'))).toBe(true);
  expect(faults).toEqual([]);
  await context.close();
});

test('where nothing can stand on the workbench, it says what to do next', async () => {
  const { context, page, faults } = await beginTrip(browser, inject('url'));
  const main = page.getByRole('main');
  const buffer = Buffer.from(JSON.stringify(withoutSlope(RUTS)));
  await page
    .locator('input[type=file]')
    .first()
    .setInputFiles({ name: 'ruts.json', mimeType: 'application/json', buffer });
  await expect.poll(() => page.getByLabel('Trip name').inputValue(), PATIENT).toBe('Old quarry & ridge');
  const stand = (obstacleId: string) =>
    page.goto(inject('url') + addressOf({ desk: 'workbench', obstacleId, vehicleId: null, lineId: null }));

  await stand('nowhere');
  await page.getByRole('heading', { name: 'This obstacle is not in the trip' }).waitFor();
  await main.getByRole('link', { name: 'Scout desk' }).click();
  await page.getByRole('link', { name: /Rutted climb/ }).waitFor();

  const [{ id }] = RUTS.obstacles;
  await stand(id);
  await page.getByText('Nothing can be drawn until ground and vehicle are known.').waitFor(PATIENT);
  expect(await page.locator('.bench > .verdict strong').textContent()).toMatch(/: not known$/);
  expect(await page.getByRole('img').count()).toBe(0);
  await page.getByText('Nothing can be said while values are missing.').waitFor(PATIENT);
  await main.getByRole('link', { name: 'Open the obstacle' }).click();
  await page.getByText('Slope is not known').first().waitFor();

  await page.getByRole('link', { name: /^Convoy/ }).click();
  await page.getByRole('button', { name: /^Remove / }).click();
  await stand(id);
  await page.getByRole('heading', { name: 'No vehicle to put on the workbench' }).waitFor();
  await main.getByRole('link', { name: 'convoy' }).click();
  await page.getByRole('heading', { name: 'Nobody in the convoy yet' }).waitFor();
  expect(faults).toEqual([]);
  await context.close();
});

/** Neither pin nor track tell it. */
function withoutSlope(trip: Filed): unknown {
  const obstacles = trip.obstacles.map((obstacle) => {
    const { stretch } = obstacle as unknown as { readonly stretch: object };
    return { ...obstacle, stretch: { ...stretch, plane: { slopeRad: null, camberRad: 0 }, hows: {} } };
  });
  return { ...trip, track: null, obstacles };
}
