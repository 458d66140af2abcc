import type { Values } from '../field.ts';
import { number } from '../field.ts';
import { bowl, ellipseReachM } from './shape.ts';

/** A hole under one wheel path. Holes on alternate sides about a wheelbase apart lift diagonal wheels. */
export const holeFields = {
  xM: number('Along', 'length', -100, 100, 'Tape along the line from the pin to the middle of the hole.'),
  yM: number(
    'Across, left of the line',
    'length',
    -6,
    6,
    'Tape from the main line to the middle of the hole; left is positive.',
  ),
  lengthM: number('Length', 'length', 0.2, 8, 'Tape from rim to rim along the line.'),
  widthM: number('Width', 'length', 0.2, 8, 'Tape from rim to rim across the line.'),
  depthM: number('Depth', 'size', 0.01, 1.5, 'Straight edge over the rims, tape down to the bottom.'),
};

export type Hole = { readonly kind: 'hole' } & Values<typeof holeFields>;

export function heightM(hole: Hole, x: number, y: number): number {
  return -hole.depthM * bowl(x - hole.xM, y - hole.yM, hole.lengthM, hole.widthM);
}

export function reachM(hole: Hole, y: number): readonly [number, number] {
  return ellipseReachM(y, hole.xM, hole.yM, hole.lengthM, hole.widthM);
}
