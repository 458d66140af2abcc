import { readFileSync } from 'node:fs';
import type { Browser } from 'playwright-core';
import { beforeAll, describe, expect, inject, test } from 'vitest';
import type { Desk, Draws } from './desk.ts';
import { launch, matrix, PHONE, sitDown, WIDE } from './desk.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});

/** A desk that tells what the policy forbids, in the page and in its frames, as a fault. */
async function watched(viewport = WIDE, draws: Draws = 'no map'): Promise<Desk> {
  const desk = await sitDown(browser, 'about:blank', viewport, { draws });
  await desk.page.addInitScript(() => {
    window.print = () => undefined;
    document.addEventListener('securitypolicyviolation', ({ violatedDirective, blockedURI, sample }) =>
      console.error(`forbidden: ${violatedDirective} ${blockedURI} ${sample}`),
    );
  });
  await desk.page.goto(inject('url'));
  return desk;
}

describe.each([
  ['wide', WIDE],
  ['phone', PHONE],
])('under the policy, %s', (_name, viewport) => {
  test('every desk, the workbench and a cell work, and nothing is forbidden to them', async () => {
    const { context, page, faults } = await watched(viewport, 'coarse map');
    const map = page.locator('canvas.maplibregl-canvas');
    await map.waitFor();
    const { width, height } = (await map.boundingBox())!;
    expect(width).toBeGreaterThan(300);
    expect(height).toBeGreaterThan(200);
    await page.getByRole('link', { name: /^Track/ }).click();
    await page.getByRole('link', { name: /^Convoy/ }).click();
    await page.getByRole('link', { name: /^Obstacles/ }).click();
    await page.getByRole('link', { name: /Hobnail ruts/ }).click();
    await page.getByRole('link', { name: 'Open the workbench' }).click();
    await page.getByRole('heading', { name: 'Wheel loads' }).waitFor();
    await page.getByText(/^(Goes:|No band)/).waitFor();
    await matrix(page);
    await page.locator('td a').first().click();
    await page.getByRole('complementary', { name: 'Why' }).waitFor();
    await page.getByRole('link', { name: 'Archive', exact: true }).click();
    await page.getByRole('button', { name: 'New trip' }).waitFor();
    expect(faults).toEqual([]);
    await context.close();
  });
});

test('what goes to the printer looks under the policy as the saved page does without one', async () => {
  const { context, page, faults } = await watched();
  await matrix(page);
  const downloading = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save them as a page' }).click();
  const saved = readFileSync(await (await downloading).path(), 'utf8');
  await page.getByRole('button', { name: 'Print briefing and cards', exact: true }).click();
  await page
    .frameLocator('iframe[title="Briefing for the printer"]')
    .locator('.card')
    .last()
    .waitFor({ state: 'attached' });
  const look = () =>
    [...document.querySelectorAll('body *')].map((one) => {
      const style = getComputedStyle(one);
      const { tagName } = one;
      return [
        tagName,
        style.font,
        style.margin,
        style.padding,
        style.border,
        style.fill,
        style.stroke,
      ].join();
    });
  const frame = page.frames().find((one) => one !== page.mainFrame())!;
  const plain = await context.newPage();
  await plain.setContent(saved);
  const [printed, asSaved] = [await frame.evaluate(look), await plain.evaluate(look)];
  expect(printed.length).toBeGreaterThan(500);
  expect(printed).toEqual(asSaved);
  expect(new Set(printed).size).toBeGreaterThan(20);
  expect(faults).toEqual([]);
  await context.close();
});

test('what the policy is there to forbid is forbidden', async () => {
  const { context, page, faults } = await watched();
  await page.getByRole('link', { name: 'Archive', exact: true }).click();
  for (const [markup, directive] of [
    ['<p style="color: red">x</p>', 'style-src-attr'],
    ['<style>p { color: red }</style>', 'style-src-elem'],
    ['<img src="https://elsewhere.example/x.png">', 'img-src'],
    ['<img src="data:," onerror="document.title = 1">', 'script-src-attr'],
    ['<iframe src="https://elsewhere.example/"></iframe>', 'frame-src'],
  ]) {
    await page.evaluate((text) => document.body.insertAdjacentHTML('beforeend', text), markup);
    await expect.poll(() => faults.join('\n'), { message: markup }).toContain(`forbidden: ${directive}`);
  }
  const ran = await page.evaluate(async () => {
    const script = document.createElement('script');
    script.textContent = 'globalThis.ran = 1';
    document.body.append(script);
    const { eval: evaluate, Function: Made } = globalThis as unknown as {
      eval: (text: string) => void;
      Function: (text: string) => () => void;
    };
    // While it is told what to do from outside, a page may do anything: this is done after that.
    await new Promise((resolve) => setTimeout(resolve, 0));
    const tried = [() => evaluate('globalThis.ran = 2'), () => Made('globalThis.ran = 3')()];
    const threw = tried.map((run) => {
      try {
        run();
        return 'ran';
      } catch (error) {
        return (error as Error).name;
      }
    });
    return [...threw, String((globalThis as { ran?: number }).ran)];
  });
  expect(ran).toEqual(['EvalError', 'EvalError', 'undefined']);
  await expect.poll(() => faults.join('\n')).toMatch(/forbidden: script-src-elem inline/);
  const fetched = page.evaluate(() => fetch('https://elsewhere.example/').then(() => 'fetched', () => 'not fetched')); // prettier-ignore
  expect(await fetched).toBe('not fetched');
  await expect.poll(() => faults.join('\n')).toMatch(/connect-src/);
  await context.close();
});
