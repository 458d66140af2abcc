import type { Trip } from '../archive/trip.ts';
import { classValues } from '../vehicle/classes.ts';
import type { VehicleField, VehicleValues } from '../vehicle/specs.ts';
import { vehicleFields } from '../vehicle/specs.ts';
import type { Vehicle, VehicleClass } from '../vehicle/vehicle.ts';
import { say } from '../words/words.ts';
import { capital, freeName } from './obstacleEdit.ts';

export function vehicleOf(trip: Trip, id: string | null): Vehicle | undefined {
  return trip.vehicles.find((vehicle) => vehicle.id === id);
}

/** A vehicle typical of its class, last in the convoy; every value is an estimate until its owner confirms it. */
export function addVehicle(trip: Trip, vehicleClass: VehicleClass, id: string): Trip {
  const vehicle: Vehicle = {
    id,
    name: freeName(capital(say.vehicleClass[vehicleClass]), namesOf(trip)),
    driver: '',
    vehicleClass,
    values: classValues(vehicleClass),
    estimated: Object.keys(vehicleFields) as VehicleField[],
  };
  return { ...trip, vehicles: [...trip.vehicles, vehicle] };
}

/** The same vehicle once more, right behind the first; the driver is another person. */
export function duplicateVehicle(trip: Trip, id: string, newId: string): Trip {
  return {
    ...trip,
    vehicles: trip.vehicles.flatMap((vehicle) =>
      vehicle.id === id
        ? [vehicle, { ...vehicle, id: newId, driver: '', name: freeName(vehicle.name, namesOf(trip)) }]
        : [vehicle],
    ),
  };
}

export function removeVehicle(trip: Trip, id: string): Trip {
  return { ...trip, vehicles: trip.vehicles.filter((vehicle) => vehicle.id !== id) };
}

/** One place towards the head (−1) or the tail (+1) of the convoy; the first and the last stay. */
export function moveVehicle(trip: Trip, id: string, by: -1 | 1): Trip {
  const from = trip.vehicles.findIndex((vehicle) => vehicle.id === id);
  return placeVehicle(trip, from, by < 0 ? from - 1 : from + 2);
}

/** The vehicle at `from` put before the one at `before`, or behind all; a place that is none changes nothing. */
export function placeVehicle(trip: Trip, from: number, before: number): Trip {
  const { vehicles } = trip;
  if (!(from in vehicles) || before < 0 || before > vehicles.length) return trip;
  if (before === from || before === from + 1) return trip;
  const others = vehicles.toSpliced(from, 1);
  return { ...trip, vehicles: others.toSpliced(before > from ? before - 1 : before, 0, vehicles[from]) };
}

/** The convoy in another order; whoever is not named stays behind, in the order as it was. */
export function inOrder(trip: Trip, ids: readonly string[]): Trip {
  const named = ids.flatMap((id) => trip.vehicles.filter((vehicle) => vehicle.id === id));
  return { ...trip, vehicles: [...named, ...trip.vehicles.filter(({ id }) => !ids.includes(id))] };
}

export function changeVehicle(trip: Trip, id: string, change: (vehicle: Vehicle) => Vehicle): Trip {
  return {
    ...trip,
    vehicles: trip.vehicles.map((vehicle) => (vehicle.id === id ? change(vehicle) : vehicle)),
  };
}

/** A value that someone entered is no estimate any more. */
export function withVehicleValue<F extends VehicleField>(
  vehicle: Vehicle,
  field: F,
  value: VehicleValues[F],
): Vehicle {
  return confirmed({ ...vehicle, values: { ...vehicle.values, [field]: value } }, [field]);
}

/** The owner says that these estimates hold. */
export function confirmed(vehicle: Vehicle, fields: readonly VehicleField[]): Vehicle {
  return { ...vehicle, estimated: vehicle.estimated.filter((field) => !fields.includes(field)) };
}

function namesOf(trip: Trip): string[] {
  return trip.vehicles.map(({ name }) => name);
}
