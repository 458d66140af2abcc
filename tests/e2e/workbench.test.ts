import { readFileSync } from 'node:fs';
import type { Browser, Locator, Page } from 'playwright-core';
import { beforeAll, describe, expect, inject, test } from 'vitest';
import { addressOf } from '../../src/ui/place.ts';
import type { Desk } from './desk.ts';
import {
  addVehicle,
  beginTrip,
  findings,
  launch,
  matrix,
  openFile,
  pin,
  putInto,
  sitDown,
  PHONE,
  WIDE,
} from './desk.ts';

interface Obstacles {
  readonly obstacles: readonly { readonly id: string; readonly name: string }[];
}

const read = (path: string) => JSON.parse(readFileSync(new URL(path, import.meta.url), 'utf8')) as Obstacles;
const DEMO = read('../../public/demo/outing.json');
const RUTS = read('./in/ruts.json');

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});

/** Answers come from workers, which a busy machine keeps waiting. */
const PATIENT = { timeout: 60_000 };

/** The trip of `rutsPinned`, from a file. */
async function ruts(): Promise<Desk> {
  const desk = await beginTrip(browser, inject('url'));
  await openFile(desk.page, 'ruts.json');
  await expect.poll(() => desk.page.getByLabel('Trip name').inputValue(), PATIENT).toBe('Old quarry & ridge');
  const [obstacle] = RUTS.obstacles;
  await atBench(desk.page, obstacle.id);
  return desk;
}

/** A soft-roader at a pair of shallow ruts in nearly level rock: it goes, until the ruts are deep. */
async function rutsPinned(page: Page): Promise<void> {
  await openFile(page, 'quarry.gpx');
  await page.getByRole('button', { name: 'Dismiss' }).click();
  await addVehicle(page, 'all-wheel-drive soft-roader');
  await pin(page, '0.8', /^Rutted climb/);
  await page.getByLabel('Slope', { exact: true }).first().fill('2');
  await page.getByLabel('Left rut depth', { exact: true }).fill('15');
  await page.getByLabel('Right rut depth', { exact: true }).fill('15');
  await page.getByText(/^Surface/).click();
  await page.getByLabel('Ground', { exact: true }).selectOption('rock');
  await page.getByRole('link', { name: 'Open the workbench' }).click();
  await page.getByRole('heading', { name: 'Workbench' }).waitFor();
}

const word = (page: Page) => page.locator('.bench > .verdict strong').textContent();

/** Puts the vehicle into the middle of the obstacle, and answers the handle on the depth of a rut under its rear axle. */
async function rutDepth(page: Page) {
  await page.getByLabel(/^Station of mid-wheelbase/).fill('0');
  const handle = page.getByRole('slider', { name: /^Depth of rut 1, left/ }).first();
  await handle.waitFor();
  return handle;
}

/** By its address, past the map, which takes its time to be drawn. */
async function atBench(page: Page, obstacleId: string): Promise<void> {
  const address = addressOf({ desk: 'workbench', obstacleId, vehicleId: null, lineId: null });
  await page.goto(`${inject('url')}${address}`);
  await page.getByRole('heading', { name: 'Wheel loads' }).waitFor(PATIENT);
}

/** An obstacle of the demonstration on the workbench. */
async function demonstrated(page: Page, obstacle: string): Promise<void> {
  const found = DEMO.obstacles.find(({ name }) => name === obstacle);
  await atBench(page, found?.id ?? expect.fail(obstacle));
}

async function gripOf(handle: Locator): Promise<readonly [x: number, y: number]> {
  await handle.evaluate((one) => one.scrollIntoView({ block: 'center' }));
  // Null while a drawing is being written anew, as it is after a size was let go.
  const boxNow = () => handle.locator('.grip').boundingBox();
  await expect.poll(boxNow, { message: 'the handle is on the screen' }).not.toBeNull();
  const box = (await boxNow())!;
  return [box.x + box.width / 2, box.y + box.height / 2];
}

/** Drags by so many pixels; what the handle says before, while held and once let go. */
async function dragged(page: Page, handle: Locator, dx: number, dy: number): Promise<string[]> {
  const said = async () => (await handle.getAttribute('aria-valuetext')) ?? '';
  const before = await said();
  const [x, y] = await gripOf(handle);
  await page.mouse.move(x, y);
  await page.mouse.down();
  for (let i = 1; i <= 6; i++) await page.mouse.move(x + (dx * i) / 6, y + (dy * i) / 6);
  const held = await said();
  await page.mouse.up();
  return [before, held, await said()];
}

/** Every light on a wide screen; on a phone, where the colours are the same, one. Lights differ in nothing but colours. */
describe.each([
  ['wide', WIDE, ['day', 'sun', 'night']],
  ['phone', PHONE, ['sun']],
] as const)('the workbench, %s', (_name, viewport, lights) => {
  test('opens from Scout; a rut dragged deeper changes the verdict, in one step that undo takes back', async () => {
    const { context, page, faults } = await beginTrip(browser, inject('url'), viewport);
    await rutsPinned(page);
    const handle = await rutDepth(page);
    expect(await handle.getAttribute('aria-valuetext')).toBe('15 cm');
    const before = await word(page);

    await handle.evaluate((one) => one.scrollIntoView({ block: 'center' }));
    const box = await handle.locator('.grip').boundingBox();
    if (box === null) throw new Error('The handle is not on screen.');
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    await page.mouse.move(x, y);
    await page.mouse.down();
    for (let i = 1; i <= 10; i++) await page.mouse.move(x, y + 3 * i);
    await expect.poll(() => word(page), PATIENT).not.toBe(before);
    const held = await handle.getAttribute('aria-valuetext');
    await page.mouse.up();
    expect(await handle.getAttribute('aria-valuetext')).toBe(held);
    expect(Number.parseInt(held ?? '')).toBeGreaterThan(30);

    await page.keyboard.press('Control+z');
    await expect.poll(() => word(page), PATIENT).toBe(before);
    expect(await handle.getAttribute('aria-valuetext')).toBe('15 cm');
    expect(faults).toEqual([]);
    await context.close();
  });

  test('axe-core finds nothing wrong, and nothing is wider than the screen', async () => {
    const { context, page } = await sitDown(browser, 'about:blank', viewport);
    await demonstrated(page, 'Hobnail ruts');
    await page.getByText(/^(Goes:|No band)/).waitFor();
    const found: string[] = [];
    for (const light of lights) {
      await putInto(page, light);
      const rules = light === lights[0] ? 'all' : 'colours';
      found.push(...(await findings(page, rules)).map((finding) => `${light}: ${finding}`));
      const wide = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
      expect({ light, wide }).toEqual({ light, wide: 0 });
    }
    const small = await page.evaluate(() =>
      [
        ...document.querySelectorAll<Element>(
          '.bench :is(button, select, summary, .button, .hold, .rungs label)',
        ),
      ]
        .filter((one) => one.checkVisibility({ visibilityProperty: true }))
        .filter((one) => one.getBoundingClientRect().height < 43.5)
        .map((one) => one.outerHTML.slice(0, 120)),
    );
    expect(small).toEqual([]);
    expect(found).toEqual([]);
    await context.close();
  });
});

test('arrow keys move a size as it is drawn, presses in a row are one step', async () => {
  const { context, page } = await ruts();
  const handle = await rutDepth(page);
  const before = await word(page);
  await handle.focus();
  for (let i = 0; i < 6; i++) await page.keyboard.press('PageDown');
  expect(await handle.getAttribute('aria-valuetext')).toBe('45 cm');
  await page.keyboard.press('ArrowUp');
  expect(await handle.getAttribute('aria-valuetext')).toBe('44 cm');
  await expect.poll(() => word(page), PATIENT).not.toBe(before);
  await page.keyboard.press('Control+z');
  expect(await handle.getAttribute('aria-valuetext')).toBe('15 cm');
  await expect.poll(() => word(page), PATIENT).toBe(before);
  await context.close();
});

test('opens from a cell of the matrix, and back goes back to it', async () => {
  const { context, page, faults } = await sitDown(browser, `${inject('url')}#/brief`);
  await matrix(page);
  await page.locator('td a').first().click();
  const why = page.getByRole('complementary', { name: 'Why' });
  const title = await why.getByRole('heading', { level: 2 }).textContent();
  await why.getByRole('link', { name: 'Open the workbench' }).first().click();
  await page.getByRole('heading', { name: 'Workbench' }).waitFor();
  await page.getByRole('heading', { name: 'Wheel loads' }).waitFor();
  const vehicle = await page.getByLabel('Vehicle', { exact: true }).locator('option:checked').textContent();
  expect(title).toContain(vehicle?.trim());
  await page.goBack();
  await why.waitFor();
  expect(faults).toEqual([]);
  await context.close();
});

test('driving along the line moves the vehicle; where motion is not wanted it steps', async () => {
  const { context, page } = await ruts();
  await rutDepth(page);
  const box = page.getByLabel(/^Station of mid-wheelbase/);
  for (const reducedMotion of ['no-preference', 'reduce'] as const) {
    await page.emulateMedia({ reducedMotion });
    await box.fill('0');
    await page.getByRole('button', { name: 'Drive along the line' }).click();
    await expect.poll(async () => Number(await box.inputValue()), PATIENT).toBeGreaterThan(0.6);
    await page.getByRole('button', { name: 'Drive along the line' }).click();
    const stopped = await box.inputValue();
    await page.waitForTimeout(700);
    expect(await box.inputValue()).toBe(stopped);
  }
  await context.close();
});

test('another offset is tried on the main line, and kept as a line of its own', async () => {
  const { context, page } = await ruts();
  await rutDepth(page);
  await page.getByLabel('Tried, left of main').fill('0.3');
  await page.getByText('0.30 m left', { exact: true }).waitFor();
  await page.getByRole('button', { name: 'Keep as an offset line' }).click();
  await page.getByLabel('Offset, left of main').waitFor();
  expect(await page.getByLabel('Offset, left of main').inputValue()).toBe('0.3');
  expect(await page.getByLabel('Line', { exact: true }).locator('option:checked').textContent()).toContain(
    'Offset line',
  );
  await context.close();
});

/** On the demonstration: the obstacle, the drawing, the handle, and by how many pixels it is dragged. */
const SIZES = [
  ['Washed ditch', /^The obstacle from above/, 'Width of ditch 1', 0, -15],
  ['Second ford', /^Cut across under the rear axle/, 'Depth of water 1', 0, -8],
] as const;

test('sizes of a ditch and of water follow the mouse, in one step that undo takes back', async () => {
  const { context, page, faults } = await sitDown(browser, 'about:blank');
  for (const [obstacle, view, name, dx, dy] of SIZES) {
    await demonstrated(page, obstacle);
    const figure = page.getByRole('figure').filter({ has: page.getByRole('img', { name: view }) });
    const handle = figure.getByRole('slider', { name });
    const [before, held, after] = await dragged(page, handle, dx, dy);
    expect.soft(held, name).not.toBe(before);
    expect.soft(after, name).toBe(held);
    await page.keyboard.press('Control+z');
    await expect.poll(() => handle.getAttribute('aria-valuetext')).toBe(before);
  }
  expect(faults).toEqual([]);
  await context.close();
});

test('a dragged size counts as judged by eye; one that is put back keeps how it was got', async () => {
  const { context, page } = await sitDown(browser, 'about:blank');
  await demonstrated(page, 'Hobnail ruts');
  const handle = page.getByRole('slider', { name: /^Depth of rut 1, left/ }).first();
  const [x, y] = await gripOf(handle);
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x, y + 20);
  await page.mouse.move(x, y);
  await page.mouse.up();
  const undoes = page.getByRole('button', { name: /^Undo/ });
  expect(await undoes.isDisabled()).toBe(true);
  await dragged(page, handle, 0, 20);
  expect(await undoes.isEnabled()).toBe(true);
  await page.getByRole('link', { name: /Hobnail ruts/ }).click();
  await page
    .getByText(/^Shapes/)
    .first()
    .click();
  const how = page.getByLabel('How Depth was got').first();
  expect(await how.inputValue()).toBe('by eye');
  await context.close();
});

test('a thumb that lands beside a handle takes the nearest one and does not scroll the page', async () => {
  const { context, page } = await sitDown(browser, 'about:blank', PHONE);
  await demonstrated(page, 'Hobnail ruts');
  const depth = page.getByRole('slider', { name: /^Depth of rut 1, left/ }).first();
  const before = await depth.getAttribute('aria-valuetext');
  const [x, y] = await gripOf(depth);
  const scrolled = () =>
    page.evaluate(() =>
      [...document.querySelectorAll('*')]
        .map((one) => one.scrollTop)
        .filter(Boolean)
        .join(),
    );
  const stood = await scrolled();
  const session = await context.newCDPSession(page);
  await session.send('Emulation.setTouchEmulationEnabled', { enabled: true });
  const touch = (type: 'touchStart' | 'touchMove', down: number) =>
    session.send('Input.dispatchTouchEvent', { type, touchPoints: [{ x: x - 8, y: y + 12 + down }] });
  await touch('touchStart', 0);
  for (let i = 1; i <= 8; i++) await touch('touchMove', 3 * i);
  expect(await depth.getAttribute('aria-valuetext')).not.toBe(before);
  await session.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
  expect(await scrolled()).toBe(stood);
  expect(await page.getByRole('button', { name: /^Undo/ }).isEnabled()).toBe(true);
  await context.close();
});

test('a tap on the sweep looks at a station of an offset line; the line follows a hand that drags it across', async () => {
  const { context, page } = await sitDown(browser, 'about:blank');
  const ruts = DEMO.obstacles.find(({ name }) => name === 'Hobnail ruts') ?? expect.fail();
  const place = { desk: 'workbench', obstacleId: ruts.id, vehicleId: null, lineId: 'left' } as const;
  await page.goto(`${inject('url')}${addressOf(place)}`);
  await page.getByRole('heading', { name: 'Wheel loads' }).waitFor(PATIENT);
  const sweep = page.getByRole('img', { name: /^Nearest limit at each offset/ });
  const station = page.getByLabel(/^Station of mid-wheelbase/);
  const offset = page.getByLabel('Offset, left of main');
  const undoes = page.getByRole('button', { name: /^Undo/ });
  const before = await station.inputValue();
  const { x, y, width, height } = (await sweep.boundingBox()) ?? expect.fail();
  await page.mouse.click(x + width * 0.7, y + height * 0.8);
  await expect.poll(() => station.inputValue()).not.toBe(before);
  expect(await offset.inputValue()).toBe('0.5');
  expect(await undoes.isDisabled()).toBe(true);

  await page.mouse.move(x + width * 0.4, y + height * 0.5);
  await page.mouse.down();
  for (let i = 1; i <= 6; i++) await page.mouse.move(x + width * 0.4 + 10 * i, y + height * 0.5);
  await page.mouse.up();
  await expect.poll(() => offset.inputValue()).not.toBe('0.5');
  expect(await undoes.isEnabled()).toBe(true);
  await context.close();
});
