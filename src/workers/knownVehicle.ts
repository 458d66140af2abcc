import { same } from '../archive/same.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';

/** How many vehicles are known again: several convoys, or one under a hand that changes it. */
const MOST_KNOWN = 64;

const asked: Vehicle[] = [];

/**
 * The vehicle as it came before, if it says the same: what was found out of one is kept by its record, and each task brings
 * another.
 */
export function knownVehicle(vehicle: Vehicle): Vehicle {
  const before = asked.find((one) => one.id === vehicle.id && same(one, vehicle));
  if (before) return before;
  asked.unshift(vehicle);
  asked.splice(MOST_KNOWN);
  return vehicle;
}
