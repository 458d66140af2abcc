import type { Values } from '../field.ts';
import { number } from '../field.ts';
import { aheadM, spanM, trench } from './shape.ts';

/** A trench across the whole line. */
export const ditchFields = {
  xM: number('Along', 'length', -100, 100, 'Tape along the line from the pin to the middle of the ditch.'),
  widthM: number('Width', 'length', 0.2, 12, 'Tape from lip to lip, square to the ditch.'),
  depthM: number('Depth', 'size', 0.05, 2, 'Straight edge over the lips, tape down to the bottom.'),
  skewRad: number(
    'Skew',
    'angle',
    -0.7854,
    0.7854,
    'Turn of the ditch from square to the line; the left end further ahead is positive.',
  ),
};

export type Ditch = { readonly kind: 'ditch' } & Values<typeof ditchFields>;

/** Flat over the middle half of the width, straight banks: as steep as such a width and depth are taken to be. */
export function heightM(ditch: Ditch, x: number, y: number): number {
  return -ditch.depthM * trench(aheadM(x, y, ditch.xM, ditch.skewRad), ditch.widthM, 0.5);
}

export function reachM(ditch: Ditch, y: number): readonly [number, number] {
  return spanM(y, ditch.xM, ditch.skewRad, ditch.widthM);
}
