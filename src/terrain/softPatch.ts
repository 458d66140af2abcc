import type { Values } from '../field.ts';
import { choice, number } from '../field.ts';

/** Ground that gives way under a wheel. */
export const softPatchFields = {
  fromM: number('Starts', 'length', -100, 100, 'Tape along the line from the pin.'),
  toM: number('Ends', 'length', -100, 100, 'Tape along the line from the pin.'),
  coneIndexPa: number(
    'Cone index',
    'pressure',
    20e3,
    3e6,
    'Cone penetrometer in the top 15 cm (6 in); the mean of at least three.',
  ),
  passesBefore: number(
    'Passes since then',
    'number',
    0,
    500,
    'Vehicles that have crossed since it was measured.',
  ),
  wetness: choice('Wetness', ['dry', 'moist', 'wet'], 'Squeeze a handful: crumbles, holds, drips.'),
};

export type SoftPatch = { readonly kind: 'softPatch' } & Values<typeof softPatchFields>;
