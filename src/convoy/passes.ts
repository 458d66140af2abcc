import type { Direction, Obstacle } from '../terrain/obstacle.ts';
import { afterPasses, wears } from '../terrain/wear.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import type { Place } from './matrix.ts';
import { passesUnaided, rowOf } from './matrix.ts';
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

/** Whether vehicles leave any line of an obstacle different for those behind. */
export function canWear(obstacle: Obstacle): boolean {
  return (
    wears(obstacle.stretch) || obstacle.lines.some((line) => line.kind === 'bypass' && wears(line.stretch))
  );
}

/** Those of `vehicles` that pass by themselves once `passes` others have been. */
function goers(
  vehicles: readonly Vehicle[],
  place: Place,
  direction: Direction,
  passes: number,
): ReadonlySet<Vehicle> {
  const cells = rowOf({ ...place, obstacle: worn(place.obstacle, passes) }, vehicles, direction);
  return new Set(vehicles.filter((_, i) => passesUnaided(cells[i])));
}

/**
 * Most passes of others, up to `most`, after which each vehicle still goes unaided everywhere: Infinity where it bears
 * them all, -1 where it never does.
 */
export function passesBorne(
  vehicles: readonly Vehicle[],
  places: readonly Place[],
  direction: Direction,
  most: number,
): number[] {
  const borne = new Map(vehicles.map((vehicle) => [vehicle, most]));
  const bearing = (passes: number) => vehicles.filter((vehicle) => borne.get(vehicle)! >= passes);
  for (const place of places) {
    const fresh = goers(bearing(0), place, direction, 0);
    for (const vehicle of bearing(0)) if (!fresh.has(vehicle)) borne.set(vehicle, -1);
    if (!canWear(place.obstacle)) continue;
    let unsure = bearing(1);
    for (let passes = most; unsure.length > 0 && passes > 0; passes--) {
      const asked = unsure.filter((vehicle) => borne.get(vehicle)! >= passes);
      const through = goers(asked, place, direction, passes);
      for (const vehicle of asked) if (!through.has(vehicle)) borne.set(vehicle, passes - 1);
      unsure = unsure.filter((vehicle) => !through.has(vehicle));
    }
  }
  return vehicles.map((vehicle) => (borne.get(vehicle)! >= most ? Infinity : borne.get(vehicle)!));
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
  const borne = passesBorne(vehicles, places, direction, vehicles.length - 1);
  return orderOf(
    vehicles.map((vehicle, i): Runner => ({
      vehicleId: vehicle.id,
      passesBorne: borne[i],
      canPull: canPull(vehicle),
    })),
  );
}
