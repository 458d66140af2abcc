import type { Values } from '../field.ts';
import { number } from '../field.ts';
import type { Places } from './shape.ts';
import { aheadM, spanM } from './shape.ts';
import { say } from '../words/words.ts';

/** A rounded rise across the whole line. */
export const humpFields = {
  xM: number(say.terrainFields.hump.xM, 'length', -100, 100),
  lengthM: number(say.terrainFields.hump.lengthM, 'length', 0.5, 30),
  heightM: number(say.terrainFields.hump.heightM, 'size', 0.05, 3),
  skewRad: number(say.terrainFields.hump.skewRad, 'angle', -0.7854, 0.7854),
};

export type Hump = { readonly kind: 'hump' } & Values<typeof humpFields>;

export function lay(hump: Hump, { y, fromM, stepM, first, last, heightsM }: Places): void {
  const { xM, lengthM, heightM, skewRad } = hump;
  const cos = Math.cos(skewRad);
  const sin = Math.sin(skewRad);
  for (let i = first; i <= last; i++) {
    const u = aheadM(fromM + i * stepM, y, xM, cos, sin) / lengthM;
    heightsM[i] = Math.abs(u) >= 0.5 ? 0 : (heightM / 2) * (1 + Math.cos(2 * Math.PI * u));
  }
}

export function reachM(hump: Hump, y: number): readonly [number, number] {
  return spanM(y, hump.xM, hump.skewRad, hump.lengthM);
}
