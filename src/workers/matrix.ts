import type { Cell, Matrix, Place } from '../convoy/matrix.ts';
import { advisedBy, aheadOf, inOrderOfTravel, softensAnywhere } from '../convoy/matrix.ts';
import { bare } from '../convoy/places.ts';
import type { Direction, Obstacle } from '../terrain/obstacle.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import { spoken } from '../words/words.ts';
import type { MatrixTask } from './matrixTask.ts';
import type { Lane } from './pool.ts';
import { answerAll } from './pool.ts';

interface WorkerLane extends Lane<MatrixTask, Partial<Cell>[]> {
  /** Ends the worker, unless something is asked of it; the next ask starts another. */
  rest(): void;
  /** Tasks that are wanted no more: the worker is ended if it is at one of them, and none of them is begun. */
  drop(tasks: ReadonlySet<MatrixTask>): void;
}

/** The reason of an abort that ends a worker at once; without it a worker ends its task first, and stays warm. */
export const AT_ONCE = 'at-once';

/** A worker that answers one task after another; an ask waits for the one before it, cancelled or not. */
function workerLane(): WorkerLane {
  let worker: Worker | null = null;
  let before: Promise<unknown> = Promise.resolve();
  let waiting = 0;
  let at: { readonly task: MatrixTask; readonly leave: () => void } | null = null;
  const dropped = new WeakSet<MatrixTask>();
  const started = () =>
    new Worker(new URL('./matrix.worker.ts', import.meta.url), { type: 'module', name: spoken });
  const answer = (task: MatrixTask) =>
    new Promise<Partial<Cell>[]>((resolve, reject) => {
      if (dropped.has(task)) return resolve([]);
      at = { task, leave: () => resolve([]) };
      worker ??= started();
      worker.onmessage = ({ data }: MessageEvent<Partial<Cell>[]>) => resolve(data);
      worker.onerror = (event) => reject(new Error(event.message));
      worker.postMessage({ ...task, place: bare(task.place) });
    });
  return {
    ask: (task) => {
      waiting++;
      const asked = before
        .then(() => answer(task))
        .finally(() => {
          waiting--;
          at = null;
        });
      before = asked.catch(() => {});
      return asked;
    },
    rest: () => {
      if (waiting > 0) return;
      worker?.terminate();
      worker = null;
    },
    drop: (tasks) => {
      for (const task of tasks) dropped.add(task);
      if (at === null || !tasks.has(at.task)) return;
      worker?.terminate();
      worker = null;
      at.leave();
    },
  };
}

interface Kept {
  readonly direction: Direction;
  /** How many others went before it, where that makes a difference; else 0. */
  readonly ahead: number;
  readonly trackSlope: Place['trackSlope'];
  readonly cell: Cell;
}

/** Cells already answered. Records are never edited, so the same record means the same answer. */
const answered = new WeakMap<Obstacle, WeakMap<Vehicle, Kept>>();

function recall(
  { obstacle, trackSlope }: Place,
  vehicle: Vehicle,
  direction: Direction,
  ahead: number,
): Cell | null {
  const kept = answered.get(obstacle)?.get(vehicle);
  if (kept?.direction !== direction || kept.ahead !== aheadAt(obstacle, ahead)) return null;
  const same =
    kept.trackSlope?.slopeRad === trackSlope?.slopeRad &&
    kept.trackSlope?.plusMinusRad === trackSlope?.plusMinusRad;
  return same ? kept.cell : null;
}

function keep({ place, vehicles, ahead, direction }: MatrixTask, cells: readonly Cell[]): void {
  const { obstacle, trackSlope } = place;
  const byVehicle = answered.get(obstacle) ?? new WeakMap<Vehicle, Kept>();
  vehicles.forEach((vehicle, i) =>
    byVehicle.set(vehicle, { direction, trackSlope, ahead: aheadAt(obstacle, ahead[i]), cell: cells[i] }),
  );
  answered.set(obstacle, byVehicle);
}

/** Those that go before count only where they leave the ground softer. */
function aheadAt(obstacle: Obstacle, ahead: number): number {
  return softensAnywhere(obstacle) ? ahead : 0;
}

let lanes: WorkerLane[] | null = null;

/** One worker fewer than the machine has cores. They answer what else is asked of a place too: its grade. */
export function matrixLanes(): readonly Lane<MatrixTask, Partial<Cell>[]>[] {
  lanes ??= Array.from({ length: Math.min(4, Math.max(1, navigator.hardwareConcurrency - 1)) }, workerLane);
  return lanes;
}

/** Workers that nobody asks anything of make room for what takes much of it. */
export function restMatrixLanes(): void {
  for (const lane of lanes ?? []) lane.rest();
}

/** A task, and what is known of its cells. */
interface Asked {
  readonly task: MatrixTask;
  readonly cells: readonly Cell[];
}

/** Answers tasks off the page; false when cancelled, for the reason `AT_ONCE` without waiting for any worker. */
async function answerTasks(
  asked: readonly Asked[],
  onCells: (cells: readonly Cell[]) => void,
  signal?: AbortSignal,
): Promise<boolean> {
  const tasks = asked.map(({ task }) => task);
  const drop = () => {
    if (signal?.reason === AT_ONCE) for (const lane of lanes ?? []) lane.drop(new Set(tasks));
  };
  signal?.addEventListener('abort', drop, { once: true });
  const answers = await answerAll(
    tasks,
    matrixLanes(),
    (parts, index) => {
      const { task, cells: known } = asked[index];
      const cells = parts.map((part, i) => ({ ...known[i], ...part }));
      keep(task, cells);
      onCells(cells);
    },
    signal,
  );
  return answers !== null;
}

/**
 * The matrix, worked out off the page. `onCells` is told cells as they come, those that are known already first. Null
 * when cancelled. What did not change since the last time is not worked out again.
 */
export async function matrixInWorkers(
  places: readonly Place[],
  vehicles: readonly Vehicle[],
  direction: Direction,
  onCells: (cells: readonly Cell[]) => void = () => {},
  signal?: AbortSignal,
): Promise<Matrix | null> {
  const ordered = inOrderOfTravel(places, direction);
  const tasks: Asked[] = [];
  for (const place of ordered) {
    const known = vehicles.map((vehicle, i) => recall(place, vehicle, direction, i));
    onCells(known.flatMap((cell) => cell ?? []));
    const ahead = aheadOf(vehicles).filter((i) => known[i] === null);
    const missing = ahead.map((i) => vehicles[i]);
    const task: MatrixTask = { place, vehicles: missing, ahead, direction, asks: 'verdicts', advised: [] };
    if (missing.length > 0) tasks.push({ task, cells: [] });
  }
  return (await answerTasks(tasks, onCells, signal)) ? recalled(ordered, vehicles, direction) : null;
}

/** The same matrix with the `goesIn`, or the `bands`, of each cell, or of those of `only`; null when cancelled. */
export async function closerInWorkers(
  asks: 'sureness' | 'bands',
  places: readonly Place[],
  vehicles: readonly Vehicle[],
  direction: Direction,
  only: readonly Vehicle[] = vehicles,
  signal?: AbortSignal,
): Promise<Matrix | null> {
  const ordered = inOrderOfTravel(places, direction);
  const tasks = ordered.flatMap((place): Asked[] => {
    const known = vehicles.map((vehicle, i) => recall(place, vehicle, direction, i));
    const ahead = aheadOf(vehicles).filter((i) => {
      const missing = asks === 'sureness' ? known[i]?.goesIn : known[i]?.bands;
      return missing === undefined && only.includes(vehicles[i]);
    });
    const left = ahead.map((i) => vehicles[i]);
    const cells = ahead.flatMap((i) => known[i] ?? []);
    if (cells.length === 0 || cells.length !== left.length) return [];
    const advised = asks === 'sureness' ? cells.map(advisedBy) : [];
    return [{ task: { place, vehicles: left, ahead, direction, asks, advised }, cells }];
  });
  return (await answerTasks(tasks, () => {}, signal)) ? recalled(ordered, vehicles, direction) : null;
}

function recalled(ordered: readonly Place[], vehicles: readonly Vehicle[], direction: Direction): Matrix {
  return {
    cells: ordered.map((place) => vehicles.map((vehicle, i) => recall(place, vehicle, direction, i) as Cell)),
  };
}
