import type { Values } from '../field.ts';
import { number } from '../field.ts';
import type { Places } from './shape.ts';
import { aheadM, NOWHERE, spanM } from './shape.ts';
import { say } from '../words/words.ts';

/** A round log or pole lying across the line. */
export const logFields = {
  xM: number(say.terrainFields.log.xM, 'length', -100, 100),
  diameterM: number(say.terrainFields.log.diameterM, 'size', 0.05, 1.2),
  skewRad: number(say.terrainFields.log.skewRad, 'angle', -0.7854, 0.7854),
  fromYM: number(say.terrainFields.log.fromYM, 'length', -10, 10),
  toYM: number(say.terrainFields.log.toYM, 'length', -10, 10),
};

export type Log = { readonly kind: 'log' } & Values<typeof logFields>;

/** Top of a cylinder lying on the ground; its undercut is filled, as a wheel cannot reach it. */
export function lay(log: Log, { y, fromM, stepM, first, last, heightsM }: Places): void {
  const { xM, skewRad } = log;
  const cos = Math.cos(skewRad);
  const sin = Math.sin(skewRad);
  const r = log.diameterM / 2;
  for (let i = first; i <= last; i++) {
    const u = aheadM(fromM + i * stepM, y, xM, cos, sin);
    heightsM[i] = Math.abs(u) >= r ? 0 : r + Math.sqrt(r * r - u * u);
  }
}

export function reachM(log: Log, y: number): readonly [number, number] {
  return y < log.fromYM || y > log.toYM ? NOWHERE : spanM(y, log.xM, log.skewRad, log.diameterM);
}
