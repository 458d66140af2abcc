import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { beforeAll, describe, expect, test } from 'vitest';
import { readTrip, tripToJson } from '../../src/archive/share.ts';
import { rutline } from '../cli/run.ts';
import { fullConvoy } from '../fullConvoy.ts';
import type { Sheet } from '../poppler.ts';
import { inkOf, inkWithin, needPoppler, sheetsOf } from '../poppler.ts';
import { launch } from './desk.ts';

const demo = readTrip(readFileSync('public/demo/outing.json', 'utf8')).value!;
const folder = mkdtempSync(join(tmpdir(), 'rutline-'));

/** The many and long words of the one are the harder ones to print. */
const TRIPS = [
  { name: 'the demo in English', trip: demo, language: 'en' },
  { name: 'a full convoy in German', trip: fullConvoy(demo), language: 'de' },
] as const;
const PAPERS = { A4: [210, 297], Letter: [215.9, 279.4] } as const;
type Paper = keyof typeof PAPERS;

let browser: Browser;
beforeAll(async () => {
  needPoppler();
  browser = await launch();
});

/** What must not be parted by the end of a page. */
const WHOLE = '.call, article.obstacle, .leader li, tbody tr, figure, h1, h2, h3';

interface Printed {
  readonly sheets: readonly Sheet[];
  /** The pages from 0 on which each thing that holds together starts and ends. */
  readonly blocks: readonly { readonly what: string; readonly from: number; readonly to: number }[];
  /** The pages of each card. */
  readonly cards: readonly { readonly from: number; readonly to: number }[];
  /** All words of the page as they may be printed: whole, or parted where a hyphen stands or shows. */
  readonly words: ReadonlySet<string>;
}

/**
 * The page on paper. Signs too small to be seen stand where each block starts and ends; they take no room, and are on the
 * page that the words beside them are on.
 */
async function print(markup: string, paper: Paper): Promise<Printed> {
  const page = await browser.newPage();
  await page.setContent(markup);
  const texts = await page.evaluate(() => [
    document.body.innerText,
    ...[...document.querySelectorAll('svg text')].map(({ textContent }) => textContent),
  ]);
  const names = await page.evaluate(
    (selectors) => {
      const [whole, card] = selectors.map((selector) => [...document.querySelectorAll(selector)]);
      return [whole, card].map((blocks, kind) =>
        blocks.map((block, i) => {
          const what = `${block.tagName} ${block.className}: ${block.textContent.replace(/\s+/g, ' ').slice(0, 50)}`;
          for (const part of block.matches('tr') ? [...block.children] : [block])
            for (const [side, at] of [
              ['a', 'afterbegin'],
              ['z', 'beforeend'],
            ] as const) {
              const sign = document.createElement('span');
              sign.textContent = `@${kind}.${i}${side}@`;
              sign.style.cssText = 'position: absolute; font-size: 1px; line-height: 1; color: #fff';
              part.insertAdjacentElement(at, sign);
            }
          return what;
        }),
      );
    },
    [WHOLE, '.card'],
  );
  const file = join(folder, 'sheets.pdf');
  await page.pdf({ path: file, format: paper, preferCSSPageSize: true });
  await page.close();
  const signed = sheetsOf(file);
  const pagesOf = (sign: string) =>
    signed.flatMap(({ words }, i) => (words.some(({ word }) => word.includes(sign)) ? [i] : []));
  const [blocks, cards] = names.map((some, kind) =>
    some.map((what, i) => {
      const on = ['a', 'z'].map((side) => {
        const pages = pagesOf(`@${kind}.${i}${side}@`);
        expect(pages.length, `pages of ${what}`).toBeGreaterThan(0);
        return pages;
      });
      return { what, from: Math.min(...on.flat()), to: Math.max(...on.flat()) };
    }),
  );
  const sheets = signed.map((sheet) => ({
    ...sheet,
    words: sheet.words
      .map((one) => ({ ...one, word: one.word.replace(/@\d\.\d+[az]@/g, '') }))
      .filter(({ word }) => word !== ''),
    text: sheet.text.replace(/@\d\.\d+[az]@/g, ' ').replace(/\s+/g, ' '),
  }));
  return { sheets, blocks, cards, words: partsOf(texts.join(' ')) };
}

function partsOf(text: string): Set<string> {
  const words = text.split(/\s+/).filter(Boolean);
  return new Set(
    words.flatMap((word) => {
      const parts = word.split(/(?<=[-–/\u00ad])/);
      return parts.flatMap((_, from) =>
        parts.slice(from).map((_, more) => {
          const run = parts.slice(from, from + more + 1).join('');
          return run.replace(/\u00ad$/, '-').replaceAll('\u00ad', '');
        }),
      );
    }),
  );
}

/** Of the page style: what stays white around every page. Letters may reach a little over the line of their box. */
const MARGIN_MM = 10;
const OVER_MM = 0.5;

describe.each(TRIPS)('the sheets of $name', ({ name, trip, language }) => {
  const file = join(folder, `${name.replaceAll(' ', '-')}.json`);
  let markup = '';
  beforeAll(async () => {
    writeFileSync(file, tripToJson(trip));
    markup = (await rutline('brief', file, '--language', language)).out;
  });

  test.each(Object.keys(PAPERS) as Paper[])('on %s', async (paper) => {
    const { sheets, blocks, cards, words } = await print(markup, paper);
    const [wideMm, highMm] = PAPERS[paper];
    for (const [i, sheet] of sheets.entries()) {
      const at = `page ${i + 1}`;
      expect(Math.abs(sheet.wideMm - wideMm), at).toBeLessThan(0.5);
      expect(Math.abs(sheet.highMm - highMm), at).toBeLessThan(0.5);
      expect(inkOf(sheet.picture), at).toBeGreaterThan(0.001);
      expect(inkWithin(sheet.picture, MARGIN_MM - OVER_MM), at).toBe(0);
      for (const { word, leftMm, topMm, rightMm, bottomMm } of sheet.words) {
        const nearest = Math.min(leftMm, topMm, wideMm - rightMm, highMm - bottomMm);
        expect(nearest, `${at}: ${word}`).toBeGreaterThan(MARGIN_MM - OVER_MM);
      }
      const broken = sheet.words.filter(({ word }) => /\p{L}{2}/u.test(word) && !words.has(word));
      expect(
        broken.map(({ word }) => word),
        at,
      ).toEqual([]);
    }
    expect(blocks.filter(({ from, to }) => from !== to)).toEqual([]);

    const textOf = (from: number, to: number) =>
      sheets
        .slice(from, to + 1)
        .map(({ text }) => text)
        .join(' ');
    const first = cards[0].from;
    const leader = textOf(0, first - 1);
    for (const one of [...trip.obstacles, ...trip.vehicles]) expect(leader).toContain(one.name);
    expect(cards.length).toBe(trip.vehicles.length);
    for (const [v, { from, to }] of cards.entries()) {
      const card = textOf(from, to);
      expect(card).toContain(`${v + 1} ${trip.vehicles[v].name}`);
      for (const obstacle of trip.obstacles) expect(card).toContain(obstacle.name);
      if (trip === demo) expect(to, card.slice(0, 40)).toBe(from);
    }
  });
});
