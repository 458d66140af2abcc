import type { Feature } from '../terrain/feature.ts';
import type { Stretch } from '../terrain/obstacle.ts';
import type { System } from '../units.ts';
import type { Point } from './ink.ts';
import { stroke, strokes, text } from './ink.ts';
import type { SizeMark } from './sizes.ts';
import { dimensioned, sizesOn, sizesSvg } from './sizes.ts';
import type { Stood } from './stood.ts';
import { stationOf } from './stood.ts';
import type { Upright } from './upright.ts';
import { acrossOf, drawn, stationMarks, STATIONS_PX, uprightOf } from './upright.ts';
import { say } from '../words/words.ts';

/** What the obstacle from above is drawn from: travel up the page. */
export interface PlanView {
  /** As travelled. */
  readonly stretch: Stretch;
  readonly offsetM: number;
  readonly stood: Stood;
  readonly other: Stood | null;
  /** Index of the shape whose sizes are dimensioned; null where none is looked at. */
  readonly sized: number | null;
  readonly system: System;
  readonly widthPx: number;
  readonly mostPx: number;
}

/** From the plane, x along the line from the pin and y left of it, to pixels. */
type At = (x: number, y: number) => Point;

export interface PlanFrame extends Upright {
  readonly at: At;
  readonly widthPx: number;
}

export function planFrame({ stretch, stood, widthPx, mostPx }: PlanView): PlanFrame {
  const upright = uprightOf(stretch, stood.values, widthPx, mostPx);
  const [right, left] = acrossOf(stretch);
  const middle = (left + right) / 2;
  return {
    ...upright,
    widthPx,
    at: (x, y) => [(widthPx + STATIONS_PX) / 2 - (y - middle) * upright.pxPerM, upright.yOf(x)],
  };
}

/** The obstacle from above, true to scale, as SVG text: footprints, corridor, wheel paths, and who stands where. */
export function planSvg(view: PlanView, frame = planFrame(view)): string {
  const { at, fromM, toM, heightPx } = frame;
  const { stretch, stood, offsetM, system, widthPx } = view;
  const { corridor } = stretch;
  const [right, left] = acrossOf(stretch);
  const end = stretch.lengthM / 2;
  const track = stood.along.chassis.front.trackWidthM / 2;
  const half = stood.along.chassis.wheelbaseM / 2;
  const path = (y: number) => stroke('wheel-path', [at(-end - half, y), at(end + half, y)]);
  const parts = [
    stroke('ground', [at(fromM, left), at(toM, left), at(toM, right), at(fromM, right)], true),
    ...stretch.features.map((feature) => footprint(feature, frame, [right, left])),
    side(corridor.leftM, corridor.leftBound, 1, frame, left),
    side(-corridor.rightM, corridor.rightBound, -1, frame, -right),
    stroke('extent', [at(-end, left), at(-end, right)]),
    stroke('extent', [at(end, left), at(end, right)]),
    stroke('centre', [at(fromM, 0), at(toM, 0)]),
    path(offsetM + track),
    path(offsetM - track),
    offsetM === 0 ? '' : stroke('offset', [at(fromM, offsetM), at(toM, offsetM)]),
    view.other ? vehicle(view.other, offsetM, at, 'vehicle other') : '',
    vehicle(stood, offsetM, at, 'vehicle'),
    sizesSvg(dimensioned(planSizes(view, frame, 1), view.sized), system),
    stationMarks(frame, 0, system),
    text('title', [(widthPx + STATIONS_PX) / 2, 14], say.drawing.fromAbove),
    text('travel-arrow', [(widthPx + STATIONS_PX) / 2, 32], say.drawing.travelUp),
  ];
  return drawn('plan', widthPx, heightPx, parts);
}

/** The sizes that it shows, as recorded: what handles over it are made of. `turned` is −1 against that direction. */
export function planSizes(view: PlanView, frame: PlanFrame, turned: 1 | -1): SizeMark[] {
  const { at, pxPerM, widthPx, heightPx } = frame;
  return sizesOn({
    view: 'plan',
    features: view.stretch.features,
    turned,
    heres: [{ xM: stationOf(view.stood), yM: view.offsetM }],
    at: (x, y) => at(x, y),
    pxPerM,
    widthPx,
    heightPx,
  });
}

function vehicle({ values: v, along, n }: Stood, offsetM: number, at: At, className: string): string {
  const x0 = stationOf({ values: v, along, n });
  const half = v.wheelbaseM / 2;
  const box = (x: number, y: number, length: number, width: number): Point[] => [
    at(x - length / 2, y - width / 2),
    at(x + length / 2, y - width / 2),
    at(x + length / 2, y + width / 2),
    at(x - length / 2, y + width / 2),
  ];
  const front = x0 + half + v.frontOverhangM;
  const rear = x0 - half - v.rearOverhangM;
  const wide = v.widthM / 2;
  const corner = 0.25;
  const body: Point[] = [
    at(rear, offsetM + wide),
    at(front - corner, offsetM + wide),
    at(front, offsetM + wide - corner),
    at(front, offsetM - wide + corner),
    at(front - corner, offsetM - wide),
    at(rear, offsetM - wide),
  ];
  const wheels = [0, 1, 2, 3].map((i) => {
    const axle = i < 2 ? along.chassis.front : along.chassis.rear;
    const y = offsetM + ((i % 2 === 0 ? 1 : -1) * axle.trackWidthM) / 2;
    const lifted = along.record.standing[n] === 0 && along.record.loadN[4 * n + i] <= 0;
    return stroke(
      lifted ? 'tyre lifted' : 'tyre',
      box(x0 + (i < 2 ? half : -half), y, v.tyreDiameterM * 0.8, v.tyreSectionM),
      true,
    );
  });
  return `<g class="${className}">${wheels.join('')}${stroke('body', body, true)}</g>`;
}

/** What bounds the way: a line, with ticks towards it where it is a wall, away where the ground falls. */
function side(yM: number, bound: string, sign: 1 | -1, { at, fromM, toM, pxPerM }: PlanFrame, mostM: number) {
  if (Math.abs(yM) > mostM) return '';
  const line = stroke(bound === 'open' ? 'bound open' : 'bound', [at(fromM, yM), at(toM, yM)]);
  if (bound === 'open') return line;
  const apart = 11 / pxPerM;
  const ticks: Point[][] = [];
  for (let x = fromM + apart / 2; x < toM; x += apart) {
    const [px, py] = at(x, yM);
    const out = -sign * 6;
    ticks.push(
      bound === 'trees'
        ? [
            [px + out - 3, py],
            [px + out, py - 4],
            [px + out + 3, py],
            [px + out, py + 4],
          ]
        : [
            [px, py],
            [px + out, py - (bound === 'drop' ? 0 : 5)],
          ],
    );
  }
  return line + strokes('bound', ticks, bound === 'trees');
}

function footprint(feature: Feature, frame: PlanFrame, [right, left]: readonly [number, number]): string {
  const { at } = frame;
  /** A band across, square to a line through (x, 0) turned by `skew`. */
  const band = (x: number, acrossM: number, skew: number): Point[] => {
    const half = acrossM / 2 / Math.cos(skew);
    const edge = (y: number, off: number) => at(x + y * Math.tan(skew) + off, y);
    return [edge(left, half), edge(right, half), edge(right, -half), edge(left, -half)];
  };
  const oval = (x: number, y: number, lengthM: number, widthM: number): Point[] =>
    Array.from({ length: 28 }, (_, i) => {
      const a = (i / 28) * 2 * Math.PI;
      return at(x + (lengthM / 2) * Math.cos(a), y + (widthM / 2) * Math.sin(a));
    });
  const area = (className: string, fromM: number, toM: number) =>
    stroke(className, [at(fromM, left), at(toM, left), at(toM, right), at(fromM, right)], true);
  switch (feature.kind) {
    case 'rut': {
      const { centreYM: y, widthM, fromM, toM, runM } = feature;
      const run = Math.min(runM, (toM - fromM) / 2);
      const w = widthM / 2;
      const outline = [
        at(fromM, y),
        at(fromM + run, y + w),
        at(toM - run, y + w),
        at(toM, y),
        at(toM - run, y - w),
        at(fromM + run, y - w),
      ];
      return stroke('cut', outline, true) + rungs(fromM + run, toM - run, y, w, frame);
    }
    case 'hole': {
      const { xM, yM, lengthM, widthM } = feature;
      return (
        stroke('cut', oval(xM, yM, lengthM, widthM), true) +
        stroke('contour', oval(xM, yM, lengthM * 0.6, widthM * 0.6), true)
      );
    }
    case 'ditch':
      return stroke('cut', band(feature.xM, feature.widthM, feature.skewRad), true);
    case 'hump':
      return (
        stroke('bump', band(feature.xM, feature.lengthM, feature.skewRad), true) +
        stroke('contour', band(feature.xM, feature.lengthM / 3, feature.skewRad), true)
      );
    case 'ledge': {
      const faceM = Math.abs(feature.riseM) / Math.tan(feature.faceRad);
      const shape = band(feature.xM + faceM / 2, faceM, feature.skewRad);
      const [farLeft, farRight, nearRight, nearLeft] = shape;
      const upper = feature.riseM >= 0 ? [farLeft, farRight] : [nearLeft, nearRight];
      return stroke('cut', shape, true) + stroke('edge', upper) + teeth(upper, feature.riseM >= 0 ? 1 : -1);
    }
    case 'log': {
      const edge = (y: number, off: number) => at(feature.xM + y * Math.tan(feature.skewRad) + off, y);
      const half = feature.diameterM / 2 / Math.cos(feature.skewRad);
      const to = Math.min(left, feature.toYM);
      const from = Math.max(right, feature.fromYM);
      return stroke('bump', [edge(to, half), edge(from, half), edge(from, -half), edge(to, -half)], true);
    }
    case 'rock':
      return (
        stroke('bump', oval(feature.xM, feature.yM, feature.lengthM, feature.widthM), true) +
        stroke('contour', oval(feature.xM, feature.yM, feature.lengthM * 0.5, feature.widthM * 0.5), true)
      );
    case 'water':
      return area('water', feature.fromM, feature.toM);
    case 'softPatch':
      return area('soft', feature.fromM, feature.toM);
    case 'bank':
      return '';
  }
}

/** Short strokes across a rut, as cut ground is hatched. */
function rungs(fromM: number, toM: number, y: number, w: number, { at, pxPerM }: PlanFrame): string {
  const apart = 8 / pxPerM;
  let d = '';
  for (let x = fromM + apart / 2; x < toM; x += apart) {
    const [ax, ay] = at(x, y + w);
    const [bx, by] = at(x + w, y - w);
    d += `M${ax.toFixed(1)} ${ay.toFixed(1)}L${bx.toFixed(1)} ${by.toFixed(1)}`;
  }
  return `<path class="hatching" d="${d}"/>`;
}

/** Teeth on the low side of an edge. */
function teeth([[ax, ay], [bx, by]]: readonly Point[], down: 1 | -1): string {
  const length = Math.hypot(bx - ax, by - ay);
  const count = Math.floor(length / 12);
  const lines = Array.from({ length: count }, (_, i): Point[] => {
    const t = (i + 0.5) / count;
    const x = ax + (bx - ax) * t;
    const y = ay + (by - ay) * t;
    return [
      [x, y],
      [x, y + 6 * down],
    ];
  });
  return strokes('tick', lines);
}
