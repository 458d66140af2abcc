import { lastAtOrBefore } from '../route/curve.ts';
import type { SlopeProfile, SlopeSegment } from '../route/slope.ts';
import { slopeAt } from '../route/slope.ts';
import { STEEPNESS, steepnessOf } from '../route/steepness.ts';
import type { System } from '../units.ts';
import { fromShown, unitLabel, written } from '../units.ts';
import type { Point } from './ink.ts';
import { escaped, n, stroke, strokes, text } from './ink.ts';
import { say } from '../words/words.ts';

/** What stands on the track and is flagged on the long section. */
export interface Flagged {
  /** In order of travel. */
  readonly number: number;
  readonly name: string;
  readonly stationM: number;
  readonly chosen: boolean;
}

/** What a long section is drawn from. */
export interface ProfileView {
  readonly profile: SlopeProfile;
  /** The elevations that slopes are not read off, drawn dotted to check by; absent where there are none. */
  readonly other?: SlopeProfile | null;
  readonly flags: readonly Flagged[];
  /** Stations at which the recording broke off and began anew elsewhere. */
  readonly gapsM: readonly number[];
  readonly reversed: boolean;
  readonly system: System;
  readonly widthPx: number;
  readonly heightPx: number;
}

/** Where stations and elevations come to lie, in pixels. */
export interface ProfileScale {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly fromM: number;
  readonly toM: number;
  readonly xOf: (stationM: number) => number;
  readonly yOf: (elevationM: number) => number;
  /** Kept within the track. */
  readonly stationOf: (x: number) => number;
  /** How many times heights are drawn taller than lengths; 1 is true to scale. */
  readonly exaggeration: number;
  /** The lowest and highest elevation, NaN where none is known. */
  readonly lowM: number;
  readonly highM: number;
}

const MARGIN = { left: 50, right: 18, bottom: 38 };
const FLAG = { width: 20, height: 17, rowPx: 19, rows: 2, topPx: 3 };
/** Heights of less than this range are not blown up to fill the drawing. */
const LEAST_RANGE_M = 30;
/** Share of the height that stays clear under the lowest ground. */
const UNDER = 0.12;
const APART_PX = { across: 84, up: 20 };

export function profileScale({ profile, other, widthPx, heightPx }: ProfileView): ProfileScale {
  const { stationM, length } = profile;
  const fromM = length > 0 ? stationM[0] : 0;
  const toM = length > 0 ? Math.max(stationM[length - 1], fromM + 1) : 1;
  let lowM = Infinity;
  let highM = -Infinity;
  for (const { smoothedM } of other ? [profile, other] : [profile])
    for (const z of smoothedM) {
      if (z < lowM) lowM = z;
      if (z > highM) highM = z;
    }
  const known = lowM <= highM;
  const left = MARGIN.left;
  const right = Math.max(widthPx - MARGIN.right, left + 10);
  const top = FLAG.topPx + FLAG.rows * FLAG.rowPx + 6;
  const bottom = Math.max(heightPx - MARGIN.bottom, top + 10);
  const rangeM = known ? Math.max(highM - lowM, LEAST_RANGE_M) : LEAST_RANGE_M;
  const middleM = known ? (lowM + highM) / 2 : 0;
  const downPx = (bottom - top) * (1 - UNDER);
  const acrossPx = (right - left) / (toM - fromM);
  const upPx = downPx / rangeM;
  return {
    left,
    right,
    top,
    bottom,
    fromM,
    toM,
    xOf: (station) => left + (station - fromM) * acrossPx,
    yOf: (elevation) => top + downPx / 2 - (elevation - middleM) * upPx,
    stationOf: (x) => Math.min(Math.max(fromM, fromM + (x - left) / acrossPx), toM),
    exaggeration: upPx / acrossPx,
    lowM: known ? lowM : NaN,
    highM: known ? highM : NaN,
  };
}

/**
 * The long section of a track as SVG text: elevation over station in the recorded direction, ground coloured by slope,
 * broken at gaps and where elevation is not known.
 */
export function profileSvg(view: ProfileView): string {
  const scale = profileScale(view);
  const { profile, widthPx, heightPx } = view;
  const parts = [
    elevationAxis(view, scale),
    ...profile.segments.map((segment) =>
      segment.known ? slopeOfGround(profile, segment, scale) : unknown(segment, scale),
    ),
    ...runsOf(profile, scale).map((run) => stroke('surface', run)),
    view.other ? strokes('other', runsOf(view.other, scale)) : '',
    stationAxis(view, scale),
    ...view.gapsM.map((stationM) => gap(stationM, scale)),
    ...flags(view, scale),
    note(view, scale),
  ];
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" class="drawing profile" viewBox="0 0 ${n(widthPx)} ${n(heightPx)}" ` +
    `width="${n(widthPx)}" height="${n(heightPx)}" fill="none" stroke="none">${parts.join('')}</svg>`
  );
}

/** The ground under one segment, in the colour of its slope. */
function slopeOfGround(
  profile: SlopeProfile,
  { fromM, toM, slopeRad }: SlopeSegment,
  scale: ProfileScale,
): string {
  const line = curveBetween(profile, fromM, toM, scale);
  if (line.length < 2) return '';
  const down: Point[] = [
    [line[line.length - 1][0], scale.bottom],
    [line[0][0], scale.bottom],
  ];
  const d = [...line, ...down].map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${n(x)} ${n(y)}`).join('');
  return `<path class="slope" shape-rendering="crispEdges" fill="${STEEPNESS[steepnessOf(slopeRad)].colour}" d="${d}Z"/>`;
}

function unknown({ fromM, toM }: SlopeSegment, scale: ProfileScale): string {
  const x0 = scale.xOf(fromM);
  const x1 = scale.xOf(toM);
  const { top, bottom } = scale;
  const base = stroke('unknown', [
    [x0, bottom - 2],
    [x1, bottom - 2],
  ]);
  const sides = [x0, x1].map((x) => stroke('level', [[x, top], [x, bottom]])).join(''); // prettier-ignore
  const words = x1 - x0 > 120 ? say.drawing.elevationNotKnown : x1 - x0 > 22 ? '?' : '';
  return base + sides + (words && text('unknown-words', [(x0 + x1) / 2, (top + bottom) / 2 + 4], words));
}

function gap(stationM: number, { xOf, top, bottom }: ProfileScale): string {
  const x = xOf(stationM);
  const sides = [-2, 2].map((by) => stroke('gap', [[x + by, top], [x + by, bottom]])).join(''); // prettier-ignore
  return `<g class="gap-here"><title>${say.drawing.notRecorded}</title>${sides}${text('small', [x + 5, bottom - 6], say.drawing.gap, 'start')}</g>`;
}

/** The smoothed curve, one polyline a stretch without a break. */
function runsOf(profile: SlopeProfile, scale: ProfileScale): Point[][] {
  const runs: Point[][] = [];
  let run: Point[] = [];
  for (let i = 0; i < profile.length; i++) {
    const z = profile.smoothedM[i];
    if (Number.isNaN(z)) {
      if (run.length > 1) runs.push(run);
      run = [];
    } else {
      run.push([scale.xOf(profile.stationM[i]), scale.yOf(z)]);
    }
  }
  if (run.length > 1) runs.push(run);
  return runs.map(thinned);
}

/** The curve between two stations that are entries of the profile, on the one side of a break. */
function curveBetween(profile: SlopeProfile, fromM: number, toM: number, scale: ProfileScale): Point[] {
  const { length, stationM, smoothedM } = profile;
  let first = Math.max(0, lastAtOrBefore(stationM, fromM));
  while (first > 0 && stationM[first - 1] === fromM) first--;
  let line: Point[] = [];
  for (let i = first; i < length && stationM[i] <= toM; i++) {
    if (!Number.isNaN(smoothedM[i])) line.push([scale.xOf(stationM[i]), scale.yOf(smoothedM[i])]);
    else if (line.length > 1) break;
    else line = [];
  }
  return thinned(line);
}

/** Without points that lie within a pixel of the one before; the ends stay. */
function thinned(line: readonly Point[]): Point[] {
  let lastX = -Infinity;
  return line.filter(([x], i) => {
    if (i < line.length - 1 && x - lastX < 1) return false;
    lastX = x;
    return true;
  });
}

function elevationAxis({ system }: ProfileView, scale: ProfileScale): string {
  const { left, right, top, bottom, lowM, yOf } = scale;
  if (Number.isNaN(lowM)) return '';
  const oneM = fromShown(1, 'length', system);
  const pxPerUnit = (yOf(0) - yOf(1)) * oneM;
  const step = roundStep(APART_PX.up / pxPerUnit);
  const parts: string[] = [];
  const least = Math.ceil((lowM - (bottom - yOf(lowM)) / (yOf(0) - yOf(1))) / oneM / step) * step;
  for (let value = least; yOf(value * oneM) >= top; value += step) {
    const y = yOf(value * oneM);
    if (y > bottom - 4) continue;
    parts.push(stroke('rule', [[left, y], [right, y]]), text('value', [left - 6, y + 4], written(String(value)), 'end')); // prettier-ignore
  }
  return parts.join('') + text('unit', [left - 6, top - 8], unitLabel('length', system), 'end');
}

function stationAxis({ system }: ProfileView, scale: ProfileScale): string {
  const { left, right, bottom, fromM, toM, xOf } = scale;
  const oneM = fromShown(1, 'distance', system);
  const step = roundStep((APART_PX.across * (toM - fromM)) / (right - left) / oneM);
  const digits = Math.max(0, -Math.floor(Math.log10(step)));
  const parts = [stroke('tick', [[left, bottom], [right, bottom]])]; // prettier-ignore
  for (let i = Math.ceil(fromM / oneM / step); i * step * oneM <= toM; i++) {
    const x = xOf(i * step * oneM);
    parts.push(stroke('tick', [[x, bottom], [x, bottom + 4]])); // prettier-ignore
    if (x < right - 40) parts.push(text('value', [x, bottom + 17], written((i * step).toFixed(digits))));
  }
  parts.push(text('unit', [right, bottom + 17], unitLabel('distance', system), 'end'));
  return parts.join('');
}

/** Numbers over the obstacles; where two stand close, the second goes into the row below. */
function flags({ profile, flags: all }: ProfileView, scale: ProfileScale): string[] {
  const ends = new Array<number>(FLAG.rows).fill(-Infinity);
  return [...all]
    .sort((a, b) => a.stationM - b.stationM)
    .map(({ number, name, stationM, chosen }) => {
      const x = scale.xOf(stationM);
      const free = ends.findIndex((end) => x - FLAG.width / 2 > end + 2);
      const row = free >= 0 ? free : ends.indexOf(Math.min(...ends));
      ends[row] = x + FLAG.width / 2;
      const top = FLAG.topPx + row * FLAG.rowPx;
      const { smoothedM } = slopeAt(profile, stationM);
      const foot = Number.isNaN(smoothedM) ? scale.bottom : scale.yOf(smoothedM);
      const box = `<rect class="flag" x="${n(x - FLAG.width / 2)}" y="${n(top)}" width="${FLAG.width}" height="${FLAG.height}"/>`;
      return (
        `<g class="obstacle${chosen ? ' chosen' : ''}"><title>${escaped(`${number} ${name}`)}</title>` +
        `${stroke('post', [[x, top + FLAG.height], [x, foot]])}${box}${text('flag-number', [x, top + 13], String(number))}</g>` // prettier-ignore
      );
    });
}

/** How the drawing departs from the ground, and which way the convoy goes. */
function note({ reversed, other }: ProfileView, scale: ProfileScale): string {
  const factor = scale.exaggeration;
  const times = written(factor < 10 ? factor.toFixed(1) : factor.toFixed(0));
  const travel = reversed ? say.drawing.travelLeft : say.drawing.travelRight;
  const heights = Number.isNaN(scale.lowM) ? say.drawing.noElevation : say.drawing.heightsTimes(times);
  const dotted = other ? [say.drawing.dotted[other.from]] : [];
  return text('note', [scale.right, scale.bottom + 33], [...dotted, travel, heights].join(' · '), 'end');
}

/** The smallest of 1, 2, 5 times a power of ten that is not below a number. */
export function roundStep(least: number): number {
  const power = 10 ** Math.floor(Math.log10(least));
  const lead = least / power;
  return (lead <= 1 ? 1 : lead <= 2 ? 2 : lead <= 5 ? 5 : 10) * power;
}
