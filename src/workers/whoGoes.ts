import type { Cell, Place } from '../convoy/matrix.ts';
import type { Problem } from '../problem.ts';
import type { Direction } from '../terrain/obstacle.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import { placesOfTracks } from './archive.ts';
import { matrixInWorkers } from './matrix.ts';

/** What the convoy makes of one track of the archive. */
export interface Going {
  readonly id: string;
  /** Of every obstacle and vehicle. Empty where the track has no obstacles: nothing was measured, so nothing can be said. */
  readonly cells: readonly Cell[];
  /** The ground that was judged. */
  readonly places: readonly Place[];
  /** Tracks asked so far, this one too, and in all. */
  readonly done: number;
  readonly total: number;
  /** What could not be read of it; such ground is not known. */
  readonly problems: readonly Problem[];
}

/** Tracks that are read at a time while those before them are judged. */
const BATCH = 4;

/**
 * Takes the convoy over one track of the archive after the other, in the order of `ids`, as the archive has them now. Each is
 * told as it is known; ends early when `signal` is raised. Tracks that are no longer there are passed over.
 */
export async function* whoGoes(
  ids: readonly string[],
  vehicles: readonly Vehicle[],
  direction: Direction,
  signal?: AbortSignal,
): AsyncGenerator<Going, void> {
  const batchAt = (at: number) => placesOfTracks(ids.slice(at, at + BATCH));
  let next = batchAt(0);
  for (let at = 0; at < ids.length && !signal?.aborted; at += BATCH) {
    const { value, problems } = await next;
    if (at + BATCH < ids.length) next = batchAt(at + BATCH);
    for (const { id, places } of value ?? []) {
      const matrix = await matrixInWorkers(places, vehicles, direction, undefined, signal);
      if (matrix === null) return;
      const done = ids.indexOf(id, at) + 1;
      yield { id, cells: matrix.cells.flat(), places, done, total: ids.length, problems };
    }
  }
}
