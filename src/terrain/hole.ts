import type { Values } from '../field.ts';
import { number } from '../field.ts';
import type { Places } from './shape.ts';
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

export function lay(hole: Hole, { y, fromM, stepM, first, last, heightsM }: Places): void {
  const { xM, depthM, lengthM, widthM } = hole;
  const dy = y - hole.yM;
  for (let i = first; i <= last; i++)
    heightsM[i] = -depthM * bowl(fromM + i * stepM - xM, dy, lengthM, widthM);
}

export function reachM(hole: Hole, y: number): readonly [number, number] {
  return ellipseReachM(y, hole.xM, hole.yM, hole.lengthM, hole.widthM);
}
