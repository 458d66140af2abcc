import type { Browser, Page } from 'playwright-core';
import { beforeAll, describe, expect, inject, test } from 'vitest';
import { PHONE, WIDE, beginTrip, findings, launch, matrix, newTrip, putInto, sitDown } from './desk.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});

const STATES: readonly { name: string; go: (page: Page) => Promise<unknown> }[] = [
  { name: 'Scout, the track', go: (page) => page.getByRole('link', { name: 'Track', exact: true }).click() },
  { name: 'Scout, the obstacles', go: (page) => page.getByRole('link', { name: /^Obstacles/ }).click() },
  {
    name: 'Scout, an obstacle with everything unfolded',
    go: async (page) => {
      await page.getByRole('link', { name: /^Obstacles/ }).click();
      await page.getByRole('link', { name: /Hobnail ruts/ }).click();
      await page.evaluate(() => document.querySelectorAll('details').forEach((one) => (one.open = true)));
    },
  },
  { name: 'Scout, the convoy', go: (page) => page.getByRole('link', { name: /^Convoy/ }).click() },
  {
    name: 'Scout, a vehicle with everything unfolded',
    go: async (page) => {
      await page.getByRole('link', { name: /^Convoy/ }).click();
      await page.getByRole('link', { name: /^Bracken/ }).click();
      await page.evaluate(() => document.querySelectorAll('details').forEach((one) => (one.open = true)));
    },
  },
  {
    name: 'Brief, with a cell opened',
    go: async (page) => {
      await matrix(page);
      await page.locator('td a').first().click();
      await page.getByRole('complementary', { name: 'Why' }).waitFor();
    },
  },
  { name: 'Archive', go: (page) => page.getByRole('link', { name: 'Archive', exact: true }).click() },
];

/** Elsewhere on a phone: what has no colours or words of its own that the others lack. */
const PHONE_STATES: typeof STATES = ['#/outcomes', '#/archive/tracks', '#/archive/published'].map((hash) => ({
  name: hash,
  go: async (page) => {
    await page.evaluate((to) => (location.hash = to), hash);
    await page.locator('h2').first().waitFor();
  },
}));

/**
 * What a gloved finger would miss: all that can be pressed, less than 44 px wide or high. A box to tick is as large as the
 * label around it. Links inside a sentence are as high as its lines (exempt in WCAG 2.2, SC 2.5.8).
 */
function tooSmall(page: Page): Promise<string[]> {
  return page.evaluate(() =>
    [
      ...document.querySelectorAll(
        'a[href], button, select, summary, textarea, input:not([type=file]), [role=slider]',
      ),
    ]
      .filter((one) => one.checkVisibility({ visibilityProperty: true }))
      .filter((one) => {
        const beside = [...(one.parentElement?.childNodes ?? [])].filter((node) => node !== one);
        const isInSentence =
          one.matches('a') &&
          getComputedStyle(one).display === 'inline' &&
          beside.some(({ textContent }) => /\p{L}/u.test(textContent ?? ''));
        if (isInSentence) return false;
        const hit = one.matches('[type=checkbox], [type=radio]') ? (one.closest('label') ?? one) : one;
        const { width, height } = hit.getBoundingClientRect();
        return width < 43.5 || height < 43.5;
      })
      .map((one) => one.outerHTML.slice(0, 120)),
  );
}

/**
 * Every light on a wide screen; on a phone, where the colours are the same, one. Lights differ in nothing but colours, so
 * that all but the first are held against the rules of colour alone.
 */
describe.each([
  ['wide', WIDE, ['day', 'sun', 'night']],
  ['phone', PHONE, ['sun']],
] as const)('%s', (_name, viewport, lights) => {
  test('axe-core finds nothing wrong', async () => {
    const { context, page } = await sitDown(browser, inject('url'), viewport, { draws: 'coarse map' });
    const found: string[] = [];
    const look = async (light: (typeof lights)[number], states: typeof STATES) => {
      await putInto(page, light);
      await page.getByRole('link', { name: 'Scout', exact: true }).click();
      for (const { name, go } of states) {
        await go(page);
        const rules = light === lights[0] ? 'all' : 'colours';
        found.push(...(await findings(page, rules)).map((finding) => `${light}, ${name}: ${finding}`));
      }
    };
    for (const light of lights) await look(light, STATES);
    await newTrip(page);
    for (const light of lights)
      await look(light, [
        {
          name: 'an empty trip',
          go: () => page.getByRole('heading', { name: 'Start with the track' }).waitFor(),
        },
      ]);
    expect(found).toEqual([]);
    await context.close();
  });

  test('nothing is wider than the screen, the map keeps two fifths of it, and all can be hit with a glove', async () => {
    const { context, page } = await sitDown(browser, inject('url'), viewport, { draws: 'coarse map' });
    const emptied = { name: 'an empty trip', go: () => newTrip(page) };
    const elsewhere = viewport === PHONE ? PHONE_STATES : [];
    for (const { name, go } of [...STATES, ...elsewhere, emptied]) {
      await go(page);
      const wide = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
      expect({ name, wide }).toEqual({ name, wide: 0 });
      const small = await tooSmall(page);
      expect({ name, small }).toEqual({ name, small: [] });
      const map = page.getByRole('region', { name: 'Map' });
      if ((await map.count()) === 0) continue;
      const box = await map.boundingBox();
      expect({ name, tall: (box?.height ?? 0) >= 0.4 * viewport.height }).toEqual({ name, tall: true });
    }
    await context.close();
  });
});

test('a vehicle is added, named, reordered and confirmed by keyboard alone', async () => {
  const { context, page } = await beginTrip(browser, inject('url'));
  const press = async (name: RegExp, key: string) => {
    for (let i = 0; i < 160; i++) {
      await page.keyboard.press('Tab');
      const focused = await page.evaluate(() => {
        const one = document.activeElement as HTMLElement | null;
        const labels =
          one instanceof HTMLInputElement || one instanceof HTMLSelectElement ? one.labels : null;
        return (one?.getAttribute('aria-label') ?? labels?.[0]?.textContent ?? one?.textContent ?? '').trim();
      });
      if (!name.test(focused)) continue;
      await page.keyboard.press(key);
      return;
    }
    throw new Error(`The Tab key never came to ${name}.`);
  };
  await press(/^Convoy/, 'Enter');
  await page.getByRole('heading', { name: 'Nobody in the convoy yet' }).waitFor();
  await press(/^Class of vehicle/, 'm');
  await press(/^Add vehicle/, 'Enter');
  await page.getByText('Mid-size wagon', { exact: true }).first().waitFor();
  await page.keyboard.press('Shift+Tab');
  await page.keyboard.press('c');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  await page.getByLabel('Driver of Compact 4x4').waitFor();
  await page.locator('body').press('Home');
  await press(/^Move Compact 4x4 forward/, 'Enter');
  const names = await page.locator('li .name').allTextContents();
  expect(names.map((name) => name.trim())).toEqual(['Compact 4x4', 'Mid-size wagon']);
  await press(/^Compact 4x4/, 'Enter');
  await page.getByText('Body and clearances').first().waitFor();
  await press(/^All of these hold/, 'Enter');
  await page.getByText('9 estimates', { exact: true }).waitFor({ state: 'detached' });
  await context.close();
});
