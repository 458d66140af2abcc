import type { Browser, Page } from 'playwright-core';
import { beforeAll, expect, inject, test } from 'vitest';
import { findings, launch, sitDown } from './desk.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});

/** What the page's workers are held at. */
interface Holding {
  /** Messages that are still let through to workers whose address holds `address`; a held one is never answered. */
  left: number;
  readonly address: string;
  /** Workers that were ended while a message to them was held. */
  ended: number;
}

declare global {
  interface Window {
    holding: Holding;
  }
}

/** Runs in the page, before it: holds what is posted to some workers, as if it took them for ever. */
function holdWorkers({ address, left }: Pick<Holding, 'address' | 'left'>): void {
  const holding = (window.holding = { address, left, ended: 0 });
  window.Worker = class extends Worker {
    readonly #address: string;
    #isHeld = false;

    constructor(script: string | URL, options?: WorkerOptions) {
      super(script, options);
      this.#address = String(script);
    }

    override postMessage(message: unknown): void {
      const isOne = `${this.#address} ${JSON.stringify((message as { kind?: string }).kind)}`;
      if (isOne.includes(holding.address) && holding.left-- <= 0) this.#isHeld = true;
      else super.postMessage(message);
    }

    override terminate(): void {
      if (this.#isHeld) holding.ended++;
      super.terminate();
    }
  };
}

/** A page whose workers are held. */
async function held(hash: string, address: string, left: number) {
  const desk = await sitDown(browser, `${inject('url')}#/archive`);
  await desk.context.addInitScript(holdWorkers, { address, left });
  await desk.page.goto(`${inject('url')}${hash}`);
  await desk.page.reload();
  return desk;
}

const release = (page: Page) => page.evaluate(() => (window.holding.left = 1e9));
const ended = (page: Page) => page.evaluate(() => window.holding.ended);
/** Once a worker is held. */
const isHeld = (page: Page) => page.waitForFunction(() => window.holding.left < 0);

test('the matrix can be stopped: its workers end, what has come stays, the rest is not worked out, and it goes on', async () => {
  const { context, page, faults } = await held('#/brief', 'matrix.worker', 2);
  const status = page.getByRole('status');
  const cells = page.locator('td');
  const come = page.locator('td a');
  await status.getByText(/^Worked out \d+ of \d+ …$/).waitFor();
  await come.first().waitFor();
  await isHeld(page);
  const count = await cells.count();
  await page.getByRole('button', { name: 'Stop', exact: true }).click();
  await status.getByText(/^Stopped: \d+ of \d+ worked out\./).waitFor();
  expect(await ended(page)).toBeGreaterThan(0);
  const words = await come.allTextContents();
  expect(words.length).toBeGreaterThan(0);
  expect(words.length).toBeLessThan(count);
  const rest = cells.filter({ hasNot: page.locator('a') });
  expect([...new Set((await rest.allTextContents()).map((text) => text.trim()))]).toEqual(['not worked out']);
  expect(await page.getByRole('button', { name: 'Save them as a page' }).isDisabled()).toBe(true);
  expect(await findings(page)).toEqual([]);

  await release(page);
  await page.getByRole('button', { name: 'Go on', exact: true }).click();
  await expect.poll(() => come.count(), { timeout: 60_000 }).toBe(count);
  expect(await rest.count()).toBe(0);
  expect(await page.getByRole('button', { name: 'Save them as a page' }).isDisabled()).toBe(false);
  expect(faults).toEqual([]);
  await context.close();
});

test('the writing of a briefing can be stopped, and is begun anew', async () => {
  const { context, page, faults } = await held('#/brief', 'order.worker', 0);
  const save = page.getByRole('button', { name: 'Save them as a page' });
  await save.click();
  await page.getByRole('status').getByText('Writing the briefing …').waitFor();
  await isHeld(page);
  expect(await save.isDisabled()).toBe(true);
  await page.getByRole('button', { name: 'Stop', exact: true }).click();
  expect(await ended(page)).toBe(1);
  expect(await save.isDisabled()).toBe(false);
  expect(await page.getByRole('alert').count()).toBe(0);
  await release(page);
  const downloading = page.waitForEvent('download');
  await save.click();
  await downloading;
  expect(faults).toEqual([]);
  await context.close();
});

test('what else could be can be stopped, and goes on', async () => {
  const { context, page, faults } = await held('#/brief', '"whatIf"', 0);
  await page.locator('td a').first().click();
  const why = page.getByRole('complementary', { name: 'Why' });
  await why.getByRole('link', { name: 'Open the workbench' }).first().click();
  const whatIf = page.getByRole('region', { name: 'What if' });
  await whatIf.getByRole('button', { name: 'Stop', exact: true }).click();
  await whatIf.getByText('Not worked out.').waitFor();
  expect(await whatIf.getAttribute('aria-busy')).toBe('false');
  expect(await whatIf.getByRole('listitem').count()).toBe(0);
  await release(page);
  await whatIf.getByRole('button', { name: 'Go on', exact: true }).click();
  await whatIf.getByText('Would change nothing here').waitFor();
  expect(await whatIf.getByRole('button').count()).toBe(0);
  expect(faults).toEqual([]);
  await context.close();
});
