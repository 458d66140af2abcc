import type { Values } from '../field.ts';
import { number } from '../field.ts';
import type { Places } from './shape.ts';
import { aheadM, spanM, trench } from './shape.ts';
import { say } from '../words/words.ts';

/** A trench across the whole line. */
export const ditchFields = {
  xM: number(say.terrainFields.ditch.xM, 'length', -100, 100),
  widthM: number(say.terrainFields.ditch.widthM, 'length', 0.2, 12),
  depthM: number(say.terrainFields.ditch.depthM, 'size', 0.05, 2),
  skewRad: number(say.terrainFields.ditch.skewRad, 'angle', -0.7854, 0.7854),
};

export type Ditch = { readonly kind: 'ditch' } & Values<typeof ditchFields>;

/** Flat over the middle half of the width, straight banks: as steep as such a width and depth are taken to be. */
export function lay(ditch: Ditch, { y, fromM, stepM, first, last, heightsM }: Places): void {
  const { xM, widthM, depthM, skewRad } = ditch;
  const cos = Math.cos(skewRad);
  const sin = Math.sin(skewRad);
  for (let i = first; i <= last; i++)
    heightsM[i] = -depthM * trench(aheadM(fromM + i * stepM, y, xM, cos, sin), widthM, 0.5);
}

export function reachM(ditch: Ditch, y: number): readonly [number, number] {
  return spanM(y, ditch.xM, ditch.skewRad, ditch.widthM);
}
