import type { Values } from '../field.ts';
import { choice, number } from '../field.ts';
import type { Places } from './shape.ts';
import { along, NOWHERE, trench } from './shape.ts';
import { say } from '../words/words.ts';

/** One wheel path worn into the ground, along the direction of travel. A pair is two ruts with their own depths. */
export const rutFields = {
  centreYM: number(say.terrainFields.rut.centreYM, 'length', -6, 6),
  widthM: number(say.terrainFields.rut.widthM, 'size', 0.1, 2),
  depthM: number(say.terrainFields.rut.depthM, 'size', 0.01, 1.5),
  fromM: number(say.terrainFields.rut.fromM, 'length', -100, 100),
  toM: number(say.terrainFields.rut.toM, 'length', -100, 100),
  runM: number(say.terrainFields.rut.runM, 'length', 0, 10),
  section: choice(say.terrainFields.rut.section, ['U', 'V']),
};

export type Rut = { readonly kind: 'rut' } & Values<typeof rutFields>;

/** Heights above the undisturbed plane, metres, never positive. */
export function lay(rut: Rut, { y, fromM, stepM, first, last, heightsM }: Places): void {
  const { depthM, fromM: startM, toM: endM, runM } = rut;
  const across = trench(y - rut.centreYM, rut.widthM, rut.section === 'U' ? 0.5 : 0);
  for (let i = first; i <= last; i++)
    heightsM[i] = -depthM * along(fromM + i * stepM, startM, endM, runM) * across;
}

/** Where along a line at `y` it changes the ground, metres. */
export function reachM(rut: Rut, y: number): readonly [number, number] {
  return Math.abs(y - rut.centreYM) < rut.widthM / 2 ? [rut.fromM, rut.toM] : NOWHERE;
}
