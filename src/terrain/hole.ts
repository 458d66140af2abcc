import type { Values } from '../field.ts';
import { number } from '../field.ts';
import { bowl, ellipseReachM } from './shape.ts';
import { say } from '../words/words.ts';

/** A hole under one wheel path. Holes on alternate sides about a wheelbase apart lift diagonal wheels. */
export const holeFields = {
  xM: number(say.terrainFields.hole.xM, 'length', -100, 100),
  yM: number(say.terrainFields.hole.yM, 'length', -6, 6),
  lengthM: number(say.terrainFields.hole.lengthM, 'length', 0.2, 8),
  widthM: number(say.terrainFields.hole.widthM, 'length', 0.2, 8),
  depthM: number(say.terrainFields.hole.depthM, 'size', 0.01, 1.5),
};

export type Hole = { readonly kind: 'hole' } & Values<typeof holeFields>;

export function heightM(hole: Hole, x: number, y: number): number {
  return -hole.depthM * bowl(x - hole.xM, y - hole.yM, hole.lengthM, hole.widthM);
}

export function reachM(hole: Hole, y: number): readonly [number, number] {
  return ellipseReachM(y, hole.xM, hole.yM, hole.lengthM, hole.widthM);
}
