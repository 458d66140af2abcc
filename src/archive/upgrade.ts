import type { Plain } from './reader.ts';

/** Turns a trip file of one version into one of the next. */
export type Upgrade = (record: Plain) => Plain;

/**
 * `UPGRADES[0]` takes version 1 to version 2, and so on. Steps are only ever added, never changed: each old version
 * stays in the tests as a file of its day.
 */
export const UPGRADES: readonly Upgrade[] = [withEmptyPhotos, withoutModel, withNothingHeld];

/** Version 2 keeps photos with each obstacle. */
function withEmptyPhotos(record: Plain): Plain {
  if (!Array.isArray(record.obstacles)) return { ...record, version: 2 };
  const obstacles = record.obstacles.map((obstacle: unknown) =>
    typeof obstacle === 'object' && obstacle !== null && !Array.isArray(obstacle)
      ? { photos: [], ...obstacle }
      : obstacle,
  );
  return { ...record, version: 2, obstacles };
}

/** Version 3 keeps what an elevation model says along the track. */
function withoutModel(record: Plain): Plain {
  return { ...record, version: 3, track: withModelName(record.track) };
}

/** Version 4 keeps what ground is held slipperier than printed. */
function withNothingHeld(record: Plain): Plain {
  return { heldGrips: [], ...record, version: 4 };
}

/** A filed track of any day with the name under which an elevation model stands today. */
export function withModelName(track: unknown): unknown {
  const isTrack = typeof track === 'object' && track !== null && !Array.isArray(track);
  return isTrack ? { model: null, ...track } : track;
}

/** The version that is written now. */
export const TRIP_VERSION = UPGRADES.length + 1;

/** A record of `version`, brought up to the newest one step at a time. */
export function upgraded(record: Plain, version: number, steps: readonly Upgrade[] = UPGRADES): Plain {
  return steps.slice(version - 1).reduce((old, step) => step(old), record);
}
