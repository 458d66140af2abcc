import type { Values } from '../field.ts';
import { choice, number } from '../field.ts';
import { say } from '../words/words.ts';

/** Ground that gives way under a wheel. */
export const softPatchFields = {
  fromM: number(say.terrainFields.softPatch.fromM, 'length', -100, 100),
  toM: number(say.terrainFields.softPatch.toM, 'length', -100, 100),
  coneIndexPa: number(say.terrainFields.softPatch.coneIndexPa, 'pressure', 20e3, 3e6),
  passesBefore: number(say.terrainFields.softPatch.passesBefore, 'number', 0, 500),
  wetness: choice(say.terrainFields.softPatch.wetness, ['dry', 'moist', 'wet']),
};

export type SoftPatch = { readonly kind: 'softPatch' } & Values<typeof softPatchFields>;
