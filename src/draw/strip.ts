import type { Along } from '../traverse/along.ts';
import type { Check } from '../traverse/assess.ts';
import { limiting } from '../traverse/assess.ts';
import type { Quantity, System } from '../units.ts';
import { rad, shown, shownShort, written } from '../units.ts';
import type { RungName } from '../vehicle/aids.ts';
import type { Point } from './ink.ts';
import { n as px, pathOf, stroke, strokes, text } from './ink.ts';
import { say } from '../words/words.ts';

/** What the margins along the line are drawn from: travel to the right. */
export interface StripView {
  readonly along: Along;
  /** One name for each curve of traction. */
  readonly rungs: readonly RungName[];
  /** The rung that is looked at. */
  readonly looked: number;
  /** All that is checked with it. */
  readonly checks: readonly Check[];
  /** Station of the vehicle, index into the record. */
  readonly n: number;
  readonly system: System;
  readonly widthPx: number;
  readonly heightPx: number;
}

export interface StripScale {
  readonly left: number;
  readonly right: number;
  readonly xOf: (stationM: number) => number;
  readonly stationOf: (x: number) => number;
}

const LEFT_PX = 46;
/** Room for names of rungs of up to so many letters, for each letter more, and for their numbers alone on a narrow page. */
const NAMES_PX = 188;
const NAME_LETTERS = 24;
const LETTER_PX = 9;
const NUMBERS_PX = 26;
const NARROW_PX = 520;
const BELOW_PX = 20;
const HEAD_PX = 16;
/** Shares of the height: traction, clearance, tip. */
const SHARES = [0.44, 0.28, 0.28];
/** Room for the check that no curve shows. */
const ALSO_PX = 24;
const MARK_APART_PX = 58;
/** Words of a scale nearer to its zero than this would lie in that. */
const SCALE_APART_PX = 12;

/** Values beyond these are drawn at the edge, in their SI unit; zero always lies inside. */
const RANGES: readonly (readonly [low: number, high: number])[] = [
  [-0.4, 0.6],
  [-0.15, 0.45],
  [-rad(10), rad(40)],
];

export function stripScale({ along, rungs, widthPx }: StripView): StripScale {
  const { stationM, length } = along.record;
  const left = LEFT_PX;
  const letters = Math.max(NAME_LETTERS, ...rungs.map((name) => say.rung[name].length));
  const namesPx = NAMES_PX + LETTER_PX * (letters - NAME_LETTERS);
  const right = widthPx - (widthPx < NARROW_PX ? NUMBERS_PX : namesPx);
  const from = stationM[0];
  const to = stationM[length - 1];
  return {
    left,
    right,
    xOf: (s) => left + ((s - from) / (to - from)) * (right - left),
    stationOf: (x) => Math.max(from, Math.min(to, from + ((x - left) / (right - left)) * (to - from))),
  };
}

interface Lane {
  readonly title: string;
  readonly quantity: Quantity;
  readonly curves: readonly Float64Array[];
  readonly looked: number;
  readonly checks: readonly Check['name'][];
}

/** Traction for each rung, clearance and tip margin along the line, each with its limit at zero, and the least of all else, as SVG text. */
export function stripSvg(view: StripView): string {
  const { along, rungs, looked, n, system, widthPx, heightPx } = view;
  const scale = stripScale(view);
  const lanes: Lane[] = [
    { title: say.drawing.traction, quantity: 'share', curves: along.traction, looked, checks: ['traction'] },
    {
      title: say.drawing.clearance,
      quantity: 'size',
      curves: [along.leastGapM],
      looked: 0,
      checks: ['approach', 'rampover', 'departure', 'belly', 'front differential', 'rear differential'],
    },
    {
      title: say.drawing.tip,
      quantity: 'angle',
      curves: [along.tipRad],
      looked: 0,
      checks: ['side tip', 'end tip'],
    },
  ];
  const x = scale.xOf(along.record.stationM[n]);
  /** Not through the words at the head of each lane. */
  const scrub: Point[][] = [];
  let top = 0;
  const parts = lanes.map((lane, i) => {
    const height = (heightPx - BELOW_PX - ALSO_PX) * SHARES[i];
    const head = top + HEAD_PX;
    const drawnLane = laneSvg(lane, RANGES[i], along, scale, top, height, system);
    const names = i === 0 ? rungNames(rungs, looked, scale, widthPx, head, height - HEAD_PX) : '';
    top += height;
    scrub.push([
      [x, head],
      [x, top],
    ]);
    return drawnLane + names;
  });
  const told = new Set(lanes.flatMap(({ checks }) => checks));
  const rest = view.checks.filter(({ name, margin }) => !told.has(name) && Number.isFinite(margin));
  parts.push(also(rest, scale, top, system));
  top += ALSO_PX;
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" class="drawing strip" viewBox="0 0 ${px(widthPx)} ${px(heightPx)}" ` +
    `width="${px(widthPx)}" height="${px(heightPx)}" fill="none" stroke="none">${parts.join('')}${stations(view, scale, top)}${strokes('scrub', scrub)}</svg>`
  );
}

function laneSvg(
  lane: Lane,
  [low, high]: readonly [number, number],
  along: Along,
  scale: StripScale,
  topPx: number,
  heightPx: number,
  system: System,
): string {
  const { left, right } = scale;
  const top = topPx + HEAD_PX;
  const bottom = topPx + heightPx - 6;
  const yOf = (value: number) =>
    bottom - ((Math.max(low, Math.min(high, value)) - low) / (high - low)) * (bottom - top);
  const zero = yOf(0);
  const { stationM } = along.record;
  const lines = lane.curves.map((curve) => piecesOf(curve, stationM, scale, yOf));
  const lacks = lines[lane.looked]
    .map((piece) => piece.map(([x, y]): Point => [x, Math.max(zero, y)]))
    .map((piece) =>
      stroke('lacks', [...piece, [piece[piece.length - 1][0], zero], [piece[0][0], zero]], true),
    );
  const others = lines.map((pieces, i) =>
    i === lane.looked
      ? ''
      : `<path class="margin rung-${i}" d="${pieces.map((piece) => pathOf(piece)).join('')}"/>`,
  );
  const own = `<path class="margin looked" d="${lines[lane.looked].map((piece) => pathOf(piece)).join('')}"/>`;
  const isApart = (value: number) => value === 0 || Math.abs(yOf(value) - zero) >= SCALE_APART_PX;
  const ends = [low, 0, high]
    .filter(isApart)
    .map((value) => text('scale', [left - 5, yOf(value) + 4], axisText(value, lane.quantity, system), 'end'));
  return [
    stroke(
      'beyond',
      [
        [left, zero],
        [right, zero],
        [right, bottom],
        [left, bottom],
      ],
      true,
    ),
    stroke('axis', [
      [left, top],
      [left, bottom],
    ]),
    ...lacks,
    ...others,
    stroke('limit', [
      [left, zero],
      [right, zero],
    ]),
    own,
    ...ends,
    text('title', [left, topPx + 12], lane.title, 'start'),
    worst(lane, along, scale, yOf, topPx, system),
  ].join('');
}

function axisText(value: number, quantity: Quantity, system: System): string {
  if (value === 0) return '0';
  return quantity === 'share' ? written(String(value)) : shownShort(value, quantity, system);
}

/** The least margin of a lane, marked on the curve, and its cause as a driver says it. */
function worst(
  lane: Lane,
  along: Along,
  scale: StripScale,
  yOf: (value: number) => number,
  topPx: number,
  system: System,
): string {
  const curve = lane.curves[lane.looked];
  let at = -1;
  for (let i = 0; i < curve.length; i++) if (!Number.isNaN(curve[i]) && !(curve[i] >= curve[at])) at = i;
  const checks = along.limits.filter(({ name }) => lane.checks.includes(name));
  if (at < 0 || checks.length === 0)
    return text('cause', [scale.right, topPx + 12], say.drawing.notKnown, 'end');
  const check = checks.reduce((least, next) => (next.margin < least.margin ? next : least));
  const why = lane.quantity === 'share' ? check.cause : say.check[check.name];
  const mark = least(check, [scale.xOf(along.record.stationM[at]), yOf(curve[at])]);
  return mark + cause(check, lane.quantity, why, scale, topPx, system);
}

/** The nearest to its limit of the checks that have no lane, such as holding on a side slope, with its station. */
function also(checks: readonly Check[], scale: StripScale, topPx: number, system: System): string {
  const title = text('title', [scale.left, topPx + 12], say.drawing.also, 'start');
  if (checks.length === 0)
    return title + text('cause', [scale.right, topPx + 12], say.drawing.nothingElse, 'end');
  const check = limiting(checks);
  const mark = Number.isFinite(check.stationM)
    ? least(check, [Math.max(scale.left, Math.min(scale.right, scale.xOf(check.stationM))), topPx + 13])
    : '';
  return mark + title + cause(check, check.quantity, say.check[check.name], scale, topPx, system);
}

/** A station that limits. */
function least({ margin }: Check, [x, y]: Point): string {
  return stroke(
    margin < 0 ? 'least short' : 'least',
    [
      [x, y + 2],
      [x + 5, y + 10],
      [x - 5, y + 10],
    ],
    true,
  );
}

/** By how much a check is met or missed, and why, at the head of its lane. */
function cause(
  check: Check,
  quantity: Quantity,
  why: string,
  scale: StripScale,
  topPx: number,
  system: System,
): string {
  const size =
    quantity === 'share'
      ? written(Math.abs(check.margin).toFixed(2))
      : shown(Math.abs(check.margin), quantity, system);
  const words = check.margin < 0 ? say.drawing.short(check.cause, size) : say.drawing.least(size, why);
  return text(check.margin < 0 ? 'cause short' : 'cause', [scale.right, topPx + 12], words, 'end');
}

/** Stretches of a curve without a gap, one point a bin of some 3 pixels: the least of each bin, so that no dip is lost. */
function piecesOf(
  curve: Float64Array,
  stationM: Float64Array,
  scale: StripScale,
  yOf: (value: number) => number,
): Point[][] {
  const bin = Math.max(1, Math.floor((3 * curve.length) / (scale.right - scale.left)));
  const pieces: Point[][] = [];
  let piece: Point[] = [];
  for (let i = 0; i < curve.length; i += bin) {
    let least = i;
    for (let k = i; k < Math.min(curve.length, i + bin); k++)
      if (Number.isNaN(curve[k]) || curve[k] < curve[least]) least = k;
    if (Number.isNaN(curve[least])) {
      if (piece.length > 1) pieces.push(piece);
      piece = [];
      continue;
    }
    piece.push([scale.xOf(stationM[least]), yOf(curve[least])]);
  }
  if (piece.length > 1) pieces.push(piece);
  return pieces;
}

function rungNames(
  rungs: readonly RungName[],
  looked: number,
  { right }: StripScale,
  widthPx: number,
  top: number,
  height: number,
): string {
  const apart = Math.min(16, height / Math.max(1, rungs.length));
  return rungs
    .map((name, i) => {
      const y = top + (i + 0.5) * apart;
      const words = widthPx < NARROW_PX ? String(i + 1) : `${i + 1} ${say.rung[name]}`;
      return (
        stroke(i === looked ? 'margin looked' : `margin rung-${i}`, [
          [right + 5, y],
          [right + 17, y],
        ]) + text(i === looked ? 'rung looked' : 'rung', [right + 20, y + 4], words, 'start')
      );
    })
    .join('');
}

function stations({ along, system }: StripView, { xOf, left, right }: StripScale, top: number): string {
  const { stationM, length } = along.record;
  const unitM = system === 'metric' ? 1 : 0.3048;
  const pxPerUnit = ((right - left) / (stationM[length - 1] - stationM[0])) * unitM;
  const step = [1, 2, 5, 10, 20, 50].find((one) => one * pxPerUnit >= MARK_APART_PX) ?? 100;
  const marks: string[] = [];
  for (let k = Math.ceil(stationM[0] / unitM / step) * step; k * unitM <= stationM[length - 1]; k += step) {
    const x = xOf(k * unitM);
    const words = k === 0 ? say.drawing.pin : shownShort(k * unitM, 'length', system);
    marks.push(
      stroke('tick', [
        [x, top],
        [x, top + 4],
      ]),
      text('station', [x, top + 15], words),
    );
  }
  return marks.join('');
}
