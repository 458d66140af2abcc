import type { Values } from '../field.ts';
import { number } from '../field.ts';

/** Water over the line. Its bed keeps its own features and surface. */
export const waterFields = {
  fromM: number('Starts', 'length', -100, 100, 'Tape along the line from the pin to the near edge.'),
  toM: number('Ends', 'length', -100, 100, 'Tape along the line from the pin to the far edge.'),
  depthM: number(
    'Depth',
    'size',
    0.01,
    3,
    'Deepest place on the line, with a pole, by someone it is safe for.',
  ),
  flowMps: number('Flow speed', 'flow', 0, 6, 'Time a floating stick over a taped distance.'),
};

export type Water = { readonly kind: 'water' } & Values<typeof waterFields>;
