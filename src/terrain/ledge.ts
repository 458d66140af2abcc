import type { Values } from '../field.ts';
import { number } from '../field.ts';
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
export function heightM(ledge: Ledge, x: number, y: number): number {
  const faceM = Math.abs(ledge.riseM) / Math.tan(ledge.faceRad);
  const ahead = aheadM(x, y, ledge.xM, ledge.skewRad);
  if (ahead <= 0) return 0;
  return ahead >= faceM ? ledge.riseM : (ledge.riseM * ahead) / faceM;
}

/** From the foot of its face on. */
export function reachM(ledge: Ledge, y: number): readonly [number, number] {
  return [ledge.xM + y * Math.tan(ledge.skewRad), Infinity];
}
