import type { Browser, Page } from 'playwright-core';
import { beforeAll, expect, inject, test } from 'vitest';
import { findings, launch, PHONE, sitDown, WIDE } from './desk.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});

const drawing = (page: Page) => page.locator('.maplibregl-canvas');
const labels = (page: Page) => page.getByRole('list', { name: 'Lines through the obstacles in sight' });
const bar = (page: Page) => page.getByRole('region', { name: /^Draw the path of/ });

/** Opens an obstacle and looks closer at it, so many times; the map moves at once for those who want no motion. */
async function show(page: Page, obstacle: RegExp, closer = 6): Promise<void> {
  await page.emulateMedia({ reducedMotion: 'reduce' });
  await drawing(page).waitFor();
  await page.getByRole('link', { name: /^Obstacles/ }).click();
  await page.getByRole('link', { name: obstacle }).first().click();
  await page.getByLabel('Name of the obstacle').waitFor();
  await lookCloser(page, closer);
}

async function lookCloser(page: Page, times: number): Promise<void> {
  const button = page.getByRole('button', { name: 'Closer', exact: true });
  for (let i = 0; i < times; i++) await button.click();
}

/** Points at a place of the map, by shares of its width and height. */
async function point(page: Page, x: number, y: number): Promise<void> {
  const box = await drawing(page).boundingBox();
  await page.mouse.click(box!.x + box!.width * x, box!.y + box!.height * y);
}

const path = async (page: Page) =>
  (await page.getByText(/^(On the map: \d+ points|Not on the map yet|Being drawn)/).textContent())?.trim();

test('offset lines are labelled with side and the track widths they are open to, clear of pins, and to scale close in', async () => {
  const { context, page, faults } = await sitDown(browser, inject('url'), WIDE, { draws: 'coarse map' });
  await show(page, /Hobnail ruts/);
  const said = () => labels(page).getByRole('listitem').allTextContents();
  await expect
    .poll(said, { timeout: 30_000 })
    .toEqual([
      expect.stringMatching(/^left 0\.50 m\s*·\s*open to none of this convoy/),
      expect.stringMatching(/^right 0\.70 m\s*·\s*track widths 1\.\d\d–1\.\d\d m/),
    ]);
  expect(await page.getByText(/^Offset lines drawn [\d.]+ × as far off/).count()).toBe(1);
  const tag = (await page
    .getByRole('button', { name: /^Obstacle 2 / })
    .locator('.tag')
    .boundingBox())!;
  for (const label of await labels(page).getByRole('listitem').all()) {
    const box = (await label.boundingBox())!;
    const apart =
      box.x + box.width <= tag.x ||
      tag.x + tag.width <= box.x ||
      box.y + box.height <= tag.y ||
      tag.y + tag.height <= box.y;
    expect(apart).toBe(true);
  }
  await page.getByRole('button', { name: 'View' }).click();
  await page.getByRole('combobox', { name: /^Units/ }).selectOption('imperial');
  await expect
    .poll(said)
    .toContainEqual(expect.stringMatching(/^right 2\.3 ft\s*·\s*track widths 4\.\d–5\.\d ft/));
  await page.getByRole('combobox', { name: /^Units/ }).selectOption('metric');
  await lookCloser(page, 3);
  await expect.poll(() => page.getByText(/^Offset lines drawn/).count()).toBe(0);
  expect(await page.getByText('offset line, to scale').count()).toBe(1);
  expect(faults).toEqual([]);
  await context.close();
});

test('a bypass is drawn point by point, corrected, left, drawn again, and put back', async () => {
  const { context, page, faults } = await sitDown(browser, inject('url'), WIDE, { draws: 'coarse map' });
  await show(page, /Anvil step/);
  await page.getByText(/^Lines \(1\)/).click();
  await page.getByRole('button', { name: 'Add a bypass' }).click();
  expect(await path(page)).toMatch(/^Not on the map yet/);
  await page.getByRole('button', { name: /^Draw it on the map/ }).click();
  await bar(page).getByText('No point yet.').waitFor();
  expect(await bar(page).getByRole('button', { name: 'Done' }).isDisabled()).toBe(true);
  for (const [x, y] of [
    [0.5, 0.6],
    [0.6, 0.5],
    [0.5, 0.3],
    [0.9, 0.3],
  ])
    await point(page, x, y);
  await bar(page)
    .getByText(/4 points, \d+ m/)
    .waitFor();
  await bar(page).getByRole('button', { name: 'Undo last point' }).click();
  await page.reload();
  await bar(page)
    .getByText(/3 points, \d+ m/)
    .waitFor();
  await bar(page).getByRole('button', { name: 'Done' }).click();
  await page.getByText(/^Drew Bypass/).waitFor();
  expect(await path(page)).toMatch(/^On the map: 3 points, \d+ m/);
  await lookCloser(page, 6);
  await labels(page).getByText('bypass: Bypass').waitFor();

  await page.getByRole('button', { name: /^Draw it on the map anew/ }).click();
  await point(page, 0.3, 0.3);
  await bar(page).getByText('1 point, 0 m').waitFor();
  await bar(page).getByRole('button', { name: 'Cancel' }).click();
  expect(await path(page)).toMatch(/^On the map: 3 points/);
  await page.getByRole('button', { name: 'Undo', exact: false }).first().click();
  await expect.poll(() => path(page)).toMatch(/^Not on the map yet/);
  expect(faults).toEqual([]);
  await context.close();
});

test('a bypass is drawn by keyboard under the cross', async () => {
  const { context, page } = await sitDown(browser, inject('url'), WIDE, { draws: 'coarse map' });
  await show(page, /Washed ditch/, 5);
  await page.getByRole('button', { name: /^Draw it on the map anew/ }).focus();
  await page.keyboard.press('Enter');
  await bar(page).getByText('No point yet.').waitFor();
  expect(await page.evaluate(() => document.activeElement?.matches('.maplibregl-canvas'))).toBe(true);
  for (const key of ['ArrowRight', 'ArrowUp', 'ArrowUp']) {
    await page.keyboard.press('Enter');
    await page.keyboard.press(key);
  }
  await bar(page)
    .getByText(/3 points, /)
    .waitFor();
  await page.keyboard.press('Backspace');
  await bar(page)
    .getByText(/2 points, \d+ m/)
    .waitFor();
  await bar(page).getByRole('button', { name: 'Done' }).focus();
  await page.keyboard.press('Enter');
  await expect.poll(() => path(page)).toMatch(/^On the map: 2 points/);
  expect(
    await page.evaluate(() => document.activeElement?.textContent.includes('Draw it on the map anew')),
  ).toBe(true);
  await context.close();
});

test('a bypass is taken from one track of a GPX file, and what is wrong with a file is said', async () => {
  const { context, page } = await sitDown(browser, inject('url'), WIDE, { draws: 'coarse map' });
  await show(page, /Washed ditch/, 0);
  const name = await page.getByLabel('Trip name').inputValue();
  const picker = page.getByLabel(/^GPX file of/);
  await picker.setInputFiles(new URL('./in/two-tracks.gpx', import.meta.url).pathname);
  const dialog = page.getByRole('dialog', { name: 'Which track?' });
  await dialog.getByText(/The path of round the head of the ditch is one of them/).waitFor();
  await dialog.getByRole('button', { name: /^Down the creek/ }).click();
  await expect.poll(() => path(page)).not.toMatch(/: 4 points/);
  expect(await path(page)).toMatch(/^On the map: \d+ points/);
  expect(await page.getByRole('alert').textContent()).toMatch(/It comes no nearer to Washed ditch than/);
  expect(await page.getByLabel('Trip name').inputValue()).toBe(name);
  await page.getByRole('button', { name: 'Put it back' }).click();
  await expect.poll(() => path(page)).toMatch(/: 4 points/);

  await picker.setInputFiles({
    name: 'list.gpx',
    mimeType: 'application/gpx+xml',
    buffer: Buffer.from('this is a shopping list'),
  });
  await page.getByRole('alert').getByText('list.gpx').waitFor();
  expect(await path(page)).toMatch(/: 4 points/);
  await context.close();
});

test('the map for one vehicle: its line at each obstacle, its verdict in word and mark, and back to all', async () => {
  const { context, page, faults } = await sitDown(browser, inject('url'), PHONE, { draws: 'coarse map' });
  await drawing(page).waitFor();
  const pin = (n: number) => page.getByRole('button', { name: new RegExp(`^Obstacle ${n} `) });
  expect(await pin(2).getAttribute('aria-label')).toBe('Obstacle 2 Hobnail ruts');
  const chooser = page.getByLabel('Vehicles on the map');
  await chooser.focus();
  await page.keyboard.press('l');
  await expect.poll(() => chooser.inputValue()).not.toBe('');
  await expect
    .poll(() => pin(2).getAttribute('aria-label'), { timeout: 30_000 })
    .toMatch(/^Obstacle 2 .*Hobnail ruts, Larkspur: (goes|needs|does not go|not known)/);
  expect(await pin(2).locator('.fare .verdict-fill').count()).toBe(1);
  expect(await pin(2).locator('.fare svg').count()).toBe(1);
  const listed = page.getByRole('link', { name: /Hobnail ruts/ }).first();
  const word = (await pin(2).getAttribute('aria-label'))!.replace(/^.*: | on .*$/g, '');
  expect(await listed.textContent()).toContain(`Larkspur: ${word}`);
  expect(await findings(page)).toEqual([]);
  await listed.click();
  await expect.poll(() => pin(2).locator('.fare').textContent()).toContain(word);
  await chooser.selectOption('All vehicles');
  await expect.poll(() => pin(2).getAttribute('aria-label')).toBe('Obstacle 2 Hobnail ruts');
  expect(faults).toEqual([]);
  await context.close();
});

test('a path that was read goes to the bypass that it was chosen for, and one that is gone is told of', async () => {
  const { context, page, faults } = await sitDown(browser, inject('url'));
  const ditch = () =>
    page
      .getByRole('link', { name: /Washed ditch/ })
      .first()
      .click();
  const dialog = page.getByRole('dialog', { name: 'Which track?' });
  const choose = async () => {
    await page
      .getByLabel(/^GPX file of/)
      .setInputFiles(new URL('./in/two-tracks.gpx', import.meta.url).pathname);
    await dialog.waitFor();
  };
  const take = () => dialog.getByRole('button', { name: /^Down the creek/ }).click();
  await page.getByRole('link', { name: /^Obstacles/ }).click();
  await ditch();
  await choose();
  await page.evaluate(() => (location.hash = '#/scout/obstacles'));
  await page.getByLabel('Name of the obstacle').waitFor({ state: 'detached' });
  await take();
  await page.getByText(/^Took the path of round the head of the ditch/).waitFor();
  await ditch();
  await expect.poll(() => path(page)).not.toMatch(/: 4 points/);

  await choose();
  await page
    .locator('button')
    .filter({ hasText: /^\s*Remove\s*round the head/ })
    .dispatchEvent('click');
  await take();
  await page.getByRole('alert').getByText('It was removed while its path was read.').waitFor();
  expect(faults).toEqual([]);
  await context.close();
});

test('where no map can be drawn none is offered to draw on, and what was half drawn can be left and put back', async () => {
  const { context, page, faults } = await sitDown(browser, inject('url'));
  const begin = async () => {
    await page.getByRole('link', { name: /^Obstacles/ }).click();
    await page
      .getByRole('link', { name: /Washed ditch/ })
      .first()
      .click();
    await page.getByText(/On this device no map can be drawn on/).waitFor();
  };
  await begin();
  expect(await page.getByRole('button', { name: /^Draw it on the map/ }).count()).toBe(0);
  await page.evaluate(() => {
    const tripId = localStorage.getItem('rutline.open');
    const sketch = { tripId, obstacleId: 'obstacle-8', lineId: 'bypass', points: [[7, 45]] };
    localStorage.setItem('rutline.drawing', JSON.stringify([sketch]));
  });
  await page.reload();
  const leave = page.getByRole('button', { name: /^Leave the drawing/ });
  await leave.click();
  await page.getByText(/^Left the half-drawn path of/).waitFor();
  expect(await leave.count()).toBe(0);
  await page.getByRole('button', { name: 'Put it back' }).click();
  await leave.waitFor();
  expect(faults.filter((fault) => !/WebGL/i.test(fault))).toEqual([]);
  await context.close();
});
