import type { Found, Series } from '../terrain/condition.ts';
import type { System } from '../units.ts';
import { fromShown, shown, unitLabel } from '../units.ts';
import { say } from '../words/words.ts';
import type { Point } from './ink.ts';
import { escaped, hatching, n, stroke, strokes, text } from './ink.ts';
import { roundStep } from './profile.ts';

/** What the condition of a place is drawn from. */
export interface VisitsView {
  readonly series: readonly Series[];
  /** When each visit was, oldest first; milliseconds since 1970-01-01T00:00:00Z. */
  readonly atMs: readonly number[];
  readonly nowMs: number;
  /** From when on the newest visit says too little of today; NaN where it does not age. */
  readonly staleFromMs: number;
  /** A day as people write it. */
  readonly dateOf: (ms: number) => string;
  readonly system: System;
  readonly widthPx: number;
}

const LEFT = 46;
const RIGHT = 20;
const TITLE_PX = 22;
const PLOT_PX = 96;
const APART_PX = 16;
const DATES_PX = 24;
const VALUES_APART_PX = 34;
/** Room for a date, and for a value over its dot. */
const DATE_PX = 76;
const VALUE_PX = 44;
/** Room over the greatest value for its words. */
const HEAD_PX = 20;
const DOT_PX = 4;
const CAP_PX = 4;
/** Room at the left of the first visit, so that its date stands clear. */
const LEAD_PX = 30;
const HATCH = { apartPx: 9, sizePx: 6 };

interface Time {
  readonly xOf: (ms: number) => number;
  readonly right: number;
}

/**
 * One drawing a telling size, one above the other over the same dates: a dot a visit with its ± as a whisker, a cross
 * where a visit found none. What follows a stale visit is hatched, and the dot of that visit is left open.
 */
export function visitsSvg(view: VisitsView): string {
  const { series, widthPx } = view;
  const time = timeOf(view);
  const each = TITLE_PX + PLOT_PX + APART_PX;
  const heightPx = series.length * each + DATES_PX;
  const parts = series.map((one, i) => panel(view, one, time, i * each + TITLE_PX));
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" class="drawing visits" viewBox="0 0 ${n(widthPx)} ${n(heightPx)}" ` +
    `width="${n(widthPx)}" height="${n(heightPx)}" fill="none" stroke="none">` +
    `${parts.join('')}${dates(view, time, series.length * each - APART_PX)}</svg>`
  );
}

/** From the first visit to today. */
function timeOf({ atMs, nowMs, widthPx }: VisitsView): Time {
  const from = atMs[0] ?? nowMs;
  const to = Math.max(nowMs, atMs[atMs.length - 1] ?? nowMs);
  const left = LEFT + LEAD_PX;
  const right = Math.max(widthPx - RIGHT, left + 10);
  const perMs = to > from ? (right - left) / (to - from) : 0;
  return { xOf: (ms) => left + (ms - from) * perMs, right };
}

interface Scale {
  readonly quantity: Series['quantity'];
  readonly system: System;
  readonly yOf: (value: number) => number;
  readonly widthPx: number;
}

function isStale({ nowMs, staleFromMs }: VisitsView): boolean {
  return nowMs >= staleFromMs;
}

function panel(view: VisitsView, { kind, quantity, found }: Series, time: Time, top: number): string {
  const { system, atMs, dateOf } = view;
  const bottom = top + PLOT_PX;
  const greatest = Math.max(...found.map((one) => (one === null ? 0 : one.value + one.plusMinus)), 1e-9);
  const yOf = (value: number) => bottom - (value / greatest) * (PLOT_PX - HEAD_PX);
  const dots = found.map((one, i): Point | null => one && [time.xOf(atMs[i]), yOf(one.value)]);
  const marks = found.map((one, i) => {
    const x = time.xOf(atMs[i]);
    const words = `${dateOf(atMs[i])}: ${one === null ? say.condition.notFound : valueText(one, quantity, system)}`;
    const mark = one === null ? cross(x, bottom) : dot(one, x, yOf, i === found.length - 1 && isStale(view));
    return `<g class="visit"><title>${escaped(words)}</title>${mark}</g>`;
  });
  const title = say.condition.sizes[kind as keyof typeof say.condition.sizes];
  return [
    text('title', [LEFT, top - 8], title, 'start'),
    axis(quantity, greatest, yOf, top, bottom, time.right, system),
    stale(view, time, top, bottom),
    strokes('course', runsOf(dots)),
    ...marks,
    ...values(found, dots, { quantity, system, yOf, widthPx: view.widthPx }),
  ].join('');
}

function valueText({ value, plusMinus, how }: Found, quantity: Series['quantity'], system: System): string {
  return `${shown(value, quantity, system)} ± ${shown(plusMinus, quantity, system)}, ${say.how[how]}`;
}

function axis(
  quantity: Series['quantity'],
  greatest: number,
  yOf: (value: number) => number,
  top: number,
  bottom: number,
  right: number,
  system: System,
): string {
  const one = fromShown(1, quantity, system);
  const step = roundStep((VALUES_APART_PX * one) / Math.max(1e-9, yOf(0) - yOf(one)) / one);
  const digits = Math.max(0, -Math.floor(Math.log10(step)));
  const parts = [text('unit', [LEFT - 6, top - 8], unitLabel(quantity, system), 'end')];
  for (let i = 0; i * step * one <= greatest; i++) {
    const y = yOf(i * step * one);
    parts.push(stroke(i === 0 ? 'tick' : 'rule', [[LEFT, y], [right, y]])); // prettier-ignore
    parts.push(text('value', [LEFT - 6, y + 4], (i * step).toFixed(digits), 'end'));
  }
  if (greatest < step * one) parts.push(stroke('tick', [[LEFT, bottom], [right, bottom]])); // prettier-ignore
  return parts.join('');
}

function dot({ value, plusMinus }: Found, x: number, yOf: (value: number) => number, open: boolean): string {
  const [low, high] = [yOf(Math.max(0, value - plusMinus)), yOf(value + plusMinus)];
  const cap = (y: number): Point[] => [
    [x - CAP_PX, y],
    [x + CAP_PX, y],
  ];
  const whisker: Point[] = [
    [x, low],
    [x, high],
  ];
  return (
    strokes('whisker', [whisker, cap(low), cap(high)]) +
    `<circle class="${open ? 'dot open' : 'dot'}" cx="${n(x)}" cy="${n(yOf(value))}" r="${DOT_PX}"/>`
  );
}

/** On the base line: looked for, and not there. */
function cross(x: number, y: number): string {
  const arm = (up: number): Point[] => [
    [x - DOT_PX, y - up * DOT_PX],
    [x + DOT_PX, y + up * DOT_PX],
  ];
  return strokes('none-found', [arm(1), arm(-1)]);
}

/** Dots in a row are joined; a visit that found none breaks the course. */
function runsOf(dots: readonly (Point | null)[]): Point[][] {
  const runs: Point[][] = [[]];
  for (const at of dots) {
    if (at === null) runs.push([]);
    else runs[runs.length - 1].push(at);
  }
  return runs.filter((run) => run.length > 1);
}

/** Values over their whiskers, the newest first, as far as there is room. */
function values(
  found: readonly (Found | null)[],
  dots: readonly (Point | null)[],
  { quantity, system, yOf, widthPx }: Scale,
): string[] {
  let freeTo = Infinity;
  return found
    .map((one, i) => ({ one, at: dots[i] }))
    .toReversed()
    .flatMap(({ one, at }) => {
      if (one === null || at === null || at[0] > freeTo) return [];
      freeTo = at[0] - VALUE_PX;
      const x = Math.min(at[0], widthPx - VALUE_PX / 2 - 2);
      return [text('size', [x, yOf(one.value + one.plusMinus) - 5], shown(one.value, quantity, system))];
    });
}

/** From when on nobody knows. */
function stale(view: VisitsView, { xOf, right }: Time, top: number, bottom: number): string {
  if (!isStale(view)) return '';
  const from = xOf(Math.max(view.staleFromMs, view.atMs[0] ?? view.staleFromMs));
  const rows: string[] = [];
  for (let y = top; y < bottom - HATCH.sizePx; y += HATCH.apartPx * 2)
    rows.push(hatching([[from, y], [right, y]], HATCH.apartPx, HATCH.sizePx)); // prettier-ignore
  const edge = stroke('level', [[from, top], [from, bottom]]); // prettier-ignore
  const words = text('stale', [right + RIGHT - 4, top - 8], say.condition.stale, 'end');
  return `<g class="not-known">${rows.join('')}${edge}${words}</g>`;
}

/** The day of every visit for which there is room, the newest before the older, and today. */
function dates({ atMs, nowMs, dateOf }: VisitsView, { xOf, right }: Time, y: number): string {
  const taken: number[] = [];
  const days = atMs.map((ms) => ({ ms, words: dateOf(ms) })).toReversed();
  return [...days, { ms: nowMs, words: say.condition.today }]
    .map(({ ms, words }) => {
      const x = xOf(ms);
      const tick = stroke('tick', [[x, y], [x, y + 5]]); // prettier-ignore
      const middle = Math.min(right + RIGHT - 2 - DATE_PX / 2, x);
      if (taken.some((other) => Math.abs(other - middle) < DATE_PX)) return tick;
      taken.push(middle);
      return tick + text('date', [middle, y + 18], words);
    })
    .join('');
}
