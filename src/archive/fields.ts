import type { FieldTable } from '../field.ts';
import { choice, flag, number } from '../field.ts';
import { READ_LIMITS } from '../route/limits.ts';
import { say } from '../words/words.ts';

/** The parts of a trip that have no table where they are declared: what a trip file adds to ground and vehicle. */
export const tripFields = {
  direction: choice(say.tripFields.direction, ['as recorded', 'reversed']),
} satisfies FieldTable;

export const trackFields = {
  kind: choice(say.tripFields.kind, ['track', 'route']),
} satisfies FieldTable;

export const placeFields = {
  lng: number(say.tripFields.lng, 'number', -180, 180),
  lat: number(say.tripFields.lat, 'number', -90, 90),
} satisfies FieldTable;

export const elevationFields = {
  elevationM: number(say.tripFields.elevationM, 'length', READ_LIMITS.lowestM, READ_LIMITS.highestM),
} satisfies FieldTable;

/** What is said of an elevation model beside its columns. */
export const modelFields = {
  nodeM: number(say.tripFields.nodeM, 'length', 0.01, 100_000),
  errorM: number(say.tripFields.errorM, 'length', 0.01, 100),
  isUsed: flag(say.tripFields.isUsed),
} satisfies FieldTable;

export const hillsideFields = {
  camberRad: number(say.tripFields.camberRad, 'angle', -1.57, 1.57),
} satisfies FieldTable;

export const stationFields = {
  stationM: number(say.tripFields.stationM, 'distance', 0, 40_000_000),
} satisfies FieldTable;

export const offsetFields = {
  offsetM: number(say.tripFields.offsetM, 'length', -30, 30),
} satisfies FieldTable;
