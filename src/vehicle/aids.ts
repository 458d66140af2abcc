import type { Words } from '../words/words.ts';
import type { VehicleValues } from './specs.ts';

/** What a driver has engaged. Brake traction control works by itself and is not engaged. */
export interface Aids {
  readonly lowRange: boolean;
  readonly centreLocked: boolean;
  readonly rearLocked: boolean;
  readonly frontLocked: boolean;
  readonly airedDown: boolean;
  readonly barsDisconnected: boolean;
}

/** What a rung is called in code and files; `say.rung` shows it. */
export type RungName = keyof Words['rung'];

/** One step of the ladder: the aids engaged up to here and the name of the one that this step adds. */
export interface Rung {
  readonly name: RungName;
  readonly aids: Aids;
}

/** As the vehicle comes. */
export const NO_AIDS: Aids = {
  lowRange: false,
  centreLocked: false,
  rearLocked: false,
  frontLocked: false,
  airedDown: false,
  barsDisconnected: false,
};

/** The rungs this vehicle has, from as it comes to everything engaged; each keeps what those below it engaged. */
export function ladder(values: VehicleValues): Rung[] {
  const rungs: Rung[] = [
    { name: values.drive === 'part-time four' ? 'four-wheel drive' : 'as it comes', aids: NO_AIDS },
  ];
  const add = (name: RungName, engaged: Partial<Aids>) => {
    const below = rungs[rungs.length - 1];
    rungs.push({ name, aids: { ...below.aids, ...engaged } });
  };
  const low = values.lowRangeRatio > 1;
  const lock = values.centre === 'lockable';
  if (low || lock)
    add(low && lock ? 'low range, centre locked' : low ? 'low range' : 'centre locked', {
      lowRange: low,
      centreLocked: lock,
    });
  if (values.rearDifferential === 'locker') add('rear locker', { rearLocked: true });
  if (values.frontDifferential === 'locker') add('front locker', { frontLocked: true });
  if (values.lowPressurePa < values.tyrePressurePa) add('tyres down', { airedDown: true });
  if (values.antiRollDisconnects) add('anti-roll bars off', { barsDisconnected: true });
  return rungs;
}
