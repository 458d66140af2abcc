import type { Cell, Place } from '../convoy/matrix.ts';
import { rowOf, surenessOf } from '../convoy/matrix.ts';
import type { Direction } from '../terrain/obstacle.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';

/** One obstacle for some vehicles: they share its ground, which is sampled once. */
export interface MatrixTask {
  readonly place: Place;
  readonly vehicles: readonly Vehicle[];
  readonly direction: Direction;
  /** Null to be told the cells; the cells to be told how sure each is. */
  readonly cells: readonly Cell[] | null;
}

export function answerTask({ place, vehicles, direction, cells }: MatrixTask): Cell[] {
  if (cells === null) return rowOf(place, vehicles, direction);
  return surenessOf(place, vehicles, cells, direction).map((goesIn, i) => ({ ...cells[i], goesIn }));
}
