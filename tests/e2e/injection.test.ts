import { readFileSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { beforeAll, expect, inject, test } from 'vitest';
import { ELSEWHERE, INJECTIONS, MARK } from '../injections.ts';
import { launch, newTrip, sitDown, WIDE } from './desk.ts';

interface Filed {
  name: string;
  note: string;
  track: { name: string; description: string };
  waypoints: Record<string, unknown>[];
  obstacles: {
    id: string;
    name: string;
    note: string;
    preset: string;
    lines: { name: string }[];
    photos: { caption: string }[];
  }[];
  vehicles: { id: string; name: string; driver: string }[];
}

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});

/** All of the texts in a few, each of them first in one: what breaks out hides what comes after it. */
const TEXTS = [0, 1, 2, 3].map((n) =>
  Object.values(INJECTIONS)
    .filter((_, i) => i % 4 === n)
    .join(' '),
);

/** A trip file with them in every place where a person can write. */
function tripFile(): string {
  const trip = JSON.parse(
    readFileSync(new URL('../archive/in/version-2.json', import.meta.url), 'utf8'),
  ) as Filed;
  const [all, [obstacle], [vehicle]] = [TEXTS.join(' '), trip.obstacles, trip.vehicles];
  return JSON.stringify({
    ...trip,
    name: all,
    note: all,
    track: { ...trip.track, name: all, description: all },
    waypoints: [{ name: all, description: all, lng: 0.0005, lat: 45.0005, elevationM: null }],
    obstacles: TEXTS.map((text, i) => ({
      ...obstacle,
      id: `${i}"><b id=${MARK}>`,
      name: text,
      note: text,
      preset: text,
      lines: obstacle.lines.map((line) => ({ ...line, name: text })),
      photos: obstacle.photos.map((photo) => ({ ...photo, id: `photo ${i}`, caption: text })),
    })),
    vehicles: TEXTS.slice(0, 2).map((text, i) => ({ ...vehicle, id: `v${i}`, name: text, driver: text })),
  });
}

/** Elements and attributes that came to be out of a text, on the page or in the frame that is printed. */
function cameToBe(page: Page): Promise<string[]> {
  return page.evaluate(
    ({ MARK, ELSEWHERE }) => {
      const frames = [...document.querySelectorAll('iframe')].flatMap((frame) => frame.contentDocument ?? []);
      const all = [document, ...frames].flatMap((one) => [...one.querySelectorAll('*')]);
      const faults = all.flatMap((one) =>
        [...one.attributes].flatMap(({ name, value }) => {
          const runs = name.startsWith('on') || name === 'autofocus';
          const leads = /^(href|src|srcset|action|data|xlink:href)$/.test(name);
          const away = leads && (value.includes(ELSEWHERE) || /^\s*javascript:/i.test(value));
          return runs ||
            away ||
            (name === 'id' && value === MARK) ||
            (name === 'style' && value.includes('url('))
            ? [`${one.tagName} ${name}=${value}`]
            : [];
        }),
      );
      const scripts = all.filter((one) =>
        one.matches('script:not([src]), base, object, embed, foreignObject, iframe iframe'),
      );
      const titles = [document, ...frames].filter((one) => one.title === MARK).map(() => 'a script ran');
      return [...faults, ...scripts.map((one) => one.outerHTML.slice(0, 200)), ...titles];
    },
    { MARK, ELSEWHERE },
  );
}

test('whatever is written into a trip stays text on every screen and on paper, and nothing is asked for elsewhere', async () => {
  const { context, page, faults } = await sitDown(browser, 'about:blank', WIDE, { draws: 'coarse map' });
  const asked: string[] = [];
  context.on('request', (request) => asked.push(request.url()));
  await page.addInitScript(() => {
    window.print = () => undefined;
    document.addEventListener('securitypolicyviolation', ({ violatedDirective, sample }) =>
      console.error(`forbidden: ${violatedDirective} ${sample}`),
    );
  });
  await page.goto(`${inject('url')}#/archive`);
  await newTrip(page);
  await page
    .locator('input[type=file]')
    .first()
    .setInputFiles({ name: `${MARK}.json`, mimeType: 'application/json', buffer: Buffer.from(tripFile()) });
  const name = page.getByLabel('Trip name');
  await expect.poll(() => name.inputValue()).toContain('<script>');
  const seen: string[] = [];
  const look = async (where: string): Promise<void> => {
    await expect.poll(() => page.locator('body').textContent(), { message: where }).toContain(MARK);
    for (const fault of await cameToBe(page)) seen.push(`${where}: ${fault}`);
  };
  const [first] = TEXTS;
  for (const place of [
    'scout/track',
    'scout/convoy',
    'scout/convoy/v0',
    'scout/obstacles',
    ...[0, 1, 2, 3].map((i) => `scout/obstacles/${encodeURIComponent(`${i}"><b id=${MARK}>`)}`),
    `workbench/${encodeURIComponent(`0"><b id=${MARK}>`)}/v0/main`,
    'brief',
    `brief/${encodeURIComponent(`0"><b id=${MARK}>`)}/v0`,
    'archive',
  ]) {
    await page.evaluate((hash) => (location.hash = hash), `#/${place}`);
    await page.waitForTimeout(150);
    await look(place);
  }
  expect(first.length).toBeGreaterThan(100);
  await page.evaluate(() => (location.hash = '#/brief'));
  await page.locator('td a').first().waitFor();
  const print = page.getByRole('button', { name: 'Print briefing and cards', exact: true });
  await expect.poll(() => print.isEnabled(), { timeout: 30_000 }).toBe(true);
  await print.click();
  await page.frameLocator('iframe').locator('.card').last().waitFor({ state: 'attached' });
  await look('paper');
  expect(seen).toEqual([]);
  expect(asked.filter((url) => !url.startsWith(inject('url')) && !/^(data|blob|about):/.test(url))).toEqual(
    [],
  );
  expect(faults).toEqual([]);
  await context.close();
});
