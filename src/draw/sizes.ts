import type { NumberField } from '../field.ts';
import type { Feature } from '../terrain/feature.ts';
import { featureFields, heightM } from '../terrain/feature.ts';
import { reversedFeature } from '../terrain/reverse.ts';
import type { System } from '../units.ts';
import { shown } from '../units.ts';
import type { Point } from './ink.ts';
import { dimension, text } from './ink.ts';
import { extentOf } from './extent.ts';
import type { Here, Size, SizeView, Spot, Way } from './sizeTable.ts';
import { SIZES } from './sizeTable.ts';

/** One drawing of the ground, as travelled. */
export interface SizesOn {
  readonly view: SizeView;
  readonly features: readonly Feature[];
  /** −1 where travel is against the recorded direction, 1 otherwise. */
  readonly turned: 1 | -1;
  /** Where the drawing looks; of several (the wheel paths of a side view) the first that meets a shape counts. */
  readonly heres: readonly Here[];
  /** From the plane, x along the line, y left of it and z normal to it, to pixels. */
  readonly at: (xM: number, yM: number, zM: number) => Point;
  readonly pxPerM: number;
  readonly widthPx: number;
  readonly heightPx: number;
}

/** One size of one shape, where a drawing shows it. */
export interface SizeMark {
  /** Index of its shape. */
  readonly feature: number;
  readonly name: string;
  readonly field: NumberField;
  /** As recorded. */
  readonly value: number;
  /** Whether it is the most telling of its shape in this drawing. */
  readonly first: boolean;
  readonly towards: 'up' | 'down' | 'left' | 'right';
  /** Where its moving end would be with another value, as recorded. */
  readonly placeOf: (value: number) => Point;
  /** The other end of its dimension line, or null. */
  readonly from: Point | null;
}

/** A mark that moves less than this share of its size (or, for an angle, of a metre a radian) cannot be read or held. */
const LEAST_MOVE = 0.1;

/**
 * The sizes that a drawing shows, of every shape that it meets. A shape whose most telling size moves nothing, as a rut
 * within a deeper one, is not to be seen.
 */
export function sizesOn(on: SizesOn): SizeMark[] {
  return on.features.flatMap((feature, i) => {
    const recorded = on.turned > 0 ? feature : reversedFeature(feature);
    const here = hereOf(on, recorded);
    if (here === null) return [];
    const [first, ...rest] = (SIZES[feature.kind] as readonly Size<Feature>[])
      .filter(({ view }) => view === on.view)
      .map((size) => markOf(on, i, recorded, here, size));
    if (first === undefined || !moves(first, on.pxPerM)) return [];
    const all = [{ ...first, first: true }, ...rest.filter((mark) => moves(mark, on.pxPerM))];
    return all.filter(({ placeOf, value }) => isInside(placeOf(value), on));
  });
}

/** So many sizes can be read beside one another; of more than that, the most telling of each shape is. */
const READABLE = 5;

/** The sizes that have their dimension lines: those of the shape that is looked at, or of all where none is. */
export function dimensioned(marks: readonly SizeMark[], shape: number | null): SizeMark[] {
  if (shape !== null) return marks.filter(({ feature }) => feature === shape);
  return marks.length <= READABLE ? [...marks] : marks.filter(({ first }) => first);
}

/** Where, as recorded, a drawing meets a shape; null where it passes by. */
function hereOf({ view, turned, heres }: SizesOn, recorded: Feature): Here | null {
  const all = heres.map(({ xM, yM }) => ({ xM: turned * xM, yM: turned * yM }));
  if (view === 'plan') return all[0];
  const met = all.find((here) => {
    const { fromM, toM, rightM, leftM } = extentOf(recorded, here.yM);
    return view === 'across'
      ? here.xM > fromM && here.xM < toM
      : here.yM > rightM && here.yM < leftM && recorded.kind !== 'bank';
  });
  return met ?? null;
}

function markOf(on: SizesOn, i: number, recorded: Feature, here: Here, size: Size<Feature>): SizeMark {
  const { features, turned, at, view } = on;
  const name = size.name as string;
  const way = typeof size.way === 'function' ? size.way(recorded) : size.way;
  const field = (featureFields[recorded.kind] as Readonly<Record<string, NumberField>>)[name];
  const point = (spotOf: Size<Feature>['to'], feature: Feature): Point => {
    const spot = spotOf(feature, here, turned);
    const ground = features.with(i, turned > 0 ? feature : reversedFeature(feature));
    return placed(spot, ground, turned, at);
  };
  return {
    feature: i,
    name,
    field,
    value: (recorded as unknown as Readonly<Record<string, number>>)[name],
    first: false,
    towards: TOWARDS[view][turned > 0 ? way : OPPOSITE[way]],
    placeOf: (value) => point(size.to, { ...recorded, [name]: value }),
    from: size.from === undefined ? null : point(size.from, recorded),
  };
}

function placed(spot: Spot, features: readonly Feature[], turned: 1 | -1, at: SizesOn['at']): Point {
  const [xM, yM] = [turned * spot.xM, turned * spot.yM];
  return at(xM, yM, spot.levelM ?? heightM(features, xM, yM) + spot.overM);
}

/** Change of place with the value, pixels for one SI unit, by a small step of the value. */
export function movePerUnit({ placeOf }: Pick<SizeMark, 'placeOf'>, value: number): Point {
  const by = 1e-4;
  const [x0, y0] = placeOf(value - by);
  const [x1, y1] = placeOf(value + by);
  return [(x1 - x0) / (2 * by), (y1 - y0) / (2 * by)];
}

function isInside([x, y]: Point, { widthPx, heightPx }: SizesOn): boolean {
  return x >= 0 && x <= widthPx && y >= 0 && y <= heightPx;
}

function moves(mark: SizeMark, pxPerM: number): boolean {
  return Math.hypot(...movePerUnit(mark, mark.value)) > LEAST_MOVE * pxPerM;
}

/** The value at which a mark comes nearest to a point, by a few steps of the Gauss-Newton method from `start`. */
export function valueNear(mark: Pick<SizeMark, 'placeOf' | 'field'>, [x, y]: Point, start: number): number {
  const { min, max } = mark.field;
  let value = start;
  for (let i = 0; i < 6; i++) {
    const [px, py] = mark.placeOf(value);
    const [mx, my] = movePerUnit(mark, value);
    const square = mx * mx + my * my;
    if (!(square > 0)) break;
    value = Math.max(min, Math.min(max, value + ((x - px) * mx + (y - py) * my) / square));
  }
  return value;
}

const OPPOSITE: Readonly<Record<Way, Way>> = {
  up: 'up',
  down: 'down',
  ahead: 'behind',
  behind: 'ahead',
  left: 'right',
  right: 'left',
};

/** The page's sides, as travelled: a cut is seen along travel, a side view from the right, a plan with travel up. */
const TOWARDS: Readonly<Record<SizeView, Readonly<Record<Way, SizeMark['towards']>>>> = {
  across: { up: 'up', down: 'down', ahead: 'up', behind: 'down', left: 'left', right: 'right' },
  side: { up: 'up', down: 'down', ahead: 'right', behind: 'left', left: 'up', right: 'down' },
  plan: { up: 'up', down: 'down', ahead: 'up', behind: 'down', left: 'left', right: 'right' },
};

/** The words of a dimension line shorter than this stand beside the handle at its end. */
const SHORT_PX = 30;

/** Dimension lines, and angles beside their edges, as SVG text. */
export function sizesSvg(marks: readonly SizeMark[], system: System): string {
  return marks
    .map(({ from, placeOf, value, field, towards }) => {
      const to = placeOf(value);
      const words = shown(Math.abs(value), field.quantity, system);
      if (field.quantity === 'angle') {
        const [dx, anchor] = towards === 'left' ? ([-20, 'end'] as const) : ([20, 'start'] as const);
        return text('size', [to[0] + dx, to[1] + 4], words, anchor);
      }
      if (from === null || Math.hypot(to[0] - from[0], to[1] - from[1]) < 1) return '';
      const isShort = Math.abs(to[1] - from[1]) < SHORT_PX && Math.abs(to[0] - from[0]) < SHORT_PX;
      if (!isShort || towards === 'left' || towards === 'right') return dimension(from, to, words, 6);
      const beside: Point = [to[0] + 12, to[1] + (towards === 'up' ? -6 : 14)];
      return dimension(from, to, '', 0) + text('size', beside, words, 'start');
    })
    .join('');
}
