import type { Values } from '../field.ts';
import { number } from '../field.ts';
import { say } from '../words/words.ts';

/** Water over the line. Its bed keeps its own features and surface. */
export const waterFields = {
  fromM: number(say.terrainFields.water.fromM, 'length', -100, 100),
  toM: number(say.terrainFields.water.toM, 'length', -100, 100),
  depthM: number(say.terrainFields.water.depthM, 'size', 0.01, 3),
  flowMps: number(say.terrainFields.water.flowMps, 'flow', 0, 6),
};

export type Water = { readonly kind: 'water' } & Values<typeof waterFields>;
