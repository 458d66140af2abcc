import type { RunOptions } from 'axe-core';
import axe from 'axe-core';
import type { Browser, BrowserContext, BrowserContextOptions, Page } from 'playwright-core';
import { chromium } from 'playwright-core';
import { chromiumPath, TESTED_ARGS } from './chromium.ts';

export const WIDE = { width: 1440, height: 900 };
export const PHONE = { width: 390, height: 844 };

let launched: Promise<Browser> | null = null;

/**
 * The browser of all files that one worker tests, one after another; it ends with the worker. What a test that failed has
 * left open is closed.
 */
export async function launch(): Promise<Browser> {
  launched ??= chromium.launch({ executablePath: chromiumPath(), args: TESTED_ARGS });
  const browser = await launched;
  await Promise.all(browser.contexts().map((context) => context.close()));
  return browser;
}

/** A page on a device that has never seen the program, and what went wrong on it. */
export interface Desk {
  readonly context: BrowserContext;
  readonly page: Page;
  readonly faults: string[];
}

/** A screen of this many points a pixel: an emulated graphics card takes its time over every point of a map. */
const COARSE = 0.25;

/**
 * What the device draws maps with. A card that is emulated takes more processor time for one map than all else of a page,
 * so that most tests sit at a device that has none, where everything else works; a `sharp` map shows its colours.
 */
export type Draws = 'no map' | 'coarse map' | 'sharp map';

interface Device extends BrowserContextOptions {
  readonly draws?: Draws;
}

/** Without service worker, which would fetch beside every test and answer before its routes. */
export async function sitDown(
  browser: Browser,
  url: string,
  viewport = WIDE,
  { draws = 'no map', ...device }: Device = {},
): Promise<Desk> {
  const context = await browser.newContext({
    viewport,
    acceptDownloads: true,
    serviceWorkers: 'block',
    ...device,
  });
  context.setDefaultTimeout(60_000);
  if (draws !== 'sharp map') await context.addInitScript(drawLess, draws === 'no map' ? null : COARSE);
  const page = await context.newPage();
  const faults: string[] = [];
  page.on('pageerror', (error) => faults.push(error.message));
  page.on('console', (message) => {
    // Where a test begins at a file that is no page, the browser looks for an icon that it has not been told of.
    const isIcon = message.location().url.endsWith('/favicon.ico');
    if (message.type() === 'error' && !isIcon) faults.push(message.text());
  });
  await page.goto(url);
  return { context, page, faults };
}

/** Runs in the page: so many points a pixel, edges not smoothed; or, for null, no card that the browser would draw with. */
function drawLess(points: number | null): void {
  if (points !== null) Object.defineProperty(window, 'devicePixelRatio', { get: () => points });
  const { prototype } = HTMLCanvasElement as unknown as {
    prototype: { getContext: (kind: string, wanted?: object) => unknown };
  };
  const { getContext } = prototype;
  prototype.getContext = function (kind, wanted) {
    if (!kind.startsWith('webgl')) return getContext.call(this, kind, wanted);
    return points === null ? null : getContext.call(this, kind, { ...wanted, antialias: false });
  };
}

/** A page with an empty trip. It begins at the archive, so that the map of the demonstration is not drawn first. */
export async function beginTrip(
  browser: Browser,
  url: string,
  viewport = WIDE,
  device: Device = {},
): Promise<Desk> {
  const desk = await sitDown(browser, `${url}#/archive`, viewport, device);
  await newTrip(desk.page);
  return desk;
}

/** Past the demonstration, to an empty trip. */
export async function newTrip(page: Page): Promise<void> {
  await page.getByRole('link', { name: 'Archive', exact: true }).click();
  await page.getByRole('button', { name: 'New trip' }).click();
  await page.getByRole('heading', { name: 'Start with the track' }).waitFor();
}

export async function openFile(page: Page, name: string): Promise<void> {
  await page
    .locator('input[type=file]')
    .first()
    .setInputFiles(new URL(`./in/${name}`, import.meta.url).pathname);
}

export async function pin(page: Page, km: string, preset: RegExp): Promise<void> {
  await page.getByRole('link', { name: /^Obstacles/ }).click();
  await page.getByLabel('Along the track').first().fill(km);
  await page.getByRole('button', { name: 'Pin here' }).click();
  await page.getByRole('button', { name: preset }).click();
  await page.getByLabel('Name of the obstacle').waitFor();
}

export async function addVehicle(page: Page, vehicleClass: string): Promise<void> {
  await page.getByRole('link', { name: /^Convoy/ }).click();
  await page.getByRole('heading', { name: /convoy/i }).waitFor();
  await page.getByLabel('Class of vehicle').selectOption(vehicleClass);
  await page.getByRole('button', { name: 'Add vehicle' }).click();
}

/** The matrix as text, one string a cell, row by row, once every cell is there. */
export async function matrix(page: Page): Promise<string[][]> {
  await page.getByRole('link', { name: 'Brief' }).click();
  await page.locator('td a').first().waitFor();
  await page.waitForFunction(
    () => !document.querySelector('td')?.closest('table')?.textContent.includes('working it out'),
  );
  return page.locator('tbody tr').evaluateAll((rows) =>
    rows.map((row) =>
      [...row.querySelectorAll('td .word')].map((cell) => {
        const word = cell.cloneNode(true) as Element;
        // How sure it is comes later.
        word.querySelector('.sure')?.remove();
        return word.textContent.trim();
      }),
    ),
  );
}

/** Puts the page into another light, as a person does. */
export async function putInto(page: Page, light: 'day' | 'night' | 'sun'): Promise<void> {
  const view = page.getByRole('group', { name: 'Units and light' });
  const box = view.getByRole('combobox', { name: /^Light/ });
  await view.getByRole('button', { name: 'View' }).click();
  await box.selectOption(light);
  await box.press('Escape');
  await box.waitFor({ state: 'hidden' });
}

/** The rules that look at colours, of those that axe-core follows unless told otherwise. */
const OF_COLOUR = ['color-contrast', 'link-in-text-block'];

/** What the accessibility rules of axe-core find, as sentences; or those only that look at colours. */
export async function findings(page: Page, rules: 'all' | 'colours' = 'all'): Promise<string[]> {
  if (await page.evaluate(() => !('axe' in window))) await page.evaluate(axe.source);
  const asked: RunOptions = rules === 'all' ? {} : { runOnly: { type: 'rule', values: OF_COLOUR } };
  return page.evaluate(async (options) => {
    const { violations } = await (window as unknown as { axe: typeof axe }).axe.run(options);
    return violations.flatMap(({ id, help, nodes }) => nodes.map((node) => `${id}: ${help}: ${node.html}`));
  }, asked);
}
