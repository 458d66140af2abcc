import type { Feature, FeatureKind } from '../terrain/feature.ts';
import { heightM } from '../terrain/feature.ts';
import type { Shaped } from './extent.ts';
import { edge } from './extent.ts';

/** Drawings in which sizes are read and taken hold of. */
export type SizeView = 'across' | 'side' | 'plan';

/** Where a drawing looks, as recorded: station and y of a cut across, station and wheel path of a side view. */
export interface Here {
  readonly xM: number;
  readonly yM: number;
}

/** A point as recorded, `overM` above the ground there, or at `levelM` above the plane whatever the ground does. */
export interface Spot extends Here {
  readonly overM: number;
  readonly levelM: number | null;
}

/** Which way a size grows or is told, as recorded. */
export type Way = 'up' | 'down' | 'ahead' | 'behind' | 'left' | 'right';

type Round = Shaped<'hole' | 'rock'>;

/** One size of a shape in one drawing. */
export interface Size<F> {
  readonly name: keyof F & string;
  readonly view: SizeView;
  /** The side of its point on which its handle is drawn, so that neighbours do not cover each other. */
  readonly way: Way | ((feature: F) => Way);
  /** The end that moves with the size: what a hand takes hold of. `turned` is −1 against the recorded direction. */
  readonly to: (feature: F, here: Here, turned: 1 | -1) => Spot;
  /** The other end of its dimension line; none where the drawing tells it by itself, and for an angle. */
  readonly from?: (feature: F, here: Here, turned: 1 | -1) => Spot;
}

/** Where a turned edge is taken hold of, left of the main line, metres: a lever that is long enough to be felt. */
const SKEW_AT_M = 1.2;

/**
 * Every size that is a length or an angle, in each drawing that shows it; of one drawing the most telling first, which
 * can be taken hold of even while another shape is looked at.
 */
export const SIZES: { readonly [K in FeatureKind]: readonly Size<Extract<Feature, { kind: K }>>[] } = {
  rut: [
    { name: 'depthM', view: 'across', way: 'down', to: (f, h) => on(h.xM, f.centreYM) },
    {
      name: 'widthM',
      view: 'across',
      way: outer,
      to: (f, h) => on(h.xM, f.centreYM + (outside(f) * f.widthM) / 2),
    },
    { name: 'centreYM', view: 'across', way: 'up', to: (f, h) => rim(f, h.xM, f.centreYM) },
    {
      name: 'depthM',
      view: 'side',
      way: 'down',
      to: (f, h) => on(within(f, h.xM), h.yM),
      from: (f, h) => rim(f, within(f, h.xM), h.yM),
    },
    { name: 'fromM', view: 'side', way: 'behind', to: (f, h) => on(f.fromM, h.yM) },
    { name: 'toM', view: 'side', way: 'ahead', to: (f, h) => on(f.toM, h.yM) },
    { name: 'runM', view: 'side', way: 'down', to: (f, h) => on(f.fromM + f.runM, h.yM) },
    {
      name: 'centreYM',
      view: 'plan',
      way: 'ahead',
      to: (f) => on(share(f, 0.45), f.centreYM),
      from: (f) => on(share(f, 0.45), 0),
    },
    {
      name: 'widthM',
      view: 'plan',
      way: outer,
      to: (f) => on(share(f, 0.7), f.centreYM + (outside(f) * f.widthM) / 2),
      from: (f) => on(share(f, 0.7), f.centreYM - (outside(f) * f.widthM) / 2),
    },
    { name: 'fromM', view: 'plan', way: 'behind', ...alongFromPin((f) => [f.fromM, f.centreYM]) },
    { name: 'toM', view: 'plan', way: 'ahead', ...alongFromPin((f) => [f.toM, f.centreYM]) },
    {
      name: 'runM',
      view: 'plan',
      way: inner,
      to: (f) => on(f.fromM + f.runM, f.centreYM - (outside(f) * f.widthM) / 2),
      from: (f) => on(f.fromM, f.centreYM - (outside(f) * f.widthM) / 2),
    },
  ],
  hole: [
    { name: 'depthM', view: 'across', way: 'down', to: (f, h) => on(h.xM, f.yM) },
    {
      name: 'widthM',
      view: 'across',
      way: outer,
      to: (f, h) => on(h.xM, f.yM + (outside(f) * f.widthM) / 2),
    },
    { name: 'yM', view: 'across', way: 'up', to: (f, h) => rim(f, h.xM, f.yM) },
    {
      name: 'depthM',
      view: 'side',
      way: 'down',
      to: (f, h) => on(f.xM, h.yM),
      from: (f, h) => rim(f, f.xM, h.yM),
    },
    ...lying('up'),
    ...fromAbove(),
  ],
  rock: [
    { name: 'heightM', view: 'across', way: 'up', to: (f, h) => on(h.xM, f.yM) },
    {
      name: 'widthM',
      view: 'across',
      way: outer,
      to: (f, h) => on(h.xM, f.yM + (outside(f) * f.widthM) / 2),
      from: (f, h) => on(h.xM, f.yM - (outside(f) * f.widthM) / 2),
    },
    { name: 'yM', view: 'across', way: 'down', to: (f, h) => rim(f, h.xM, f.yM) },
    {
      name: 'heightM',
      view: 'side',
      way: 'up',
      to: (f, h) => on(f.xM, h.yM),
      from: (f, h) => rim(f, f.xM, h.yM),
    },
    ...lying('down'),
    ...fromAbove(),
  ],
  ledge: [
    {
      name: 'riseM',
      view: 'side',
      way: 'up',
      to: (f, h, turned) => on(turned > 0 ? beyond(f, h.yM) : edge(f, h.yM), h.yM),
      from: (f, h, turned) => on(turned > 0 ? beyond(f, h.yM) : edge(f, h.yM), h.yM, -f.riseM * turned),
    },
    { name: 'xM', view: 'side', way: 'behind', to: (f, h) => on(edge(f, h.yM), h.yM) },
    { name: 'faceRad', view: 'side', way: 'ahead', to: (f, h) => on(beyond(f, h.yM), h.yM) },
    { name: 'xM', view: 'plan', way: 'behind', ...alongFromPin((f) => [f.xM, 0]) },
    skewed(),
  ],
  ditch: [
    { name: 'depthM', view: 'across', way: 'down', to: (_, h) => on(h.xM, h.yM) },
    { name: 'depthM', view: 'side', way: 'down', ...upright((f, h) => edge(f, h.yM)) },
    { name: 'widthM', view: 'side', way: 'ahead', ...lengthwise((f) => f.widthM / Math.cos(f.skewRad)) },
    { name: 'xM', view: 'side', way: 'up', to: (f, h) => rim(f, edge(f, h.yM), h.yM) },
    { name: 'xM', view: 'plan', way: 'right', ...alongFromPin((f) => [f.xM, 0]) },
    {
      name: 'widthM',
      view: 'plan',
      way: 'ahead',
      ...lengthwise((f) => f.widthM / Math.cos(f.skewRad), -0.5),
    },
    skewed(),
  ],
  hump: [
    {
      name: 'heightM',
      view: 'across',
      way: 'up',
      to: (_, h) => on(h.xM, h.yM),
      from: (f, h) => rim(f, h.xM, h.yM),
    },
    { name: 'heightM', view: 'side', way: 'up', ...upright((f, h) => edge(f, h.yM)) },
    { name: 'lengthM', view: 'side', way: 'ahead', ...lengthwise((f) => f.lengthM / Math.cos(f.skewRad)) },
    { name: 'xM', view: 'side', way: 'down', to: (f, h) => rim(f, edge(f, h.yM), h.yM) },
    { name: 'xM', view: 'plan', way: 'right', ...alongFromPin((f) => [f.xM, 0]) },
    {
      name: 'lengthM',
      view: 'plan',
      way: 'ahead',
      ...lengthwise((f) => f.lengthM / Math.cos(f.skewRad), -0.5),
    },
    skewed(),
  ],
  log: [
    { name: 'diameterM', view: 'across', way: 'up', to: (f, h) => on(h.xM, among(f, h.yM)) },
    {
      name: 'fromYM',
      view: 'across',
      way: 'right',
      to: (f, h) => on(h.xM, f.fromYM),
      from: (_, h) => on(h.xM, 0),
    },
    {
      name: 'toYM',
      view: 'across',
      way: 'left',
      to: (f, h) => on(h.xM, f.toYM),
      from: (_, h) => on(h.xM, 0),
    },
    { name: 'diameterM', view: 'side', way: 'up', ...upright((f, h) => edge(f, h.yM)) },
    { name: 'xM', view: 'side', way: 'down', to: (f, h) => rim(f, edge(f, h.yM), h.yM) },
    { name: 'xM', view: 'plan', way: 'behind', ...alongFromPin((f) => [f.xM, 0]) },
    { name: 'fromYM', view: 'plan', way: 'right', ...acrossFromLine((f) => [edge(f, f.fromYM), f.fromYM]) },
    { name: 'toYM', view: 'plan', way: 'left', ...acrossFromLine((f) => [edge(f, f.toYM), f.toYM]) },
    {
      ...skewed<Extract<Feature, { kind: 'log' }>>(),
      to: (f) => on(edge(f, among(f, SKEW_AT_M)), among(f, SKEW_AT_M)),
    },
  ],
  bank: [
    {
      name: 'distanceM',
      view: 'across',
      way: 'down',
      to: (f, h) => on(h.xM, outward(f) * f.distanceM),
      from: (_, h) => on(h.xM, 0),
    },
    {
      name: 'heightM',
      view: 'across',
      way: 'up',
      to: (f, h) => on(h.xM, crest(f)),
      from: (f, h) => on(h.xM, crest(f), -f.heightM),
    },
    { name: 'angleRad', view: 'across', way: ({ side }) => side, to: (f, h) => on(h.xM, crest(f)) },
    {
      name: 'distanceM',
      view: 'plan',
      way: 'ahead',
      ...acrossFromLine((f) => [0, outward(f) * f.distanceM]),
    },
  ],
  water: [
    { name: 'depthM', view: 'across', way: 'up', to: (f, h) => on(h.xM, 0, f.depthM) },
    {
      name: 'depthM',
      view: 'side',
      way: 'up',
      to: (f, h) => level(clamped(h.xM, f.fromM, f.toM), h.yM, f.depthM),
      from: (f, h) => level(clamped(h.xM, f.fromM, f.toM), h.yM, 0),
    },
    { name: 'fromM', view: 'side', way: 'behind', to: (f, h) => level(f.fromM, h.yM, f.depthM) },
    { name: 'toM', view: 'side', way: 'ahead', to: (f, h) => level(f.toM, h.yM, f.depthM) },
    ...ends(),
  ],
  softPatch: [
    { name: 'fromM', view: 'side', way: 'behind', to: (f, h) => on(f.fromM, h.yM) },
    { name: 'toM', view: 'side', way: 'ahead', to: (f, h) => on(f.toM, h.yM) },
    ...ends(),
  ],
};

function on(xM: number, yM: number, overM = 0): Spot {
  return { xM, yM, overM, levelM: null };
}

function level(xM: number, yM: number, levelM: number): Spot {
  return { xM, yM, overM: 0, levelM };
}

/** Where the ground would be at a place without this shape. */
function rim(feature: Feature, xM: number, yM: number): Spot {
  return on(xM, yM, -heightM([feature], xM, yM));
}

function clamped(value: number, from: number, to: number): number {
  return Math.max(from, Math.min(to, value));
}

/** The station, or the nearest to it at which a rut is at its full depth. */
function within({ fromM, toM, runM }: Shaped<'rut'>, xM: number): number {
  const run = Math.min(runM, (toM - fromM) / 2);
  return clamped(xM, fromM + run, toM - run);
}

function share({ fromM, toM }: Shaped<'rut'>, part: number): number {
  return fromM + part * (toM - fromM);
}

/** The far edge of a ledge's face, in the recorded direction. */
function beyond(ledge: Shaped<'ledge'>, yM: number): number {
  const faceM = Math.abs(ledge.riseM) / Math.tan(ledge.faceRad);
  return edge(ledge, yM) + faceM / Math.cos(ledge.skewRad);
}

function among({ fromYM, toYM }: Shaped<'log'>, yM: number): number {
  return clamped(yM, fromYM, toYM);
}

/** The side of the main line on which it lies, left positive: its outer edge is there. */
function outside(feature: Shaped<'rut'> | Round): 1 | -1 {
  return (feature.kind === 'rut' ? feature.centreYM : feature.yM) >= 0 ? 1 : -1;
}

function outer(feature: Shaped<'rut'> | Round): Way {
  return outside(feature) > 0 ? 'left' : 'right';
}

function inner(feature: Shaped<'rut'> | Round): Way {
  return outside(feature) > 0 ? 'right' : 'left';
}

function outward({ side }: Shaped<'bank'>): 1 | -1 {
  return side === 'left' ? 1 : -1;
}

/** Where a bank has its full height. */
function crest(bank: Shaped<'bank'>): number {
  return outward(bank) * (bank.distanceM + Math.abs(bank.heightM) / Math.tan(bank.angleRad));
}

function alongFromPin<F>(place: (feature: F) => readonly [number, number]): Pick<Size<F>, 'to' | 'from'> {
  return { to: (f) => on(...place(f)), from: (f) => on(0, place(f)[1]) };
}

function acrossFromLine<F>(place: (feature: F) => readonly [number, number]): Pick<Size<F>, 'to' | 'from'> {
  return { to: (f) => on(...place(f)), from: (f) => on(place(f)[0], 0) };
}

/** A height or depth in the side view, from where the ground would be without it. */
function upright<F extends Feature>(xOf: (feature: F, here: Here) => number): Pick<Size<F>, 'to' | 'from'> {
  return { to: (f, h) => on(xOf(f, h), h.yM), from: (f, h) => rim(f, xOf(f, h), h.yM) };
}

/** From foot to foot, or lip to lip, along the line; in the plan at a y of its own. */
function lengthwise<F extends Shaped<'ditch' | 'hump'>>(
  lengthOf: (feature: F) => number,
  atYM: number | null = null,
): Pick<Size<F>, 'to' | 'from'> {
  const end = (sign: 1 | -1) => (f: F, h: Here) => {
    const yM = atYM ?? h.yM;
    return on(edge(f, yM) + (sign * lengthOf(f)) / 2, yM);
  };
  return { to: end(1), from: end(-1) };
}

/** Where it lies along the line and how long it is, in the side view. */
function lying(way: 'up' | 'down'): Size<Round>[] {
  return [
    { name: 'xM', view: 'side', way, to: (f, h) => rim(f, f.xM, h.yM) },
    { name: 'lengthM', view: 'side', way: 'ahead', ...lengthOver() },
  ];
}

function fromAbove(): Size<Round>[] {
  return [
    { name: 'xM', view: 'plan', way: inner, to: (f) => on(f.xM, f.yM), from: (f) => on(0, f.yM) },
    { name: 'lengthM', view: 'plan', way: 'ahead', ...lengthOver() },
    { name: 'yM', view: 'plan', way: 'behind', to: (f) => on(f.xM, f.yM), from: (f) => on(f.xM, 0) },
    {
      name: 'widthM',
      view: 'plan',
      way: outer,
      to: (f) => on(f.xM, f.yM + (outside(f) * f.widthM) / 2),
      from: (f) => on(f.xM, f.yM - (outside(f) * f.widthM) / 2),
    },
  ];
}

function lengthOver(): Pick<Size<Round>, 'to' | 'from'> {
  return {
    to: (f) => on(f.xM + f.lengthM / 2, f.yM),
    from: (f) => on(f.xM - f.lengthM / 2, f.yM),
  };
}

function skewed<F extends Shaped<'ledge' | 'ditch' | 'hump' | 'log'>>(): Size<F> {
  return { name: 'skewRad', view: 'plan', way: 'ahead', to: (f) => on(edge(f, SKEW_AT_M), SKEW_AT_M) };
}

/** Where water or soft ground starts and ends, from above. */
function ends(): Size<Shaped<'water' | 'softPatch'>>[] {
  return [
    { name: 'fromM', view: 'plan', way: 'behind', ...alongFromPin((f) => [f.fromM, 0]) },
    { name: 'toM', view: 'plan', way: 'ahead', ...alongFromPin((f) => [f.toM, 0]) },
  ];
}
