import type { Trip } from '../archive/trip.ts';
import type { Cell, Matrix, Place } from '../convoy/matrix.ts';
import { softensAnywhere } from '../convoy/matrix.ts';
import { trackSlopeAt } from '../convoy/places.ts';
import { otherHeights } from '../route/heights.ts';
import type { SlopeProfile } from '../route/slope.ts';
import { slopeOf } from '../route/slope.ts';
import type { TrackSlope } from '../terrain/ground.ts';
import { withHeld } from '../terrain/heldGrip.ts';
import type { Obstacle } from '../terrain/obstacle.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import { AT_ONCE, closerInWorkers, matrixInWorkers } from '../workers/matrix.ts';
import { say } from '../words/words.ts';
import { open } from './trip.svelte.ts';

/** Cells that have come, and the trip that they answer for. */
interface Answered {
  readonly cells: ReadonlyMap<string, Cell>;
  /** Null until the last cell has come. */
  readonly whole: Matrix | null;
  readonly trip: Trip;
  readonly places: readonly Place[];
}

function keyOf(obstacleId: string, vehicleId: string): string {
  return JSON.stringify([obstacleId, vehicleId]);
}

/** What follows from the trip: the slopes of its track, and the matrix. Worked out again whenever the trip changes. */
class Answers {
  readonly #track = $derived(open.now.track);
  readonly profile: SlopeProfile | null = $derived(this.#track === null ? null : slopeOf(this.#track));
  /** The slopes by the elevations that were not chosen, to check by; null where there are none. */
  readonly other: SlopeProfile | null = $derived.by(() => {
    const from = this.#track && otherHeights(this.#track);
    return this.#track && from && slopeOf(this.#track, { from });
  });
  #answered = $state.raw<Answered | null>(null);
  /** Cells done of cells to do while working, else null. */
  working = $state.raw<{ readonly done: number; readonly of: number } | null>(null);
  /** The same where the leader stopped it: the other cells are not worked out until it goes on, or the trip changes. */
  stopped = $state.raw<{ readonly done: number; readonly of: number } | null>(null);
  fault = $state.raw<string | null>(null);
  #stopper: AbortController | null = null;
  #asks = $state.raw(0);

  /** Slope read off the track, or null where the track does not tell. */
  trackSlopeAt(stationM: number): TrackSlope | null {
    return this.profile && trackSlopeAt(this.profile, stationM);
  }

  /** An obstacle of the trip as it is judged. */
  placeOf(obstacle: Obstacle): Place {
    return {
      obstacle: withHeld(obstacle, open.now.heldGrips),
      trackSlope: this.trackSlopeAt(obstacle.stationM),
    };
  }

  /** The whole matrix, once it answers for the trip as it is; an answer to what has been changed since is none. */
  get whole(): { readonly matrix: Matrix; readonly trip: Trip; readonly places: readonly Place[] } | null {
    const answered = this.#answered;
    if (answered?.whole == null) return null;
    const { obstacles, vehicles, direction, track, heldGrips } = open.now;
    const { trip, places, whole } = answered;
    const fresh =
      trip.obstacles === obstacles &&
      trip.vehicles === vehicles &&
      trip.direction === direction &&
      trip.track === track &&
      trip.heldGrips === heldGrips;
    return fresh ? { matrix: whole, trip, places } : null;
  }

  /**
   * One cell, unless its obstacle's ground or lines, its vehicle's values, the track or the direction were changed since, or
   * its place in the order where those ahead leave the ground softer.
   */
  cell(obstacleId: string, vehicleId: string): Cell | undefined {
    if (this.#answered === null) return undefined;
    const { cells, trip } = this.#answered;
    const { direction, track, heldGrips } = open.now;
    if (trip.direction !== direction || trip.track !== track || trip.heldGrips !== heldGrips)
      return undefined;
    const obstacle = [trip, open.now].map(({ obstacles }) => obstacles.find(({ id }) => id === obstacleId));
    const vehicle = [trip, open.now].map(({ vehicles }) => vehicles.find(({ id }) => id === vehicleId));
    const same =
      obstacle[0]?.stretch === obstacle[1]?.stretch &&
      obstacle[0]?.lines === obstacle[1]?.lines &&
      obstacle[0]?.stationM === obstacle[1]?.stationM &&
      vehicle[0]?.values === vehicle[1]?.values;
    if (!same) return undefined;
    const place = [trip, open.now].map(({ vehicles }) => vehicles.findIndex(({ id }) => id === vehicleId));
    if (obstacle[1] && softensAnywhere(obstacle[1]) && place[0] !== place[1]) return undefined;
    return cells.get(keyOf(obstacleId, vehicleId));
  }

  row(obstacleId: string): readonly Cell[] {
    return open.now.vehicles.flatMap(({ id }) => this.cell(obstacleId, id) ?? []);
  }

  /** Asks anew for the verdicts of the trip as it is; returns what cancels it. */
  ask(): () => void {
    void this.#asks;
    const stopper = new AbortController();
    this.#stopper = stopper;
    this.stopped = null;
    const trip = open.now;
    const places = trip.obstacles.map((obstacle) => this.placeOf(obstacle));
    const { vehicles, direction } = trip;
    const of = places.length * vehicles.length;
    let cells: ReadonlyMap<string, Cell> = new Map();
    const onCells = (come: readonly Cell[]) => {
      cells = withCells(cells, come);
      this.#answered = { cells, whole: null, trip, places };
      this.working = cells.size < of ? { done: cells.size, of } : null;
    };
    matrixInWorkers(places, vehicles, direction, onCells, stopper.signal)
      .then((matrix) => {
        if (matrix === null) return;
        this.#answered = { cells: withCells(cells, matrix.cells.flat()), whole: matrix, trip, places };
        this.working = null;
        this.fault = null;
      })
      .catch(this.#failed(stopper.signal));
    return () => stopper.abort();
  }

  /** Ends the work on the matrix at once; the cells that have come stay. */
  stop(): void {
    if (this.working === null) return;
    this.stopped = this.working;
    this.working = null;
    this.#stopper?.abort(AT_ONCE);
  }

  /** Goes on where it was stopped. */
  goOn(): void {
    this.#asks++;
  }

  /** Asks how sure the verdicts are, once all of them have come; returns what cancels it. */
  askHowSure(): () => void {
    const known = this.whole;
    if (known === null || known.matrix.cells.flat().every(({ goesIn }) => goesIn !== undefined))
      return () => {};
    return this.#askCloser('sureness', known.places);
  }

  /** Asks where else the vehicle of one cell goes; returns what cancels it. */
  askBands({ obstacleId, vehicleId, bands }: Cell): () => void {
    const known = this.whole;
    if (known === null || bands !== undefined) return () => {};
    return this.#askCloser(
      'bands',
      known.places.filter(({ obstacle }) => obstacle.id === obstacleId),
      known.trip.vehicles.filter(({ id }) => id === vehicleId),
    );
  }

  /** Of some rows and columns of the matrix that has come. */
  #askCloser(asks: 'sureness' | 'bands', places: readonly Place[], only?: readonly Vehicle[]): () => void {
    const stopper = new AbortController();
    const { vehicles, direction } = open.now;
    closerInWorkers(asks, places, vehicles, direction, only, stopper.signal)
      .then((matrix) => {
        const answered = this.#answered;
        if (matrix === null || answered?.whole == null) return;
        const cells = withCells(answered.cells, matrix.cells.flat());
        const whole = {
          cells: answered.whole.cells.map((row) =>
            row.map((cell) => cells.get(keyOf(cell.obstacleId, cell.vehicleId)) ?? cell),
          ),
        };
        this.#answered = { ...answered, cells, whole };
      })
      .catch(this.#failed(stopper.signal));
    return () => stopper.abort();
  }

  #failed(signal: AbortSignal): (error: unknown) => void {
    return (error) => {
      if (signal.aborted) return;
      this.#answered = null;
      this.working = null;
      this.fault = say.notices.verdictsFault(String(error));
    };
  }
}

function withCells(cells: ReadonlyMap<string, Cell>, come: readonly Cell[]): ReadonlyMap<string, Cell> {
  return new Map([...cells, ...come.map((cell) => [keyOf(cell.obstacleId, cell.vehicleId), cell] as const)]);
}

export const answers = new Answers();
