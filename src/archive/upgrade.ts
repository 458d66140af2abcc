import type { Plain } from './reader.ts';

/** Turns a trip file of one version into one of the next. */
export type Upgrade = (record: Plain) => Plain;

/**
 * `UPGRADES[0]` takes version 1 to version 2, and so on. Steps are only ever added, never changed: each old version
 * stays in the tests as a file of its day.
 */
export const UPGRADES: readonly Upgrade[] = [];

/** The version that is written now. */
export const TRIP_VERSION = UPGRADES.length + 1;

/** A record of `version`, brought up to the newest one step at a time. */
export function upgraded(record: Plain, version: number, steps: readonly Upgrade[] = UPGRADES): Plain {
  return steps.slice(version - 1).reduce((old, step) => step(old), record);
}
