import type { Browser, Page } from 'playwright-core';
import { beforeAll, expect, inject, test } from 'vitest';
import { launch, sitDown } from './desk.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});

interface Weighed {
  readonly kind: string;
  readonly weight: string;
}

/** Runs in the page before anything else: keeps what the map's source of lines was given last. */
function keepLines(): void {
  const kept = window as unknown as { lines: Weighed[] };
  kept.lines = [];
  const prototype = Worker.prototype as { postMessage: (...given: unknown[]) => void };
  const { postMessage } = prototype;
  prototype.postMessage = function (...given) {
    const found: Weighed[] = [];
    const look = (value: unknown, depth: number): void => {
      if (typeof value !== 'object' || value === null || ArrayBuffer.isView(value) || depth > 7) return;
      if ('weight' in value && 'kind' in value) found.push(value as Weighed);
      else for (const part of Object.values(value)) look(part, depth + 1);
    };
    look(given[0], 0);
    if (found.length > 0) kept.lines = found.map(({ kind, weight }) => ({ kind, weight }));
    postMessage.apply(this, given);
  };
}

/** How many lines of each weight the map draws. */
async function weights(page: Page): Promise<Record<string, number>> {
  const lines = await page.evaluate(() => (window as unknown as { lines: Weighed[] }).lines);
  const counts: Record<string, number> = {};
  for (const { weight } of lines) counts[weight] = (counts[weight] ?? 0) + 1;
  return counts;
}

test('the map for one vehicle draws the lines that it takes heavy and all others faint, and all alike for all', async () => {
  const { context, page, faults } = await sitDown(browser, 'about:blank', undefined, { draws: 'coarse map' });
  await page.addInitScript(keepLines);
  await page.goto(inject('url'));
  const chooser = page.getByLabel('Vehicles on the map');
  await chooser.waitFor();
  const plain = { timeout: 30_000 };
  await expect.poll(async () => Object.keys(await weights(page)), plain).toEqual(['plain']);
  const all = (await weights(page)).plain;

  await chooser.selectOption('Pebble alone');
  await expect
    .poll(async () => Object.keys(await weights(page)).toSorted(), plain)
    .toEqual(['faint', 'taken']);
  await expect.poll(async () => (await weights(page)).taken, plain).toBeGreaterThan(2);
  const { taken, faint } = await weights(page);
  expect(taken + faint).toBe(all);

  await chooser.selectOption('All vehicles');
  await expect.poll(() => weights(page), plain).toEqual({ plain: all });
  expect(faults).toEqual([]);
  await context.close();
});
