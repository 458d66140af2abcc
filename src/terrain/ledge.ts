import type { Values } from '../field.ts';
import { number } from '../field.ts';
import type { Places } from './shape.ts';
import { aheadM } from './shape.ts';
import { say } from '../words/words.ts';

/** A step across the whole line, up or down in the recorded direction. */
export const ledgeFields = {
  xM: number(say.terrainFields.ledge.xM, 'length', -100, 100),
  riseM: number(say.terrainFields.ledge.riseM, 'size', -1.5, 1.5),
  faceRad: number(say.terrainFields.ledge.faceRad, 'angle', 0.1745, 1.4835),
  skewRad: number(say.terrainFields.ledge.skewRad, 'angle', -0.7854, 0.7854),
};

export type Ledge = { readonly kind: 'ledge' } & Values<typeof ledgeFields>;

/** Zero before the face, `riseM` beyond it, straight in between. */
export function lay(ledge: Ledge, { y, fromM, stepM, first, last, heightsM }: Places): void {
  const { xM, riseM, skewRad } = ledge;
  const faceM = Math.abs(riseM) / Math.tan(ledge.faceRad);
  const cos = Math.cos(skewRad);
  const sin = Math.sin(skewRad);
  for (let i = first; i <= last; i++) {
    const ahead = aheadM(fromM + i * stepM, y, xM, cos, sin);
    if (ahead <= 0) heightsM[i] = 0;
    else heightsM[i] = ahead >= faceM ? riseM : (riseM * ahead) / faceM;
  }
}

/** From the foot of its face on. */
export function reachM(ledge: Ledge, y: number): readonly [number, number] {
  return [ledge.xM + y * Math.tan(ledge.skewRad), Infinity];
}
