import type { Cell, Matrix, Place } from '../convoy/matrix.ts';
import { inOrderOfTravel } from '../convoy/matrix.ts';
import type { Direction, Obstacle } from '../terrain/obstacle.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import type { Lane } from './pool.ts';
import { answerAll } from './pool.ts';

/** One obstacle for some vehicles: they share its ground, which is sampled once. */
export interface RowTask {
  readonly place: Place;
  readonly vehicles: readonly Vehicle[];
  readonly direction: Direction;
}

/** A worker that answers one row after another; an ask waits for the one before it, cancelled or not. */
function workerLane(): Lane<RowTask, Cell[]> {
  const worker = new Worker(new URL('./matrix.worker.ts', import.meta.url), { type: 'module' });
  let before: Promise<unknown> = Promise.resolve();
  const answer = (task: RowTask) =>
    new Promise<Cell[]>((resolve, reject) => {
      worker.onmessage = ({ data }: MessageEvent<Cell[]>) => resolve(data);
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

interface Kept {
  readonly direction: Direction;
  readonly trackSlope: Place['trackSlope'];
  readonly cell: Cell;
}

/** Cells already answered. Records are never edited, so the same record means the same answer. */
const answered = new WeakMap<Obstacle, WeakMap<Vehicle, Kept>>();

function recall({ obstacle, trackSlope }: Place, vehicle: Vehicle, direction: Direction): Cell | null {
  const kept = answered.get(obstacle)?.get(vehicle);
  if (kept === undefined || kept.direction !== direction) return null;
  const same =
    kept.trackSlope?.slopeRad === trackSlope?.slopeRad &&
    kept.trackSlope?.plusMinusRad === trackSlope?.plusMinusRad;
  return same ? kept.cell : null;
}

function keep({ place, vehicles, direction }: RowTask, cells: readonly Cell[]): void {
  const byVehicle = answered.get(place.obstacle) ?? new WeakMap<Vehicle, Kept>();
  vehicles.forEach((vehicle, i) =>
    byVehicle.set(vehicle, { direction, trackSlope: place.trackSlope, cell: cells[i] }),
  );
  answered.set(place.obstacle, byVehicle);
}

let lanes: Lane<RowTask, Cell[]>[] | null = null;

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
  const ordered = inOrderOfTravel(places, direction);
  const tasks = ordered
    .map((place): RowTask => ({
      place,
      vehicles: vehicles.filter((vehicle) => recall(place, vehicle, direction) === null),
      direction,
    }))
    .filter((task) => task.vehicles.length > 0);
  const total = places.length * vehicles.length;
  let done = total - tasks.reduce((sum, task) => sum + task.vehicles.length, 0);
  onProgress(done, total);
  const answers = await answerAll(
    tasks,
    lanes,
    (cells, index) => {
      keep(tasks[index], cells);
      done += cells.length;
      onProgress(done, total);
    },
    signal,
  );
  if (answers === null) return null;
  return {
    cells: ordered.map((place) => vehicles.map((vehicle) => recall(place, vehicle, direction) as Cell)),
  };
}
