import type { Cell, Place } from '../convoy/matrix.ts';
import { gradeBySizes } from '../grade/rating.ts';
import type { Problem } from '../problem.ts';
import type { Direction } from '../terrain/obstacle.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import { placesOfTracks } from './archive.ts';
import { matrixInWorkers, matrixLanes, restMatrixLanes } from './matrix.ts';

/** What the convoy makes of one track of the archive. */
export interface Going {
  readonly id: string;
  /**
   * Of every obstacle that was judged and every vehicle. Empty where the track has no obstacles, or cannot be read: nothing
   * can be said then.
   */
  readonly cells: readonly Cell[];
  /** The ground that was judged. */
  readonly places: readonly Place[];
  /** Obstacles that were not judged any more, since one of the vehicles does not go on another. */
  readonly unasked: number;
  /** Tracks asked so far, this one too, and in all. */
  readonly done: number;
  readonly total: number;
  /** What could not be read of it; such ground is not known. */
  readonly problems: readonly Problem[];
}

/** Tracks that are read at a time while those before them are judged; the first alone, so that it is known soon. */
const BATCH = 4;

/**
 * Takes the convoy over one track of the archive after the other, in the order of `ids`, as the archive has them now. Each is
 * told as it is known: when all of it is judged, or at the first obstacle on which a vehicle does not go. Ends early when
 * `signal` is raised. Tracks that are no longer there are passed over. At the end the workers make room for what is asked of
 * the archive next.
 */
export async function* whoGoes(
  ids: readonly string[],
  vehicles: readonly Vehicle[],
  direction: Direction,
  signal?: AbortSignal,
): AsyncGenerator<Going, void> {
  const endOf = (at: number) => (at === 0 ? 1 : at + BATCH);
  const batchAt = (at: number) => placesOfTracks(ids.slice(at, endOf(at)));
  let next = batchAt(0);
  try {
    for (let at = 0; at < ids.length && !signal?.aborted; at = endOf(at)) {
      const { value } = await next;
      if (endOf(at) < ids.length) next = batchAt(endOf(at));
      for (const { id, places, problems } of value ?? []) {
        const judged = await judgedOn(places, vehicles, direction, signal);
        if (judged === null) return;
        const done = ids.indexOf(id, at) + 1;
        yield { id, ...judged, done, total: ids.length, problems };
      }
    }
  } finally {
    restMatrixLanes();
  }
}

/** The hardest by their sizes first, as many at a time as there are workers; null when cancelled. */
async function judgedOn(
  places: readonly Place[],
  vehicles: readonly Vehicle[],
  direction: Direction,
  signal?: AbortSignal,
): Promise<Pick<Going, 'cells' | 'places' | 'unasked'> | null> {
  const hardestFirst = places
    .map((place) => ({ place, level: gradeBySizes(place, 'dry', 'australia').level }))
    .sort((a, b) => b.level - a.level)
    .map(({ place }) => place);
  const cells: Cell[] = [];
  const atOnce = matrixLanes().length;
  let at = 0;
  while (at < places.length && !cells.some(stops)) {
    const some = hardestFirst.slice(at, at + atOnce);
    const matrix = await matrixInWorkers(some, vehicles, direction, undefined, signal);
    if (matrix === null) return null;
    cells.push(...matrix.cells.flat());
    at += some.length;
  }
  return { cells, places: hardestFirst.slice(0, at), unasked: places.length - at };
}

function stops({ verdicts, best }: Cell): boolean {
  return verdicts[best].verdict.word === 'does not go';
}
