import type { Values } from '../field.ts';
import { number } from '../field.ts';
import { aheadM } from './shape.ts';

/** A step across the whole line, up or down in the recorded direction. */
export const ledgeFields = {
  xM: number('Along', 'length', -100, 100, 'Tape along the line from the pin to the foot of the face.'),
  riseM: number('Rise', 'size', -1.5, 1.5, 'Tape from the lower to the upper edge; a drop is negative.'),
  faceRad: number(
    'Face angle',
    'angle',
    0.1745,
    1.4835,
    'Inclinometer on the face; 85° is as good as upright.',
  ),
  skewRad: number(
    'Skew',
    'angle',
    -0.7854,
    0.7854,
    'Turn of the edge from square to the line; the left end further ahead is positive.',
  ),
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
