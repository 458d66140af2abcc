import type { Advised, Cell, Place } from '../convoy/matrix.ts';
import { bandsOver, rowOf, surenessOf } from '../convoy/matrix.ts';
import type { Direction } from '../terrain/obstacle.ts';
import { lettingGo } from '../traverse/relief.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import { knownVehicle } from './knownVehicle.ts';

/** One obstacle for some vehicles: they share its ground, which is sampled once. */
export interface MatrixTask {
  readonly place: Place;
  readonly vehicles: readonly Vehicle[];
  readonly direction: Direction;
  /** Whole cells without more, how sure each is, or where else it goes. */
  readonly asks: 'verdicts' | 'sureness' | 'bands';
  /** What the cells advise, where it is asked how sure that is. */
  readonly advised: readonly Advised[];
}

/** Of each vehicle's cell what was asked, and no more: whole cells are large, and to send them takes its time. */
export function answerTask({ place, vehicles: sent, direction, asks, advised }: MatrixTask): Partial<Cell>[] {
  const vehicles = sent.map(knownVehicle);
  return lettingGo(() => {
    switch (asks) {
      case 'verdicts':
        return rowOf(place, vehicles, direction);
      case 'sureness':
        return surenessOf(place, vehicles, advised, direction).map((goesIn) => ({ goesIn }));
      case 'bands':
        return bandsOver(place, vehicles, direction).map((bands) => ({ bands }));
    }
  });
}
