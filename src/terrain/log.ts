import type { Values } from '../field.ts';
import { number } from '../field.ts';
import { aheadM, NOWHERE, spanM } from './shape.ts';

/** A round log or pole lying across the line. */
export const logFields = {
  xM: number('Along', 'length', -100, 100, 'Tape along the line from the pin to the middle of the log.'),
  diameterM: number('Diameter', 'size', 0.05, 1.2, 'Tape over the top from ground to ground, or callipers.'),
  skewRad: number(
    'Skew',
    'angle',
    -0.7854,
    0.7854,
    'Turn of the log from square to the line; the left end further ahead is positive.',
  ),
  fromYM: number('Right end', 'length', -10, 10, 'Tape from the main line; left is positive.'),
  toYM: number('Left end', 'length', -10, 10, 'Tape from the main line; left is positive.'),
};

export type Log = { readonly kind: 'log' } & Values<typeof logFields>;

/** Top of a cylinder lying on the ground; its undercut is filled, as a wheel cannot reach it. */
export function heightM(log: Log, x: number, y: number): number {
  if (y < log.fromYM || y > log.toYM) return 0;
  const u = aheadM(x, y, log.xM, log.skewRad);
  const r = log.diameterM / 2;
  return Math.abs(u) >= r ? 0 : r + Math.sqrt(r * r - u * u);
}

export function reachM(log: Log, y: number): readonly [number, number] {
  return y < log.fromYM || y > log.toYM ? NOWHERE : spanM(y, log.xM, log.skewRad, log.diameterM);
}
