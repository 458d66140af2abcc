import type { Cell, Matrix, Place } from '../convoy/matrix.ts';
import { inOrderOfTravel } from '../convoy/matrix.ts';
import type { Direction, Obstacle } from '../terrain/obstacle.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import type { Lane } from './pool.ts';
import { answerAll } from './pool.ts';

export interface CellTask {
  readonly place: Place;
  readonly vehicle: Vehicle;
  readonly direction: Direction;
}

/** A worker that answers one cell after another; an ask waits for the one before it, cancelled or not. */
function workerLane(): Lane<CellTask, Cell> {
  const worker = new Worker(new URL('./matrix.worker.ts', import.meta.url), { type: 'module' });
  let before: Promise<unknown> = Promise.resolve();
  const answer = (task: CellTask) =>
    new Promise<Cell>((resolve, reject) => {
      worker.onmessage = ({ data }: MessageEvent<Cell>) => resolve(data);
      worker.onerror = (event) => reject(new Error(event.message));
      worker.postMessage(task);
    });
  return {
    ask: (task) => {
      const asked = before.then(() => answer(task));
      before = asked.catch(() => {});
      return asked;
    },
  };
}

/** Cells already answered. Records are never edited, so the same record means the same answer. */
const answered = new WeakMap<Obstacle, WeakMap<Vehicle, { task: CellTask; cell: Cell }>>();

function recall(task: CellTask): Cell | null {
  const kept = answered.get(task.place.obstacle)?.get(task.vehicle);
  if (kept === undefined || kept.task.direction !== task.direction) return null;
  const before = kept.task.place.trackSlope;
  const now = task.place.trackSlope;
  return before?.slopeRad === now?.slopeRad && before?.plusMinusRad === now?.plusMinusRad ? kept.cell : null;
}

function keep(task: CellTask, cell: Cell): void {
  const byVehicle =
    answered.get(task.place.obstacle) ?? new WeakMap<Vehicle, { task: CellTask; cell: Cell }>();
  byVehicle.set(task.vehicle, { task, cell });
  answered.set(task.place.obstacle, byVehicle);
}

let lanes: Lane<CellTask, Cell>[] | null = null;

/**
 * The matrix worked out off the page, on one worker fewer than the machine has cores. `onProgress` is told how many of
 * how many cells are there. Null when cancelled. What did not change since the last time is not worked out again.
 */
export async function matrixInWorkers(
  places: readonly Place[],
  vehicles: readonly Vehicle[],
  direction: Direction,
  onProgress: (done: number, of: number) => void = () => {},
  signal?: AbortSignal,
): Promise<Matrix | null> {
  lanes ??= Array.from({ length: Math.min(4, Math.max(1, navigator.hardwareConcurrency - 1)) }, workerLane);
  const tasks = inOrderOfTravel(places, direction).flatMap((place) =>
    vehicles.map((vehicle): CellTask => ({ place, vehicle, direction })),
  );
  const missing = tasks.filter((task) => recall(task) === null);
  let done = tasks.length - missing.length;
  onProgress(done, tasks.length);
  const answers = await answerAll(
    missing,
    lanes,
    (cell, index) => {
      keep(missing[index], cell);
      onProgress(++done, tasks.length);
    },
    signal,
  );
  if (answers === null) return null;
  const cells = tasks.map((task) => recall(task) as Cell);
  return {
    cells: places.map((_, row) => cells.slice(row * vehicles.length, (row + 1) * vehicles.length)),
  };
}
