import type { Levels } from '../archive/trackRow.ts';
import type { Hardest } from '../convoy/hardest.ts';
import { hardestOf } from '../convoy/hardest.ts';
import { rankOf } from '../grade/verdict.ts';
import type { Direction } from '../terrain/obstacle.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import { whoGoes } from '../workers/whoGoes.ts';

/** What a convoy makes of one track: how it fares worst; null where there is nothing to judge by. */
export interface Faring {
  readonly hardest: Hardest | null;
  /** Name of the obstacle where it does so; empty where it has none. */
  readonly obstacleName: string;
  /** Obstacles that were not asked any more. */
  readonly unasked: number;
  /** Some of it could not be read. */
  readonly damaged: boolean;
  /** The track as it was asked of. */
  readonly updatedMs: number;
}

/** A row of the archive, as far as the convoy's question goes. */
interface Asked {
  readonly id: string;
  readonly updatedMs: number;
  readonly levels: Levels;
  readonly obstacleCount: number;
}

/** Answers come faster than a list of thousands can be put in order; they are shown this often, the first at once. */
const SHOWN_EVERY_MS = 250;

/** 'Can this convoy do it?', asked of one track of the archive after the other. */
class CanThey {
  #fares = $state.raw<ReadonlyMap<string, Faring>>(new Map());
  /** Tracks done of tracks asked, while it is at work. */
  working = $state.raw<{ readonly done: number; readonly of: number } | null>(null);
  vehicles = $state.raw<readonly Vehicle[]>([]);
  #stopper: AbortController | null = null;

  get fares(): ReadonlyMap<string, Faring> {
    return this.#fares;
  }

  /** Asks of some tracks, those that are likeliest to go first. */
  async ask(rows: readonly Asked[], vehicles: readonly Vehicle[], direction: Direction): Promise<void> {
    this.stop();
    const stopper = new AbortController();
    this.#stopper = stopper;
    const fares: [string, Faring][] = [];
    this.#fares = new Map();
    this.vehicles = vehicles;
    const changed = new Map(likeliestFirst(rows).map(({ id, updatedMs }) => [id, updatedMs]));
    let shownMs = 0;
    const show = (done: number) => {
      this.#fares = new Map(fares);
      this.working = { done, of: rows.length };
      shownMs = performance.now();
    };
    this.working = { done: 0, of: rows.length };
    try {
      for await (const going of whoGoes([...changed.keys()], vehicles, direction, stopper.signal)) {
        if (stopper.signal.aborted) return;
        const { id, cells, places, done, problems, unasked } = going;
        const hardest = hardestOf(cells);
        const worst = places.find(({ obstacle }) => obstacle.id === hardest?.obstacleId);
        const faring = {
          hardest,
          obstacleName: worst?.obstacle.name ?? '',
          unasked,
          damaged: problems.length > 0,
          updatedMs: changed.get(id) ?? 0,
        };
        fares.push([id, faring]);
        if (performance.now() - shownMs >= SHOWN_EVERY_MS) show(done);
      }
    } finally {
      if (this.#stopper === stopper) {
        this.#fares = new Map(fares);
        this.working = null;
      }
    }
  }

  stop(): void {
    this.#stopper?.abort();
    this.working = null;
  }

  forget(): void {
    this.stop();
    this.#stopper = null;
    this.#fares = new Map();
  }
}

/** By the grades of their sizes, the easiest first, then those with the fewest obstacles. */
function likeliestFirst(rows: readonly Asked[]): readonly Asked[] {
  const level = ({ levels: { australia } }: Asked) => (typeof australia === 'number' ? australia : Infinity);
  const by = (a: number, b: number) => (a === b ? 0 : a - b);
  return rows.toSorted((a, b) => by(level(a), level(b)) || a.obstacleCount - b.obstacleCount);
}

/** Best first; tracks of which nothing is known last. */
export function faringRank(faring: Faring | undefined): number {
  if (faring === undefined) return 100;
  return faring.hardest === null ? 99 : rankOf(faring.hardest.word);
}

export const canThey = new CanThey();
