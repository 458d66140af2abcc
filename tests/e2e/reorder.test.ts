import type { Browser, Page } from 'playwright-core';
import { beforeAll, expect, inject, test } from 'vitest';
import { addVehicle, beginTrip, launch, matrix, sitDown, PHONE, WIDE } from './desk.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});

/** Four vehicles of one class are told apart by their number. */
async function convoy(page: Page): Promise<void> {
  for (let i = 0; i < 4; i++) await addVehicle(page, 'compact 4x4');
}

const order = (page: Page) => page.locator('ol .name').allTextContents();
const FOUR = ['Compact 4x4', 'Compact 4x4 2', 'Compact 4x4 3', 'Compact 4x4 4'];

async function middleOf(page: Page, place: number): Promise<readonly [x: number, y: number]> {
  const box = await page.locator('.grip').nth(place - 1).boundingBox(); // prettier-ignore
  if (box === null) throw new Error('The grip is not on screen.');
  expect(Math.min(box.width, box.height)).toBeGreaterThanOrEqual(43.5);
  return [box.x + box.width / 2, box.y + box.height / 2];
}

test('a vehicle is dragged to another place by mouse; a bar shows where, and undo takes it back', async () => {
  const { context, page, faults } = await beginTrip(browser, inject('url'), WIDE);
  await convoy(page);
  const [x, y] = await middleOf(page, 1);
  const [, below] = await middleOf(page, 3);
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x, below + 40, { steps: 5 });
  expect(await page.locator('li.before').getAttribute('data-vehicle')).toBe(
    await page.locator('li').nth(3).getAttribute('data-vehicle'),
  );
  expect(await order(page)).toEqual(FOUR);
  await page.mouse.up();
  expect(await order(page)).toEqual([FOUR[1], FOUR[2], FOUR[0], FOUR[3]]);
  await page.getByText('Compact 4x4 is now 3 of 4 in the convoy.').waitFor({ state: 'attached' });
  await page.keyboard.press('Control+z');
  expect(await order(page)).toEqual(FOUR);

  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x, below, { steps: 5 });
  await page.keyboard.press('Escape');
  await page.mouse.up();
  expect(await order(page)).toEqual(FOUR);
  expect(faults).toEqual([]);
  await context.close();
});

test('a thumb on the grip drags a vehicle and does not scroll; elsewhere in the list it scrolls', async () => {
  const { context, page, faults } = await beginTrip(browser, inject('url'), PHONE);
  await convoy(page);
  const session = await context.newCDPSession(page);
  await session.send('Emulation.setTouchEmulationEnabled', { enabled: true });
  await page.locator('.grip').nth(1).scrollIntoViewIfNeeded();
  const drag = async (x: number, from: number, to: number) => {
    const touch = (type: 'touchStart' | 'touchMove', y: number) =>
      session.send('Input.dispatchTouchEvent', { type, touchPoints: [{ x, y }] });
    await touch('touchStart', from);
    for (let i = 1; i <= 8; i++) await touch('touchMove', from + ((to - from) * i) / 8);
    await session.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
  };
  const [x, second] = await middleOf(page, 2);
  const [, first] = await middleOf(page, 1);
  await drag(x, second, first - 20);
  expect(await order(page)).toEqual([FOUR[1], FOUR[0], FOUR[2], FOUR[3]]);

  const scrolled = () =>
    page.evaluate(() =>
      [...document.querySelectorAll('*')].reduce((sum, one) => sum + Math.round(one.scrollTop), 0),
    );
  const stood = await scrolled();
  await drag(x + 150, second, second - 120);
  await expect.poll(scrolled).not.toBe(stood);
  expect(await order(page)).toEqual([FOUR[1], FOUR[0], FOUR[2], FOUR[3]]);
  expect(faults).toEqual([]);
  await context.close();
});

test('by keyboard the buttons do the same, keep the focus, and the new place is said', async () => {
  const { context, page } = await beginTrip(browser, inject('url'));
  await convoy(page);
  await page.getByRole('button', { name: 'Move Compact 4x4 4 forward' }).focus();
  await page.keyboard.press('Enter');
  await page.keyboard.press('Enter');
  expect(await order(page)).toEqual([FOUR[0], FOUR[3], FOUR[1], FOUR[2]]);
  await page.getByText('Compact 4x4 4 is now 2 of 4 in the convoy.').waitFor({ state: 'attached' });
  await context.close();
});

test('in the matrix a vehicle is dragged across to another place, or moved by arrow keys, its verdicts with it', async () => {
  const { context, page, faults } = await sitDown(browser, `${inject('url')}#/brief`);
  // Columns get wider while verdicts come in.
  await matrix(page);
  const heads = page.locator('thead th[data-vehicle]');
  const ids = () => heads.evaluateAll((all) => all.map((head) => (head as HTMLElement).dataset.vehicle));
  const before = await ids();
  const grips = heads.getByRole('button');
  const [from, to] = [await grips.nth(0).boundingBox(), await grips.nth(2).boundingBox()];
  if (from === null || to === null) throw new Error('The grips are not on screen.');
  await page.mouse.move(from.x + from.width / 2, from.y + from.height / 2);
  await page.mouse.down();
  await page.mouse.move(to.x + to.width / 2, to.y + to.height / 2, { steps: 5 });
  await page.mouse.up();
  const [first, second, third, ...rest] = before;
  expect(await ids()).toEqual([second, third, first, ...rest]);
  await grips.nth(2).focus();
  await page.keyboard.press('ArrowLeft');
  await page.keyboard.press('ArrowLeft');
  expect(await ids()).toEqual(before);
  expect(await grips.nth(0).evaluate((grip) => grip === document.activeElement)).toBe(true);
  await page.getByText(/ is now 1 of \d in the convoy\./).waitFor({ state: 'attached' });
  expect(faults).toEqual([]);
  await context.close();
});
