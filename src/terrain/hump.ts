import type { Values } from '../field.ts';
import { number } from '../field.ts';
import { aheadM, spanM } from './shape.ts';

/** A rounded rise across the whole line. */
export const humpFields = {
  xM: number('Along', 'length', -100, 100, 'Tape along the line from the pin to the crest.'),
  lengthM: number('Length', 'length', 0.5, 30, 'Tape from foot to foot along the line.'),
  heightM: number('Height', 'size', 0.05, 3, 'Crest above the straight line from foot to foot.'),
  skewRad: number(
    'Skew',
    'angle',
    -0.7854,
    0.7854,
    'Turn of the crest from square to the line; the left end further ahead is positive.',
  ),
};

export type Hump = { readonly kind: 'hump' } & Values<typeof humpFields>;

export function heightM(hump: Hump, x: number, y: number): number {
  const u = aheadM(x, y, hump.xM, hump.skewRad) / hump.lengthM;
  return Math.abs(u) >= 0.5 ? 0 : (hump.heightM / 2) * (1 + Math.cos(2 * Math.PI * u));
}

export function reachM(hump: Hump, y: number): readonly [number, number] {
  return spanM(y, hump.xM, hump.skewRad, hump.lengthM);
}
