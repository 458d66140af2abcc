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
  /** How many others of the convoy go before each of them. */
  readonly ahead: readonly number[];
  readonly direction: Direction;
  /** Whole cells without more, how sure each is, or where else it goes. */
  readonly asks: 'verdicts' | 'sureness' | 'bands';
  /** What the cells advise, where it is asked how sure that is. */
  readonly advised: readonly Advised[];
}

/** Of each vehicle's cell what was asked, and no more: whole cells are large, and to send them takes its time. */
export function answerTask(task: MatrixTask): Partial<Cell>[] {
  const { place, vehicles: sent, ahead, direction, asks, advised } = task;
  const vehicles = sent.map(knownVehicle);
  return lettingGo(() => {
    switch (asks) {
      case 'verdicts':
        return rowOf(place, vehicles, direction, ahead);
      case 'sureness':
        return surenessOf(place, vehicles, advised, direction, ahead).map((goesIn) => ({ goesIn }));
      case 'bands':
        return bandsOver(place, vehicles, direction, ahead).map((bands) => ({ bands }));
    }
  });
}
