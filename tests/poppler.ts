import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, readdirSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { isThere } from './debian.ts';

/** The PDF tools of poppler (GPL), written by others and sharing no code with us; installed on Debian when root. */
export function needPoppler(): void {
  if (!isThere('pdftotext', 'poppler-utils'))
    throw new Error(
      'These tests read printed pages by poppler. Install it (on Debian: apt-get install poppler-utils).',
    );
}

/** A word as it is printed, in millimetres from the upper left corner of its page. */
export interface Printed {
  readonly word: string;
  readonly leftMm: number;
  readonly topMm: number;
  readonly rightMm: number;
  readonly bottomMm: number;
}

/** One page of a PDF. */
export interface Sheet {
  readonly wideMm: number;
  readonly highMm: number;
  readonly words: readonly Printed[];
  /** In the order in which it was drawn, a space between any two words. */
  readonly text: string;
  readonly picture: Picture;
}

/** How light each point is, row by row, 255 for white. */
export interface Picture {
  readonly wide: number;
  readonly high: number;
  readonly pointMm: number;
  readonly grey: Uint8Array;
}

const POINT_MM = 25.4 / 72;
const DOTS_PER_INCH = 60;
/** Of 255: what is lighter is paper, or the blur of a stroke on it. */
const DARK = 200;

export function sheetsOf(file: string): Sheet[] {
  const pictures = picturesOf(file);
  const texts = tool('pdftotext', '-raw', file, '-').split('\f');
  return tool('pdftotext', '-bbox', file, '-')
    .split('<page ')
    .slice(1)
    .map((page, i) => {
      const [, wide, high] = /width="([\d.]+)" height="([\d.]+)"/.exec(page)!;
      return {
        wideMm: Number(wide) * POINT_MM,
        highMm: Number(high) * POINT_MM,
        words: wordsOf(page),
        text: asSeen(texts[i]).replace(/\s+/g, ' '),
        picture: pictures[i],
      };
    });
}

function wordsOf(page: string): Printed[] {
  const each = /<word xMin="(.+?)" yMin="(.+?)" xMax="(.+?)" yMax="(.+?)">(.*?)<\/word>/g;
  return [...page.matchAll(each)].map(([, left, top, right, bottom, word]) => ({
    word: asSeen(word.replace(/&(lt|gt|quot|amp);/g, (_, name: keyof typeof SIGNS) => SIGNS[name])),
    leftMm: Number(left) * POINT_MM,
    topMm: Number(top) * POINT_MM,
    rightMm: Number(right) * POINT_MM,
    bottomMm: Number(bottom) * POINT_MM,
  }));
}

/** A hyphen at the end of a line is a hyphen; one that does not show is nothing. */
function asSeen(text: string): string {
  return text.replaceAll('\u2010', '-').replaceAll('\u00ad', '');
}

const SIGNS = { lt: '<', gt: '>', quot: '"', amp: '&' };

function picturesOf(file: string): Picture[] {
  const folder = mkdtempSync(join(tmpdir(), 'rutline-'));
  tool('pdftoppm', '-gray', '-r', `${DOTS_PER_INCH}`, file, join(folder, 'page'));
  return readdirSync(folder)
    .sort()
    .map((name) => {
      const bytes = readFileSync(join(folder, name));
      const [head, wide, high] = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(bytes.toString('latin1', 0, 40))!;
      return {
        wide: Number(wide),
        high: Number(high),
        pointMm: 25.4 / DOTS_PER_INCH,
        grey: bytes.subarray(head.length),
      };
    });
}

/** How much of a page is dark. */
export function inkOf({ grey }: Picture): number {
  return grey.reduce((dark, point) => (point < DARK ? dark + 1 : dark), 0) / grey.length;
}

/** How many points are dark that are nearer to the page's edge than so much. */
export function inkWithin({ wide, high, pointMm, grey }: Picture, edgeMm: number): number {
  const edge = Math.floor(edgeMm / pointMm);
  let dark = 0;
  for (let y = 0; y < high; y++)
    for (let x = 0; x < wide; x++) {
      const isNear = x < edge || y < edge || x >= wide - edge || y >= high - edge;
      if (isNear && grey[y * wide + x] < DARK) dark++;
    }
  return dark;
}

function tool(name: string, ...args: string[]): string {
  return execFileSync(name, args, {
    encoding: 'utf8',
    stdio: ['ignore', 'pipe', 'pipe'],
    maxBuffer: 2 ** 28,
  });
}
