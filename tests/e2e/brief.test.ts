import { mkdtempSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { beforeAll, expect, inject, test } from 'vitest';
import { carrying, LEAST } from '../../src/archive/carried.ts';
import type { OutFormat } from '../../src/archive/out/formats.ts';
import { outText } from '../../src/archive/out/formats.ts';
import { gradeToldOf } from '../../src/brief/gradeTold.ts';
import { readTrip } from '../../src/archive/share.ts';
import { rutline } from '../cli/run.ts';
import { inkOf, inkWithin, needPoppler, sheetsOf } from '../poppler.ts';
import { chromiumPath } from './chromium.ts';
import { findings, launch, matrix, sitDown } from './desk.ts';

const FILE = 'public/demo/outing.json';
const trip = readTrip(readFileSync(FILE, 'utf8')).value!;

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});

async function downloaded(page: Page, button: string): Promise<{ name: string; text: string }> {
  const downloading = page.waitForEvent('download');
  await page.getByRole('button', { name: button, exact: true }).click();
  const download = await downloading;
  return { name: download.suggestedFilename(), text: readFileSync(await download.path(), 'utf8') };
}

test('the trip leaves as GPX, GeoJSON and KML, the same as from the command line', async () => {
  const { context, page, faults } = await sitDown(browser, `${inject('url')}#/brief`);
  for (const [button, format] of [
    ['GPX', 'gpx'],
    ['GeoJSON', 'geojson'],
    ['KML', 'kml'],
  ] as const) {
    const { name, text } = await downloaded(page, button);
    expect(name).toBe(`Ember Range, spring outing.${format}`.replace(',', ''));
    const grade = gradeToldOf(trip, 'australia', 'dry');
    expect(text).toBe(outText(carrying(trip, LEAST), format satisfies OutFormat, 'metric', grade));
  }
  expect(await findings(page)).toEqual([]);
  expect(faults).toEqual([]);
  await context.close();
});

/** How sure each verdict is comes after the verdicts. */
async function reckoned(page: Page): Promise<void> {
  const unsure = () =>
    page
      .locator('td .word')
      .evaluateAll(
        (words) =>
          words.filter((word) => /^\s*goes/.test(word.textContent) && !word.querySelector('.sure')).length,
      );
  await expect.poll(unsure, { timeout: 60_000 }).toBe(0);
}

/** The sheets as the page gives them, and as the command line does: the same for everybody who asks. */
const fromPage = once(async () => {
  const { context, page } = await sitDown(browser, `${inject('url')}#/brief`);
  await matrix(page);
  await reckoned(page);
  const { text } = await downloaded(page, 'Save them as a page');
  await context.close();
  return text;
});
const fromCommandLine = once(async () => (await rutline('brief', FILE)).out);

function once<T>(made: () => Promise<T>): () => Promise<T> {
  let making: Promise<T> | undefined;
  return () => (making ??= made());
}

/** Words of a page that is printed, and how many sheets of a paper it takes. */
async function printed(markup: string, paper: 'A4' | 'Letter') {
  const page = await browser.newPage();
  await page.setContent(markup);
  const words = (await page.locator('body').innerText()).split('\n');
  const pdf = (await page.pdf({ format: paper, preferCSSPageSize: true })).toString('latin1');
  await page.close();
  return { words, sheets: pdf.match(/\/Type\s*\/Page\b/g)?.length ?? 0 };
}

test.each(['A4', 'Letter'] as const)(
  'the sheets from the page and from the command line are the same on %s, and few',
  async (paper) => {
    const here = await printed(await fromPage(), paper);
    const there = await printed(await fromCommandLine(), paper);
    expect(here).toEqual(there);
    expect(here.sheets).toBeLessThanOrEqual(3 + trip.vehicles.length);
  },
);

test('what goes to the printer is that page', async () => {
  const { context, page, faults } = await sitDown(browser, 'about:blank');
  // A frame that was printed is taken away; here it is to stay.
  await page.addInitScript(() => (window.print = () => undefined));
  await page.goto(inject('url'));
  await matrix(page);
  await reckoned(page);
  const { text } = await downloaded(page, 'Save them as a page');
  await page.getByRole('button', { name: 'Print briefing and cards', exact: true }).click();
  const frame = page.frameLocator('iframe[title="Briefing for the printer"]');
  await frame.locator('.card').last().waitFor({ state: 'attached' });
  const words = (await frame.locator('body').textContent())!;
  const [, body] = text.split('<body>');
  expect(words.replace(/\s+/g, '')).toBe(
    await page.evaluate((markup) => {
      const saved = new DOMParser().parseFromString(markup, 'text/html');
      return saved.body.textContent.replace(/\s+/g, '');
    }, `<body>${body}`),
  );
  expect(faults).toEqual([]);
  await context.close();
});

test.each([
  [[], 210, 297],
  [['--letter'], 215.9, 279.4],
] as const)('the command line prints the sheets itself %j', async (args, wideMm, highMm) => {
  const file = join(mkdtempSync(join(tmpdir(), 'rutline-')), 'briefing.pdf');
  const { CHROME_BIN } = process.env;
  process.env.CHROME_BIN = chromiumPath();
  const running = rutline('brief', FILE, '--pdf', ...args, '--out', file);
  if (CHROME_BIN === undefined) delete process.env.CHROME_BIN;
  else process.env.CHROME_BIN = CHROME_BIN;
  expect(await running).toEqual({ code: 0, out: '', err: '' });
  needPoppler();
  const sheets = sheetsOf(file);
  expect(sheets.length).toBeGreaterThan(trip.vehicles.length);
  for (const sheet of sheets) {
    expect(Math.abs(sheet.wideMm - wideMm)).toBeLessThan(0.5);
    expect(Math.abs(sheet.highMm - highMm)).toBeLessThan(0.5);
    expect(inkOf(sheet.picture)).toBeGreaterThan(0.001);
    expect(inkWithin(sheet.picture, 9.5)).toBe(0);
  }
});

test.each(['A4', 'Letter'] as const)(
  'nothing on the sheets is cut by the end of a page or runs out of it, on %s',
  async (paper) => {
    const page = await browser.newPage();
    await page.setContent(await fromCommandLine());
    await page.emulateMedia({ media: 'print' });
    // 96 pixels an inch, 10 mm of margin on every side.
    const [wideMm, highMm] = paper === 'A4' ? [210, 297] : [215.9, 279.4];
    const px = (mm: number) => (mm * 96) / 25.4;
    await page.setViewportSize({ width: Math.floor(px(wideMm - 20)), height: Math.floor(px(highMm - 20)) });
    const boxes = await page.evaluate(() =>
      [...document.querySelectorAll('.card, figure, table, .obstacle, p, li, h1, h2, h3')].map((one) => {
        const { left, right, height } = one.getBoundingClientRect();
        return {
          left,
          right,
          height,
          what: `${one.tagName} ${one.className}: ${one.textContent.slice(0, 40)}`,
        };
      }),
    );
    const unbroken = boxes.filter(({ what }) => !what.startsWith('TABLE'));
    for (const { left, right, what } of boxes) {
      expect(left, what).toBeGreaterThanOrEqual(0);
      expect(right, what).toBeLessThanOrEqual(px(wideMm - 20) + 0.5);
    }
    for (const { height, what } of unbroken) expect(height, what).toBeLessThan(px(highMm - 20));
    await page.close();
  },
);

test('the sheets are black on white: no word or stroke in a colour that a copier loses', async () => {
  const page = await browser.newPage();
  await page.setContent(await fromCommandLine());
  const colours = await page.evaluate(() => [
    ...new Set(
      [...document.querySelectorAll('body *')]
        .filter((one) => !one.matches('.slope'))
        .flatMap((one) => {
          const { color, stroke, fill } = getComputedStyle(one);
          return [color, ...(one instanceof SVGElement ? [stroke, fill] : [])];
        }),
    ),
  ]);
  expect(colours.sort()).toEqual(['none', 'rgb(0, 0, 0)', 'rgb(255, 255, 255)']);
  await page.close();
});

test('a cell says where else its vehicle goes, and when its line is to be met exactly', async () => {
  const { context, page, faults } = await sitDown(browser, `${inject('url')}#/brief`);
  const row = page.getByRole('row').filter({ has: page.getByRole('link', { name: /Hobnail ruts/ }) });
  await row.locator('td a').first().click();
  const sheet = page.getByRole('complementary', { name: 'Why' });
  await sheet.getByRole('heading', { name: 'Moved sideways' }).waitFor({ timeout: 60_000 });
  await sheet
    .getByRole('listitem')
    .filter({ hasText: /right, best / })
    .waitFor();
  await sheet.getByText('To be met exactly: main line.').waitFor();
  await sheet.getByRole('link', { name: 'Close' }).click();
  await expect
    .poll(() =>
      row
        .locator('td a')
        .first()
        .evaluate((cell) => cell === document.activeElement),
    )
    .toBe(true);
  expect(faults).toEqual([]);
  await context.close();
});

test('an order and a briefing that cannot be worked out say so, and are asked for again', async () => {
  const { context, page } = await sitDown(browser, `${inject('url')}#/brief`);
  await matrix(page);
  const find = page.getByRole('button', { name: /^Find the order/ });
  await page.route(/order\.worker/, (route) => route.abort());
  await find.click();
  await page
    .getByRole('alert')
    .getByText(/^The order could not be worked out/)
    .waitFor();
  const save = page.getByRole('button', { name: 'Save them as a page' });
  await save.click();
  await page
    .getByRole('alert')
    .getByText(/^The briefing could not be written/)
    .waitFor();
  await page.unroute(/order\.worker/);
  await find.click();
  await page
    .getByRole('button', { name: 'Take this order' })
    .or(page.getByText('The convoy stands so.'))
    .waitFor();
  await downloaded(page, 'Save them as a page');
  expect(await page.getByRole('alert').count()).toBe(0);
  await context.close();
});
