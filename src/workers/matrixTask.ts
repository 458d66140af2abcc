import type { Cell, Place } from '../convoy/matrix.ts';
import { bandsOver, rowOf, surenessOf } from '../convoy/matrix.ts';
import type { Direction } from '../terrain/obstacle.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';

/** One obstacle for some vehicles: they share its ground, which is sampled once. */
export interface MatrixTask {
  readonly place: Place;
  readonly vehicles: readonly Vehicle[];
  readonly direction: Direction;
  /** The verdicts of its cells, and then, told `cells`, how sure each is and where else it goes. */
  readonly asks: 'verdicts' | 'sureness' | 'bands';
  readonly cells: readonly Cell[];
}

export function answerTask({ place, vehicles, direction, asks, cells }: MatrixTask): Cell[] {
  switch (asks) {
    case 'verdicts':
      return rowOf(place, vehicles, direction);
    case 'sureness':
      return surenessOf(place, vehicles, cells, direction).map((goesIn, i) => ({ ...cells[i], goesIn }));
    case 'bands':
      return bandsOver(place, vehicles, direction).map((bands, i) => ({ ...cells[i], bands }));
  }
}
