import type { Feature } from '../terrain/feature.ts';
import { heightM } from '../terrain/feature.ts';
import type { Hole } from '../terrain/hole.ts';
import type { Stretch } from '../terrain/obstacle.ts';
import type { Rut } from '../terrain/rut.ts';
import type { System } from '../units.ts';
import { shown, steepText } from '../units.ts';
import type { Point } from './ink.ts';
import { dimension, hatching, n, stroke, strokes, text } from './ink.ts';
import type { SizeMark } from './sizes.ts';
import { sizesOn, sizesSvg } from './sizes.ts';
import { withoutStraight } from './straight.ts';
import { say } from '../words/words.ts';

/** Ground cut across the line, with its sizes and what bounds it. */
export interface CutView {
  readonly stretch: Stretch;
  /** Where it is cut, along the line from the pin. */
  readonly stationM: number;
  /** The line's place, left of the main line positive; the vehicle's middle stands there. */
  readonly offsetM: number;
  readonly system: System;
  readonly widthPx: number;
}

/** From the plane, y left of the main line and z normal to it, to pixels. */
export type At = (y: number, z: number) => Point;

/** Where the parts of a cut come to lie. */
export interface CutFrame {
  readonly at: At;
  readonly halfM: number;
  /** Highest and lowest that is drawn, above the plane. */
  readonly topM: number;
  readonly lowM: number;
  readonly heightPx: number;
  readonly pxPerM: number;
  /** Where, left of the main line, the depth of what runs right across is dimensioned. */
  readonly besideM: number;
}

/** Ground drawn at most this far either side of the main line, and at least this far. */
const MOST_HALF_M = 3.2;
const LEAST_HALF_M = 1.5;
const GROUND_STEP_M = 0.01;
/** Ground drawn below its lowest point, to carry the dimensions. */
export const UNDER_M = 0.34;
/** The same on a small drawing, where the words of a dimension are taller than that. */
const UNDER_PX = 30;
/** Band above everything for the room and the offset, pixels. */
const ABOVE_PX = 34;

/** Half of what is drawn across: the corridor, and a vehicle `widthM` wide that stands at the offset. */
export function halfWidthM({ leftM, rightM }: Stretch['corridor'], offsetM: number, widthM: number): number {
  const vehicleM = widthM === 0 ? 0 : Math.abs(offsetM) + widthM / 2 + 0.1;
  const room = Math.max(leftM, rightM) + 0.35;
  return Math.max(LEAST_HALF_M, vehicleM, Math.min(MOST_HALF_M, room));
}

function surfaceOf(
  { stretch, stationM }: CutView,
  halfM: number,
  stepM = GROUND_STEP_M,
): (readonly [y: number, z: number])[] {
  const surface: (readonly [number, number])[] = [];
  for (let y = halfM; y >= -halfM; y -= stepM) surface.push([y, heightM(stretch.features, stationM, y)]);
  return surface;
}

/** Highest ground of a cut, and the lowest that its picture needs. */
export function reachOf(view: CutView, halfM: number): { readonly highM: number; readonly lowM: number } {
  const heights = surfaceOf(view, halfM).map(([, z]) => z);
  return { highM: Math.max(...heights), lowM: Math.min(...heights) - UNDER_M };
}

/** A frame true to scale, leaning by the camber, with room for what stands up to `topM`. */
export function frameOf(view: CutView, halfM: number, topM: number, lowM: number, besideM = 0.1): CutFrame {
  const camberRad = view.stretch.plane.camberRad ?? 0;
  const cos = Math.cos(camberRad);
  const sin = Math.sin(camberRad);
  const pxPerM = view.widthPx / (2 * halfM * cos);
  /** Before the picture is moved into its frame. */
  const turn = (y: number, z: number): Point => [
    (-y * cos + z * sin) * pxPerM,
    (-y * sin - z * cos) * pxPerM,
  ];
  const topPx = Math.min(turn(halfM, topM)[1], turn(-halfM, topM)[1], turn(view.offsetM, topM)[1]) - ABOVE_PX;
  const footM = Math.min(lowM, lowM + UNDER_M - UNDER_PX / pxPerM);
  const lowPx = Math.max(turn(halfM, footM)[1], turn(-halfM, footM)[1]);
  const at: At = (y, z) => {
    const [x, down] = turn(y, z);
    return [x + view.widthPx / 2, down - topPx];
  };
  return { at, halfM, topM, lowM, heightPx: lowPx - topPx, pxPerM, besideM };
}

/** The whole picture as SVG text: the ground, a point every `stepM`, `standing` on it, and the sizes over everything. */
export function cutSvg(
  view: CutView,
  frame: CutFrame,
  className: string,
  standing: string,
  stepM = GROUND_STEP_M,
): string {
  const { stretch } = view;
  const { corridor } = stretch;
  const { at, halfM: half, topM, lowM } = frame;
  const line = withoutStraight(surfaceOf(view, half, stepM).map(([y, z]) => at(y, z)));
  const parts = [
    stroke('ground', [...line, at(-half, lowM - 2), at(half, lowM - 2)], true),
    hatching(line, 9, 7),
    waterLevel(view, half, at),
    stroke('plane', [at(half, 0), at(-half, 0)]),
    (stretch.plane.camberRad ?? 0) === 0 ? '' : level(view, frame),
    bound('left', corridor.leftM, corridor.leftBound, half, topM, at),
    bound('right', corridor.rightM, corridor.rightBound, half, topM, at),
    stroke('centre', [at(0, lowM + 0.05), at(0, topM)]),
    standing,
    stroke('surface', line),
    ...featureSizes(view, frame),
    sizesSvg(cutSizes(view, frame, 1), view.system),
    corridorSizes(view, half, at),
  ];
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" class="drawing ${className}" viewBox="0 0 ${n(view.widthPx)} ${n(frame.heightPx)}" ` +
    `width="${n(view.widthPx)}" height="${n(frame.heightPx)}" fill="none" stroke="none">${parts.join('')}</svg>`
  );
}

/** What stops a mirror or a wheel at the edge of the corridor. */
function bound(
  side: 'left' | 'right',
  distanceM: number,
  kind: Stretch['corridor']['leftBound'],
  half: number,
  topZ: number,
  at: At,
) {
  if (distanceM > half) return '';
  const sign = side === 'left' ? 1 : -1;
  const y = sign * distanceM;
  const foot = at(y, 0);
  const top = at(y, topZ);
  const words = text(
    'bound-name',
    [top[0] + (side === 'left' ? 5 : -5), top[1] + 12],
    say.choice[kind],
    side === 'left' ? 'start' : 'end',
  );
  const post = stroke(kind === 'open' ? 'bound open' : 'bound', [foot, top]);
  const beyond: Point[] = [];
  if (kind === 'bank' || kind === 'rock' || kind === 'trees')
    for (let z = 0.12; z < topZ; z += 0.12) beyond.push(at(y, z));
  const ticks = strokes(
    'bound',
    beyond.map(([x, down]) => [
      [x, down],
      [x - sign * 6, down + (kind === 'trees' ? -4 : 6)],
    ]),
  );
  const drop =
    kind === 'drop'
      ? stroke('bound drop', [
          at(y, 0),
          at(y, -0.3),
          at(y + sign * 0.1, -0.2),
          at(y, -0.3),
          at(y - sign * 0.1, -0.2),
        ])
      : '';
  return post + ticks + drop + words;
}

function isCutAt(feature: Rut | Hole, stationM: number): boolean {
  return feature.kind === 'rut'
    ? stationM >= feature.fromM && stationM <= feature.toM
    : Math.abs(stationM - feature.xM) < feature.lengthM / 2;
}

/** Whether the middle of a rut or hole lies within a deeper one here: it is not to be seen, nor are its sizes. */
function isHidden(feature: Feature, features: readonly Feature[], stationM: number): boolean {
  if (feature.kind !== 'rut' && feature.kind !== 'hole') return false;
  const middle = (one: Rut | Hole) => (one.kind === 'rut' ? one.centreYM : one.yM);
  return features.some(
    (other) =>
      (other.kind === 'rut' || other.kind === 'hole') &&
      isCutAt(other, stationM) &&
      other.depthM > feature.depthM &&
      Math.abs(middle(other) - middle(feature)) < other.widthM / 2,
  );
}

/** A height is dimensioned where it is within this of the whole: where a shape runs out, the line would not be its size. */
const WHOLE_M = 0.01;

/**
 * Width and depth of what the cut goes through, from the ground that would be there without it. Where it is shallower than
 * it was measured, its depth is not dimensioned.
 */
function featureSizes({ stretch, stationM, system }: CutView, { at, besideM: y0 }: CutFrame): string[] {
  const size = (valueM: number) => shown(valueM, 'size', system);
  return stretch.features.map((feature, i) => {
    if (isHidden(feature, stretch.features, stationM)) return '';
    /** The deepest of ruts and holes counts; all else adds up. */
    const isCut = ({ kind }: Feature) => kind === 'rut' || kind === 'hole';
    const without = isCut(feature)
      ? stretch.features.filter((other) => !isCut(other))
      : stretch.features.toSpliced(i, 1);
    /** From the ground without it to the ground as it is, at one place across; nothing where that is not the whole. */
    const height = (groundY: number, y: number, wholeM: number, side: number) => {
      const base = heightM(without, stationM, groundY);
      const end = heightM(stretch.features, stationM, groundY);
      return Math.abs(Math.abs(end - base) - wholeM) > WHOLE_M
        ? ''
        : dimension(at(y, base), at(y, end), size(wholeM), side);
    };
    const cut = (y: number, widthM: number, depthM: number) => {
      const out = y >= 0 ? 1 : -1;
      const top = heightM(without, stationM, y);
      const bottom = heightM(stretch.features, stationM, y);
      const under = bottom - 0.1;
      const shoulder = y + out * (widthM / 2 + 0.07);
      return (
        stroke('extension', [at(y + widthM / 2, top), at(y + widthM / 2, under - 0.03)]) +
        stroke('extension', [at(y - widthM / 2, top), at(y - widthM / 2, under - 0.03)]) +
        dimension(at(y + widthM / 2, under), at(y - widthM / 2, under), size(widthM), 11) +
        stroke('extension', [at(y, bottom), at(shoulder + out * 0.03, bottom)]) +
        height(y, shoulder, depthM, out * 6)
      );
    };
    switch (feature.kind) {
      case 'rut':
        return isCutAt(feature, stationM) ? cut(feature.centreYM, feature.widthM, feature.depthM) : '';
      case 'hole':
        return isCutAt(feature, stationM) ? cut(feature.yM, feature.widthM, feature.depthM) : '';
      case 'rock':
        return Math.abs(stationM - feature.xM) < feature.lengthM / 2
          ? height(feature.yM, feature.yM - feature.widthM / 2 - 0.08, feature.heightM, 6)
          : '';
      case 'ditch':
        return Math.abs(stationM - feature.xM) < feature.widthM / 2 ? height(y0, y0, feature.depthM, -6) : '';
      case 'log':
        return Math.abs(stationM - feature.xM) < feature.diameterM / 2
          ? height(y0, y0, feature.diameterM, -6)
          : '';
      default:
        return '';
    }
  });
}

/** The sizes that a cut shows, as recorded: what handles over it are made of. `turned` is −1 against that direction. */
export function cutSizes(
  { stretch, stationM, widthPx }: CutView,
  frame: CutFrame,
  turned: 1 | -1,
): SizeMark[] {
  const { at, pxPerM, heightPx, besideM } = frame;
  return sizesOn({
    view: 'across',
    features: stretch.features,
    turned,
    heres: [{ xM: stationM, yM: besideM }],
    at: (_, yM, zM) => at(yM, zM),
    pxPerM,
    widthPx,
    heightPx,
  });
}

/** Room either side of the main line, and the offset of the line that the vehicle stands on, above everything. */
function corridorSizes({ stretch, offsetM, system }: CutView, half: number, at: At): string {
  const length = (valueM: number) => shown(valueM, 'length', system);
  const middle = at(0, 0)[0];
  const room = (side: 1 | -1, distanceM: number) => {
    const end = at(side * Math.min(distanceM, half), 0)[0];
    const words = distanceM > half ? `${length(distanceM)} →` : length(distanceM);
    return dimension(
      [middle, 16],
      [end, 16],
      distanceM > half && side > 0 ? `← ${length(distanceM)}` : words,
      -8 * -side,
    );
  };
  const offset =
    offsetM === 0
      ? ''
      : dimension(
          [middle, 30],
          [at(offsetM, 0)[0], 30],
          length(Math.abs(offsetM)),
          12 * (offsetM > 0 ? -1 : 1),
        ) +
        stroke('offset', [
          [at(offsetM, 0)[0], 24],
          [at(offsetM, 0)[0], at(offsetM, 0)[1]],
        ]);
  return room(1, stretch.corridor.leftM) + room(-1, stretch.corridor.rightM) + offset;
}

/** Standing water is level whatever the camber; its depth is measured on the main line. */
function waterLevel({ stretch, stationM, system }: CutView, half: number, at: At): string {
  return stretch.features
    .map((feature) => {
      if (feature.kind !== 'water' || stationM < feature.fromM || stationM > feature.toM) return '';
      const bed = heightM(stretch.features, stationM, 0);
      const down = at(0, bed + feature.depthM)[1];
      const [left, right] = [at(half, 0)[0], at(-half, 0)[0]];
      const box: Point[] = [[left, down], [right, down], at(-half, bed), at(half, bed)];
      return (
        stroke('water', box, true) +
        stroke('water-level', box.slice(0, 2)) +
        dimension([at(0.12, bed)[0], down], at(0.12, bed), shown(feature.depthM, 'size', system), 6)
      );
    })
    .join('');
}

/**
 * A level through the main line's foot, so that the lean can be read. Its words stand in the lower corner of the high side,
 * where ground is thickest and nothing else is drawn.
 */
function level({ stretch, widthPx }: CutView, { at, halfM, heightPx }: CutFrame): string {
  const camberRad = stretch.plane.camberRad ?? 0;
  const [x, y] = at(0, 0);
  const far = halfM * 0.9 * Math.abs(at(1, 0)[0] - x);
  return (
    stroke('level', [
      [x - far, y],
      [x + far, y],
    ]) +
    text(
      'size',
      [camberRad > 0 ? 6 : widthPx - 6, heightPx - 8],
      say.drawing.camber(steepText(Math.abs(camberRad))),
      camberRad > 0 ? 'start' : 'end',
    )
  );
}
