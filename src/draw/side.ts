import { heightM, heightsAlong } from '../terrain/feature.ts';
import type { Stretch } from '../terrain/obstacle.ts';
import type { System } from '../units.ts';
import { shown, steepText } from '../units.ts';
import type { Part } from '../vehicle/body.ts';
import { PARTS, underside } from '../vehicle/body.ts';
import type { Point } from './ink.ts';
import { dimension, hatching, n as px, stroke, text } from './ink.ts';
import type { SizeMark } from './sizes.ts';
import { dimensioned, sizesOn, sizesSvg } from './sizes.ts';
import type { Stood } from './stood.ts';
import { stands, stationOf } from './stood.ts';
import { withoutStraight } from './straight.ts';
import { say } from '../words/words.ts';

/** What a side view is drawn from: seen from the right of the vehicle, travel to the right of the page. */
export interface SideView {
  /** As travelled. */
  readonly stretch: Stretch;
  /** The slope that counts, climbing positive. */
  readonly slopeRad: number;
  readonly offsetM: number;
  readonly stood: Stood;
  readonly other: Stood | null;
  /** Index of the shape whose sizes are dimensioned; null where none is looked at. */
  readonly sized: number | null;
  readonly system: System;
  readonly widthPx: number;
  readonly mostPx: number;
}

/** Ground drawn before and behind the vehicle. */
const BESIDE_M = 1.1;
const BODY_TO_M = 1.05;
const GROUND_STEP_M = 0.025;
const UNDER_M = 0.3;
/** The same on a small drawing: two rows of words stand in it, and the level below them. */
const UNDER_PX = 52;
/** Soft ground is marked so deep, however deep it is. */
const SOFT_M = 0.14;
/** Frame edges move in steps of this, so that a picture stays where it is while a size is dragged. */
const FRAME_STEP_M = 0.25;
/** So many of the least gaps are dimensioned, besides all that touch. */
const TOLD_GAPS = 2;
const TOLD_GAP_M = 0.45;
/** Underside over the wheels is drawn this far around a tyre at rest. */
const ARCH_M = 0.07;

/** Words stand so far under the ground that wheels roll on: over it they would lie on the vehicle. */
const WORDS_UNDER_PX = 3;
/** From this slope on they run uphill. */
const STEEP_RAD = 0.03;
/** What words keep clear of by being written lower: other words, sizes, grips. Widths are half of the whole but for a letter. */
const LABEL_PX = { letter: 6.5, size: 45, grip: 11, down: 15, beside: 9 };

/** From the plane, x along the line from the pin and z normal to it, to pixels. */
type At = (x: number, z: number) => Point;

/** Where the parts of a side view come to lie: what handles over the drawing are placed by. */
export interface SideFrame {
  readonly at: At;
  readonly pxPerM: number;
  readonly heightPx: number;
  /** Ground drawn, along the line from the pin. */
  readonly fromM: number;
  readonly toM: number;
  readonly lowM: number;
}

/**
 * The greatest true scale at which the vehicle, its ground and the lean of both fit into the box, wherever on its way it
 * stands, so that the picture keeps its scale and height while it drives.
 */
export function sideFrame(view: SideView): SideFrame {
  const { slopeRad, stood, widthPx, mostPx } = view;
  const middle = stationOf(stood);
  const longest = Math.max(lengthOf(stood), view.other ? lengthOf(view.other) : 0);
  const half = longest / 2 + BESIDE_M;
  const { heaveM, pitch, stationM, length } = stood.along.record;
  const heights = (['left', 'right'] as const).flatMap((side) =>
    groundUnder(view, side, stationM[0] - half, stationM[length - 1] + half).map(([, z]) => z),
  );
  let bodyM = 0;
  for (let n = 0; n < length; n++)
    if (stands({ ...stood, n })) bodyM = Math.max(bodyM, heaveM[n] + (Math.abs(pitch[n]) * longest) / 2);
  const step = (value: number, to: (x: number) => number) => to(value / FRAME_STEP_M) * FRAME_STEP_M;
  const topM = step(Math.max(bodyM + BODY_TO_M + 0.1, Math.min(2, Math.max(...heights) + 0.1)), Math.ceil);
  const lowM = step(Math.min(...heights) - UNDER_M, Math.floor);

  const cos = Math.cos(slopeRad);
  const sin = Math.sin(slopeRad);
  /** From the plane to metres on the page, right and down of the middle. */
  const turn = (x: number, z: number): Point => [(x - middle) * cos - z * sin, -(x - middle) * sin - z * cos];
  const ends = [middle - half, middle + half];
  const top = Math.min(...[middle - longest / 2, middle + longest / 2].map((x) => turn(x, topM)[1]));
  const low = Math.max(...ends.map((x) => turn(x, lowM)[1]));
  const pxPerM = Math.min(widthPx / (2 * half * cos), mostPx / (low - top));
  const beyond = widthPx / 2 / pxPerM / cos + 1;
  return {
    at: (x, z) => {
      const [across, down] = turn(x, z);
      return [across * pxPerM + widthPx / 2, (down - top) * pxPerM];
    },
    pxPerM,
    heightPx: (low - top) * pxPerM + Math.max(0, UNDER_PX - UNDER_M * pxPerM),
    fromM: middle - beyond,
    toM: middle + beyond,
    lowM,
  };
}

/** A true-to-scale side view about the station, leaning by the slope, as SVG text. */
export function sideSvg(view: SideView, frame = sideFrame(view)): string {
  const { stood, widthPx } = view;
  const { at, fromM, toM, lowM, heightPx } = frame;
  const line = (side: 'left' | 'right') =>
    withoutStraight(groundUnder(view, side, fromM, toM).map(([x, z]): Point => at(x, z)));
  const [far, near] = [line('left'), line('right')];
  const under = lowM - (toM - fromM);
  const closed = (surface: readonly Point[]) => [...surface, at(toM, under), at(fromM, under)];
  const sizes = sideSizes(view, frame, 1);
  const sized = dimensioned(sizes, view.sized);
  const parts = [
    stroke('ground', closed(far), true),
    stroke('far-surface', far),
    stroke('ground', closed(near), true),
    hatching(near, 9, 7),
    soft(view, at),
    water(view, [fromM, toM], at),
    stroke('plane', [at(fromM, 0), at(toM, 0)]),
    view.other && stands(view.other) ? vehicle(view.other, at, 'vehicle other') : '',
    stands(stood)
      ? vehicle(stood, at, 'vehicle')
      : text('tips', at(stationOf(stood), 0.6), say.drawing.tipsHere),
    stroke('surface', near),
    stands(stood) ? gapMarks(view, frame, sizes, sized) : '',
    sizesSvg(sized, view.system),
    level(view, widthPx, heightPx),
  ];
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" class="drawing side" viewBox="0 0 ${px(widthPx)} ${px(heightPx)}" ` +
    `width="${px(widthPx)}" height="${px(heightPx)}" fill="none" stroke="none">${parts.join('')}</svg>`
  );
}

/** The sizes that it shows, as recorded: what handles over it are made of. `turned` is −1 against that direction. */
export function sideSizes(view: SideView, frame: SideFrame, turned: 1 | -1): SizeMark[] {
  const { at, pxPerM, heightPx } = frame;
  const xM = stationOf(view.stood);
  return sizesOn({
    view: 'side',
    features: view.stretch.features,
    turned,
    heres: (['right', 'left'] as const).map((side) => ({ xM, yM: pathM(view, side) })),
    at: (x, _, z) => at(x, z),
    pxPerM,
    widthPx: view.widthPx,
    heightPx,
  });
}

/** Middle of the wheels of one side, left of the main line. */
function pathM({ stood, offsetM }: SideView, side: 'left' | 'right'): number {
  return offsetM + ((side === 'left' ? 1 : -1) * stood.along.chassis.front.trackWidthM) / 2;
}

function groundUnder(
  view: SideView,
  side: 'left' | 'right',
  fromM: number,
  toM: number,
): (readonly [x: number, z: number])[] {
  const y = pathM(view, side);
  const heights = new Float64Array(Math.ceil((toM - fromM) / GROUND_STEP_M) + 1);
  heightsAlong(view.stretch.features, y, fromM, GROUND_STEP_M, heights);
  return Array.from(heights, (z, i) => [fromM + i * GROUND_STEP_M, z] as const);
}

function lengthOf({ values }: Stood): number {
  const overhang = Math.max(values.frontOverhangM, values.rearOverhangM);
  return values.wheelbaseM + 2 * overhang;
}

/** Body with overhangs and underside in its pitch, the wheels where they are; the far ones dashed. */
function vehicle({ values: v, along, n }: Stood, at: At, className: string): string {
  const { record, chassis } = along;
  const x0 = record.stationM[n];
  const P = record.pitch[n];
  const cos = 1 / Math.hypot(1, P);
  /** From the vehicle at rest (x ahead of mid-wheelbase, z above level ground) to pixels. */
  const on = (x: number, z: number): Point => at(x0 + x + z * P, record.heaveM[n] - x * P + z * cos);
  const half = v.wheelbaseM / 2;
  const radius = v.tyreDiameterM / 2;
  const points = underside(v, chassis.front.hubHeightM, chassis.rear.hubHeightM);
  const along0 = (part: Part) =>
    points
      .filter((point) => point.part === part && Math.abs(point.yM) < 0.01)
      .map((p) => [p.xM, p.zM] as const);
  const tail = along0('rear corner').toReversed();
  const nose = along0('front corner');
  const belly = [...along0('belly'), ...along0('crest of the belly')].toSorted((a, b) => a[0] - b[0]);
  const arch = (aheadM: number, hubM: number) =>
    Array.from({ length: 9 }, (_, i) => {
      const a = Math.PI - (i / 8) * Math.PI;
      const r = radius + ARCH_M;
      return [aheadM + r * Math.cos(a), Math.max(v.sillHeightM, hubM) + r * Math.sin(a)] as const;
    });
  const under = [
    ...tail,
    ...arch(-half, chassis.rear.hubHeightM),
    ...belly,
    ...arch(half, chassis.front.hubHeightM),
    ...nose,
  ];
  const rear = -half - v.rearOverhangM;
  const front = half + v.frontOverhangM;
  const outline = [[rear, BODY_TO_M] as const, ...under, [front, BODY_TO_M - 0.1] as const];
  const broken = Array.from({ length: 13 }, (_, i) =>
    on(front - (i / 12) * (front - rear), BODY_TO_M - 0.1 * (1 - i / 12) + (i % 2 === 0 ? 0 : 0.04)),
  );
  const wheel = (i: number, far: boolean) => {
    const hubM = record.hubM[4 * n + i];
    const x = x0 + (i < 2 ? half : -half);
    const lifted = record.loadN[4 * n + i] <= 0;
    const down = Math.min(radius, Math.max(0, hubM - record.bottomM[4 * n + i]));
    const rim = Array.from({ length: 32 }, (_, k) => {
      const a = (k / 32) * 2 * Math.PI;
      return at(x + radius * Math.cos(a), hubM + Math.max(-down, radius * Math.sin(a)));
    });
    const name = ['tyre', far ? 'far' : '', lifted ? 'lifted' : ''].filter(Boolean).join(' ');
    return stroke(name, rim, true) + stroke('hub', [at(x - 0.05, hubM), at(x + 0.05, hubM)]);
  };
  return (
    `<g class="${className}">${wheel(0, true)}${wheel(2, true)}` +
    stroke(
      'body',
      outline.map(([x, z]) => on(x, z)),
    ) +
    `${stroke('broken', broken)}${wheel(1, false)}${wheel(3, false)}</g>`
  );
}

/** All that touch and the least of the other gaps, each where it is, its words clear of what else stands there. */
function gapMarks(
  view: SideView,
  frame: SideFrame,
  sizes: readonly SizeMark[],
  sized: readonly SizeMark[],
): string {
  const { at } = frame;
  const { stretch, stood, offsetM, system } = view;
  const { along, n } = stood;
  const found = PARTS.map((part) => {
    const of = PARTS.length * n + PARTS.indexOf(part);
    return { part, gapM: along.gapM[of], xM: along.gapXM[of], yM: along.gapYM[of] };
  })
    .filter(({ gapM }) => gapM < TOLD_GAP_M)
    .toSorted((a, b) => a.gapM - b.gapM);
  /** What stands there already: sizes that are told, and the grip of each shape's first one. */
  const taken = sizes
    .filter((mark) => mark.first || sized.includes(mark))
    .map((mark) => {
      const [x, y] = mark.placeOf(mark.value);
      const half = sized.includes(mark) ? LABEL_PX.size : LABEL_PX.grip;
      return { fromPx: x - half, toPx: x + half, y };
    });
  return found
    .filter(({ gapM }, i) => gapM < 0 || i < TOLD_GAPS)
    .map(({ part, gapM, xM, yM }) => {
      const ground = heightM(stretch.features, xM, offsetM + yM);
      const foot = at(xM, ground);
      const [x] = foot;
      const size = shown(Math.abs(gapM), 'size', system);
      const words =
        gapM < 0 ? say.drawing.partTouches(say.part[part], size) : say.drawing.partGap(say.part[part], size);
      const wordsPx = LABEL_PX.letter * words.length;
      const anchor = gapAnchor(view, xM - stationOf(stood), x, wordsPx);
      const fromPx = x - (anchor === 'end' ? 1 : anchor === 'start' ? 0 : 0.5) * wordsPx;
      const toPx = fromPx + wordsPx;
      const beside = taken
        .filter((other) => other.fromPx < toPx && other.toPx > fromPx)
        .toSorted((a, b) => a.y - b.y);
      let y =
        Math.max(foot[1], surfacePx(view, frame, fromPx - LABEL_PX.beside, toPx + LABEL_PX.beside)) +
        WORDS_UNDER_PX;
      for (const other of beside) if (Math.abs(other.y - y) < LABEL_PX.down) y = other.y + LABEL_PX.down;
      taken.push({ fromPx, toPx, y });
      return (
        `<g class="gap${gapM < 0 ? ' touch' : ''}">${dimension(foot, at(xM, ground + gapM), '', 0)}` +
        `${gapM < 0 ? spot(foot) : ''}${text('size', [x, y + 12], words, anchor)}</g>`
      );
    })
    .join('');
}

/** On a slope words run uphill, where the ground they stand in is thicker; on the level toward the vehicle's middle. */
function gapAnchor(
  { slopeRad, widthPx }: SideView,
  aheadM: number,
  x: number,
  wordsPx: number,
): 'start' | 'middle' | 'end' {
  if (slopeRad > STEEP_RAD && x + wordsPx < widthPx) return 'start';
  if (slopeRad < -STEEP_RAD && x - wordsPx > 0) return 'end';
  return aheadM > 1 ? 'end' : aheadM < -1 ? 'start' : 'middle';
}

/** The lowest on the page of the ground that wheels roll on, between two places across it. */
function surfacePx(view: SideView, { at, pxPerM }: SideFrame, fromPx: number, toPx: number): number {
  const [middlePx] = at(stationOf(view.stood), 0);
  const xM = (acrossPx: number) =>
    stationOf(view.stood) + (acrossPx - middlePx) / pxPerM / Math.cos(view.slopeRad);
  return (['left', 'right'] as const)
    .flatMap((side) => groundUnder(view, side, xM(fromPx), xM(toPx)))
    .reduce((lowestPx, [x, z]) => Math.max(lowestPx, at(x, z)[1]), -Infinity);
}

/** A solid diamond where steel meets ground. */
function spot([x, y]: Point): string {
  return stroke(
    'spot',
    [
      [x, y - 7],
      [x + 7, y],
      [x, y + 7],
      [x - 7, y],
    ],
    true,
  );
}

/** Ground that gives way, as a band under the near surface. */
function soft(view: SideView, at: At): string {
  const downPx = at(0, -SOFT_M)[1] - at(0, 0)[1];
  return view.stretch.features
    .map((feature) => {
      if (feature.kind !== 'softPatch' || feature.toM <= feature.fromM) return '';
      const ground = groundUnder(view, 'right', feature.fromM, feature.toM);
      const over = withoutStraight(ground.map(([x, z]): Point => at(x, z)));
      const under = over.toReversed().map(([x, y]): Point => [x, y + downPx]);
      return stroke('soft', [...over, ...under], true);
    })
    .join('');
}

function water({ stretch }: SideView, [from, to]: readonly number[], at: At): string {
  return stretch.features
    .map((feature) => {
      if (feature.kind !== 'water') return '';
      const a = Math.max(from, feature.fromM);
      const b = Math.min(to, feature.toM);
      if (b <= a) return '';
      const surface = [at(a, feature.depthM), at(b, feature.depthM)];
      return stroke('water', [...surface, at(b, 0), at(a, 0)], true) + stroke('water-level', surface);
    })
    .join('');
}

/** Level and the slope against it, in the lower corner where the ground is thickest. */
function level({ slopeRad }: SideView, widthPx: number, heightPx: number): string {
  const words = say.drawing[slopeRad < 0 ? 'down' : 'up'](steepText(Math.abs(slopeRad)));
  const y = heightPx - 10;
  const far = Math.min(90, widthPx / 6);
  const from = slopeRad > 0 ? widthPx - 16 - far - LABEL_PX.letter * words.length : 10;
  const rise = Math.max(-60, Math.min(60, far * Math.tan(slopeRad)));
  const base = slopeRad < 0 ? y + rise : y;
  return (
    stroke('level', [
      [from, base],
      [from + far, base],
    ]) +
    stroke('rule', [
      [from, base],
      [from + far, base - rise],
    ]) +
    text('size', [from + far + 6, y + 4], words, 'start')
  );
}
