import { readFileSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { beforeAll, expect, inject, test } from 'vitest';
import { en } from '../../src/words/en/en.ts';
import { answerOf, leavesOf } from '../words/leaves.ts';
import { launch, sitDown } from './desk.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});

const demo = readFileSync(new URL('../../public/demo/outing.json', import.meta.url), 'utf8');

/** Stretches of three words or more that only the English catalogue says, without the values in its texts. */
const ENGLISH = [
  ...new Set(
    leavesOf(en)
      .flatMap((leaf) => answerOf(leaf)?.parts ?? [])
      .map((part) => part.replace(/^[\s.,;:()]+|[\s.,;:()]+$/g, ''))
      .filter((part) => (part.match(/\p{L}{2,}/gu) ?? []).length >= 3 && !demo.includes(part)),
  ),
];

/** English that stands on the page or is read from it. */
async function englishOn(page: Page): Promise<string[]> {
  const read = await page.evaluate(() => {
    const told = ['aria-label', 'aria-valuetext', 'title', 'placeholder', 'alt'].flatMap((name) =>
      [...document.querySelectorAll(`[${name}]`)].map((one) => one.getAttribute(name) ?? ''),
    );
    return [document.title, document.body.innerText, ...told].join('\n').replace(/\s+/g, ' ');
  });
  return ENGLISH.filter((text) => read.includes(text));
}

test('on a German device all is said in German, and English is chosen with the trip as it is', async () => {
  expect(ENGLISH.length).toBeGreaterThan(300);
  const { context, page, faults } = await sitDown(browser, inject('url'), undefined, { locale: 'de-DE' });
  const unfold = () =>
    page.evaluate(() => document.querySelectorAll('details').forEach((one) => (one.open = true)));
  const found: Record<string, string[]> = {};
  const look = async (screen: string) => {
    const english = await englishOn(page);
    if (english.length > 0) found[screen] = english;
  };

  await page.getByRole('link', { name: /^Hindernisse/ }).waitFor();
  expect(await page.evaluate(() => document.documentElement.lang)).toBe('de');
  await page.getByRole('link', { name: /^Strecke/ }).click();
  await look('the track');
  await page.getByRole('link', { name: /^Hindernisse/ }).click();
  await look('Scout');
  await page.getByRole('link', { name: /Hobnail ruts/ }).click();
  await unfold();
  await page.getByText('geht mit Vorsicht').first().waitFor();
  await look('an obstacle');
  await page.getByLabel('Name des Hindernisses').fill('Nagelrillen');
  await page.getByRole('link', { name: /^Konvoi/ }).click();
  await look('Convoy');
  await page.getByRole('link', { name: /^Bracken/ }).click();
  await unfold();
  await look('a vehicle');
  await page.getByRole('link', { name: 'Einweisen' }).click();
  await page.locator('.sure').first().waitFor();
  await look('Brief');
  await page
    .getByRole('link', { name: /braucht Zug/ })
    .first()
    .click();
  await page.getByRole('complementary', { name: 'Warum' }).waitFor();
  await unfold();
  await look('a cell');
  await page.getByRole('link', { name: 'Werkbank öffnen' }).click();
  await page.getByRole('heading', { name: 'Radlasten' }).waitFor();
  await look('the workbench');
  await page.getByRole('link', { name: 'Archiv' }).click();
  await page
    .getByRole('button', { name: /^Als Datei speichern/ })
    .first()
    .waitFor();
  await look('Archive');
  expect(found).toEqual({});

  await page.getByRole('button', { name: 'Ansicht' }).click();
  await page.getByRole('combobox', { name: 'Sprache' }).selectOption({ label: 'English' });
  await page.getByRole('heading', { name: 'Trips on this device' }).waitFor();
  expect(await page.evaluate(() => document.documentElement.lang)).toBe('en');
  await page.getByRole('link', { name: 'Scout' }).click();
  await page.getByRole('link', { name: /Nagelrillen/ }).waitFor();
  await page.getByRole('heading', { name: 'In order of travel' }).waitFor();
  expect((await englishOn(page)).length).toBeGreaterThan(3);
  expect(faults).toEqual([]);
  await context.close();
});
