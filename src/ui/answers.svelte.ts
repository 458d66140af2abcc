import type { Cell, Matrix } from '../convoy/matrix.ts';
import type { SlopeProfile } from '../route/slope.ts';
import { slopeAt, slopeOf } from '../route/slope.ts';
import type { TrackSlope } from '../terrain/ground.ts';
import { matrixInWorkers } from '../workers/matrix.ts';
import { open } from './trip.svelte.ts';

/** What follows from the trip: the slopes of its track, and the matrix. Worked out again whenever the trip changes. */
class Answers {
  readonly #track = $derived(open.now.track);
  readonly profile: SlopeProfile | null = $derived(this.#track === null ? null : slopeOf(this.#track));
  matrix = $state.raw<Matrix | null>(null);
  /** Cells done of cells to do while working, else null. */
  working = $state.raw<{ readonly done: number; readonly of: number } | null>(null);
  fault = $state.raw<string | null>(null);

  /** Slope read off the track, or null where the track does not tell. */
  trackSlopeAt(stationM: number): TrackSlope | null {
    if (this.profile === null) return null;
    const { slopeRad, plusMinusRad } = slopeAt(this.profile, stationM);
    return Number.isNaN(slopeRad) ? null : { slopeRad, plusMinusRad };
  }

  cell(obstacleId: string, vehicleId: string): Cell | undefined {
    return this.matrix?.cells
      .flat()
      .find((cell) => cell.obstacleId === obstacleId && cell.vehicleId === vehicleId);
  }

  row(obstacleId: string): readonly Cell[] {
    return this.matrix?.cells.flat().filter((cell) => cell.obstacleId === obstacleId) ?? [];
  }

  /** Asks anew for the trip as it is; returns what cancels it. */
  ask(): () => void {
    const stopper = new AbortController();
    const { obstacles, vehicles, direction } = open.now;
    const places = obstacles.map((obstacle) => ({
      obstacle,
      trackSlope: this.trackSlopeAt(obstacle.stationM),
    }));
    const onProgress = (done: number, of: number) => (this.working = done < of ? { done, of } : null);
    matrixInWorkers(places, vehicles, direction, onProgress, stopper.signal).then(
      (matrix) => {
        if (matrix === null) return;
        this.matrix = matrix;
        this.working = null;
        this.fault = null;
      },
      (error: unknown) => {
        if (stopper.signal.aborted) return;
        this.matrix = null;
        this.working = null;
        this.fault = `The verdicts could not be worked out (${String(error)}). Load the page again.`;
      },
    );
    return () => stopper.abort();
  }
}

export const answers = new Answers();
