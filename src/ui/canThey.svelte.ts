import { SvelteMap } from 'svelte/reactivity';
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
  /** Some of it could not be read. */
  readonly damaged: boolean;
  /** The track as it was asked of. */
  readonly updatedMs: number;
}

/** 'Can this convoy do it?', asked of one track of the archive after the other. */
class CanThey {
  readonly #fares = new SvelteMap<string, Faring>();
  /** Tracks done of tracks asked, while it is at work. */
  working = $state.raw<{ readonly done: number; readonly of: number } | null>(null);
  vehicles = $state.raw<readonly Vehicle[]>([]);
  #stopper: AbortController | null = null;

  get fares(): ReadonlyMap<string, Faring> {
    return this.#fares;
  }

  /** Asks of some tracks, in their order; what is known of the same vehicles stays. */
  async ask(
    rows: readonly { readonly id: string; readonly updatedMs: number }[],
    vehicles: readonly Vehicle[],
    direction: Direction,
  ): Promise<void> {
    this.stop();
    const stopper = new AbortController();
    this.#stopper = stopper;
    this.#fares.clear();
    this.vehicles = vehicles;
    const changed = new Map(rows.map(({ id, updatedMs }) => [id, updatedMs]));
    this.working = { done: 0, of: rows.length };
    try {
      for await (const going of whoGoes([...changed.keys()], vehicles, direction, stopper.signal)) {
        if (stopper.signal.aborted) return;
        const { id, cells, places, done, problems } = going;
        const hardest = hardestOf(cells);
        const worst = places.find(({ obstacle }) => obstacle.id === hardest?.obstacleId);
        const faring = {
          hardest,
          obstacleName: worst?.obstacle.name ?? '',
          damaged: problems.length > 0,
          updatedMs: changed.get(id) ?? 0,
        };
        this.#fares.set(id, faring);
        this.working = { done, of: rows.length };
      }
    } finally {
      if (this.#stopper === stopper) this.working = null;
    }
  }

  stop(): void {
    this.#stopper?.abort();
    this.working = null;
  }

  forget(): void {
    this.stop();
    this.#fares.clear();
  }
}

/** Best first; tracks of which nothing is known last. */
export function faringRank(faring: Faring | undefined): number {
  if (faring === undefined) return 100;
  return faring.hardest === null ? 99 : rankOf(faring.hardest.word);
}

export const canThey = new CanThey();
