import { metresPerDegree, wrapLng } from '../route/ellipsoid.ts';
import type { Path } from '../route/geo.ts';
import type { SlopeSegment } from '../route/slope.ts';
import { sliceOf, spansOf } from '../route/station.ts';
import { steepnessOf } from '../route/steepness.ts';
import type { Track } from '../route/track.ts';
import type { System } from '../units.ts';
import { fromShown, shown } from '../units.ts';
import type { Point } from './ink.ts';
import { n, stroke, text } from './ink.ts';
import { roundStep } from './profile.ts';
import { say } from '../words/words.ts';

/** An obstacle's place on the map. */
export interface Pin {
  readonly number: number;
  readonly lng: number;
  readonly lat: number;
}

/** What a map sheet is drawn from. */
export interface SheetView {
  readonly track: Track;
  /** Of like slope, as `slopeOf` gives them. */
  readonly segments: readonly SlopeSegment[];
  readonly pins: readonly Pin[];
  readonly reversed: boolean;
  readonly system: System;
  readonly widthPx: number;
  /** At most; the sheet is as high as the track needs. */
  readonly heightPx: number;
}

const MARGIN_PX = 30;
/** Clear band at the foot for the scale and the north arrow. */
const FOOT_PX = 30;
/** Points closer than this to the one before are left out. */
const FINE_PX = 0.7;
const ARROWS_APART_PX = 110;
const TICKS_APART_PX = 5;
/** From this class of steepness up the way is ticked across as well as drawn heavier. */
const TICKED_CLASS = 3;
const LABEL = { widthPx: 20, heightPx: 18, letterPx: 8 };
const FEET_PER_MILE = 5280;

/**
 * The track from above as SVG text, north up and true to scale, for paper that may be copied in black and white: the
 * steeper, the heavier the stroke, with ticks across from 15° up; obstacles by number in order of travel.
 */
export function sheetSvg(view: SheetView): string {
  const { track, segments, pins, reversed, widthPx } = view;
  const frame = frameOf(view);
  const { at, heightPx } = frame;
  const ways = segments.flatMap((segment) =>
    sliceOf(track, segment.fromM, segment.toM).map((path) => ({
      line: lineOf(path, at),
      steep: segment.known ? steepnessOf(segment.slopeRad) : -1,
    })),
  );
  const shown = ways.length > 0 ? ways : spansOf(track).map(({ from, to }) => ({
    line: lineOf({ lng: track.lng.subarray(from, to), lat: track.lat.subarray(from, to) }, at),
    steep: -1,
  })); // prettier-ignore
  const all = shown.flatMap(({ line }) => line);
  const first = at(track.lng[0], track.lat[0]);
  const last = at(track.lng[track.length - 1], track.lat[track.length - 1]);
  const [start, end] = reversed ? [last, first] : [first, last];
  const labels = placed(
    [
      ...pins.map(({ number, lng, lat }): Wish => ({
        at: at(lng, lat),
        words: String(number),
        framed: true,
      })),
      { at: start, words: say.drawing.start, framed: false },
      { at: end, words: say.drawing.end, framed: false },
    ],
    all,
    widthPx,
    heightPx - FOOT_PX,
  );
  const parts = [
    ...shown.map(({ line, steep }) => stroke(steep < 0 ? 'way unknown' : `way steep-${steep}`, line)),
    ...shown.map(({ line, steep }) => (steep >= TICKED_CLASS ? ticks(line) : '')),
    arrows(shown.map(({ line }) => line), reversed), // prettier-ignore
    circle('end-point', start, 4),
    circle('end-point', end, 4),
    ...labels,
    scale(view, frame),
    north(widthPx - 18, heightPx - 6),
  ];
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" class="drawing sheet" viewBox="0 0 ${n(widthPx)} ${n(heightPx)}" ` +
    `width="${n(widthPx)}" height="${n(heightPx)}" fill="none" stroke="none">${parts.join('')}</svg>`
  );
}

type At = (lng: number, lat: number) => Point;

interface Frame {
  readonly at: At;
  readonly heightPx: number;
  readonly metresPerPx: number;
}

/** A plane at the mid latitude, moved and scaled into the sheet. */
function frameOf({ track, pins, widthPx, heightPx }: SheetView): Frame {
  let [west, east, south, north] = [Infinity, -Infinity, Infinity, -Infinity];
  const lng0 = track.lng[0];
  const take = (lng: number, lat: number) => {
    const x = wrapLng(lng - lng0);
    [west, east, south, north] = [
      Math.min(west, x),
      Math.max(east, x),
      Math.min(south, lat),
      Math.max(north, lat),
    ];
  };
  for (let i = 0; i < track.length; i++) take(track.lng[i], track.lat[i]);
  for (const { lng, lat } of pins) take(lng, lat);
  const perDegree = metresPerDegree((south + north) / 2);
  const acrossM = Math.max((east - west) * perDegree.east, 1);
  const upM = Math.max((north - south) * perDegree.north, 1);
  const metresPerPx = Math.max(
    acrossM / (widthPx - 2 * MARGIN_PX),
    upM / (heightPx - 2 * MARGIN_PX - FOOT_PX),
  );
  const tallPx = upM / metresPerPx + 2 * MARGIN_PX;
  const left = (widthPx - acrossM / metresPerPx) / 2;
  return {
    at: (lng, lat) => [
      left + ((wrapLng(lng - lng0) - west) * perDegree.east) / metresPerPx,
      MARGIN_PX + ((north - lat) * perDegree.north) / metresPerPx,
    ],
    heightPx: tallPx + FOOT_PX,
    metresPerPx,
  };
}

function lineOf({ lng, lat }: Path, at: At): Point[] {
  const line: Point[] = [];
  for (let i = 0; i < lng.length; i++) {
    const point = at(lng[i], lat[i]);
    const before = line[line.length - 1];
    const near = before && Math.hypot(point[0] - before[0], point[1] - before[1]) < FINE_PX;
    if (!near || i === lng.length - 1) line.push(point);
  }
  return line;
}

/** Strokes across a line, evenly apart. */
function ticks(line: readonly Point[]): string {
  return along(line, TICKS_APART_PX, TICKS_APART_PX / 2)
    .map(({ x, y, ux, uy }) =>
      stroke('tick', [
        [x - uy * 6, y + ux * 6],
        [x + uy * 6, y - ux * 6],
      ]),
    ) // prettier-ignore
    .join('');
}

/** Which way the convoy goes. */
function arrows(lines: readonly (readonly Point[])[], reversed: boolean): string {
  const way = reversed ? -1 : 1;
  return along(lines.flat(), ARROWS_APART_PX, ARROWS_APART_PX / 2)
    .map(({ x, y, ux, uy }) => {
      const [fx, fy] = [ux * way, uy * way];
      const wing = (side: number): Point => [x - fx * 5 - fy * side * 5, y - fy * 5 + fx * side * 5];
      return stroke('arrow', [wing(1), [x + fx * 5, y + fy * 5], wing(-1)], true);
    })
    .join('');
}

/** Places along a line with its direction there. */
function along(line: readonly Point[], apart: number, first: number) {
  const places: { x: number; y: number; ux: number; uy: number }[] = [];
  let left = first;
  for (let i = 1; i < line.length; i++) {
    const [[x0, y0], [x1, y1]] = [line[i - 1], line[i]];
    const length = Math.hypot(x1 - x0, y1 - y0);
    if (length === 0) continue;
    const [ux, uy] = [(x1 - x0) / length, (y1 - y0) / length];
    for (; left <= length; left += apart) places.push({ x: x0 + ux * left, y: y0 + uy * left, ux, uy });
    left -= length;
  }
  return places;
}

interface Wish {
  readonly at: Point;
  readonly words: string;
  readonly framed: boolean;
}

interface Box {
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
}

/** Labels beside their places, clear of each other and, as far as can be, of the way. */
function placed(wishes: readonly Wish[], way: readonly Point[], widthPx: number, heightPx: number): string[] {
  const taken: Box[] = [];
  return wishes.map(({ at: [x, y], words, framed }) => {
    const w = Math.max(LABEL.widthPx, words.length * LABEL.letterPx + 6);
    const h = LABEL.heightPx;
    let best: Box = { x: x - w / 2, y: y - 30, w, h };
    let least = Infinity;
    for (const reach of [20, 30, 44])
      for (let turn = 0; turn < 16; turn++) {
        const a = (turn * Math.PI) / 8;
        const box = {
          x: x + Math.sin(a) * (reach + w / 2 - 8) - w / 2,
          y: y - Math.cos(a) * reach - h / 2,
          w,
          h,
        };
        const outside = box.x < 1 || box.y < 1 || box.x + w > widthPx - 1 || box.y + h > heightPx - 1;
        const on = way.filter(([px, py]) => within(px, py, box)).length;
        const cost =
          reach / 10 + on + (outside ? 1e4 : 0) + taken.filter((other) => overlap(other, box)).length * 1e3;
        if (cost < least) [least, best] = [cost, box];
      }
    taken.push(best);
    const [cx, cy] = [best.x + w / 2, best.y + h / 2];
    const box = `<rect class="flag" x="${n(best.x)}" y="${n(best.y)}" width="${n(w)}" height="${h}"/>`;
    return (
      (framed ? stroke('post', [[x, y], [cx, cy]]) + circle('pin', [x, y], 3) + box : '') + // prettier-ignore
      text(framed ? 'flag-number' : 'size', [cx, cy + 5], words)
    );
  });
}

function within(px: number, py: number, { x, y, w, h }: Box): boolean {
  return px > x - 4 && px < x + w + 4 && py > y - 4 && py < y + h + 4;
}

function overlap(a: Box, b: Box): boolean {
  return a.x < b.x + b.w + 3 && b.x < a.x + a.w + 3 && a.y < b.y + b.h + 3 && b.y < a.y + a.h + 3;
}

function circle(className: string, [x, y]: Point, r: number): string {
  return `<circle class="${className}" cx="${n(x)}" cy="${n(y)}" r="${r}"/>`;
}

/** A bar of round length, no longer than 40 % of the sheet, in quarters dark and light. */
function scale({ system, widthPx }: SheetView, { metresPerPx, heightPx }: Frame): string {
  const mostM = 0.4 * widthPx * metresPerPx;
  const far = system === 'metric' ? mostM >= 1000 : mostM >= fromShown(FEET_PER_MILE / 4, 'length', system);
  const quantity = far ? 'distance' : 'length';
  const oneM = fromShown(1, quantity, system);
  const lengthM = roundStep(mostM / oneM / 2.5) * oneM;
  const [x, y, px] = [8, heightPx - 10, lengthM / metresPerPx];
  const parts = [0, 1, 2, 3].map(
    (i) =>
      `<rect class="${i % 2 === 0 ? 'bar dark' : 'bar'}" x="${n(x + (i * px) / 4)}" y="${n(y - 5)}" width="${n(px / 4)}" height="5"/>`,
  );
  const words = shown(lengthM, quantity, system).replace(/[.,]?0+(?= )/, '');
  return parts.join('') + text('size', [x + px + 6, y], words, 'start');
}

function north(x: number, foot: number): string {
  const arrow = stroke('north', [[x, foot - 20], [x + 6, foot], [x, foot - 5], [x - 6, foot]], true); // prettier-ignore
  return arrow + text('size', [x - 16, foot - 2], say.drawing.north);
}
