import { rankOf } from '../grade/verdict.ts';
import type { Direction, Obstacle } from '../terrain/obstacle.ts';
import { afterPasses, wears } from '../terrain/wear.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import type { Place } from './matrix.ts';
import { rowOf } from './matrix.ts';
import type { Order, Runner } from './order.ts';
import { orderOf } from './order.ts';

/** An obstacle as `passes` vehicles leave it, each of its lines alike. */
export function worn(obstacle: Obstacle, passes: number): Obstacle {
  return {
    ...obstacle,
    stretch: afterPasses(obstacle.stretch, passes),
    lines: obstacle.lines.map((line) =>
      line.kind === 'bypass' ? { ...line, stretch: afterPasses(line.stretch, passes) } : line,
    ),
  };
}

function canWear(obstacle: Obstacle): boolean {
  return (
    wears(obstacle.stretch) || obstacle.lines.some((line) => line.kind === 'bypass' && wears(line.stretch))
  );
}

/** Whether a vehicle passes by itself once `passes` others have been. */
function goes(vehicle: Vehicle, place: Place, direction: Direction, passes: number): boolean {
  const [cell] = rowOf({ ...place, obstacle: worn(place.obstacle, passes) }, [vehicle], direction);
  return rankOf(cell.verdicts[cell.best].verdict.word) <= rankOf('needs momentum');
}

/** Most passes of others, up to `most`, after which a vehicle still goes unaided everywhere; -1 where it never does. */
export function passesBorne(
  vehicle: Vehicle,
  places: readonly Place[],
  direction: Direction,
  most: number,
): number {
  let borne = most;
  for (const place of places) {
    if (!goes(vehicle, place, direction, 0)) return -1;
    if (!canWear(place.obstacle)) continue;
    while (borne > 0 && !goes(vehicle, place, direction, borne)) borne--;
  }
  return borne >= most ? Infinity : borne;
}

function canPull({ values }: Vehicle): boolean {
  return values.winchN > 0 || (values.straps && values.rearPointN > 0);
}

/** The order in which most of the convoy goes unaided. */
export function orderFor(
  places: readonly Place[],
  vehicles: readonly Vehicle[],
  direction: Direction,
): Order {
  const runners = vehicles.map((vehicle): Runner => ({
    vehicleId: vehicle.id,
    passesBorne: passesBorne(vehicle, places, direction, vehicles.length - 1),
    canPull: canPull(vehicle),
  }));
  return orderOf(runners);
}
