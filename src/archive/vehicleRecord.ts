import type { VehicleField, VehicleValues } from '../vehicle/specs.ts';
import { vehicleFields } from '../vehicle/specs.ts';
import type { Vehicle, VehicleClass } from '../vehicle/vehicle.ts';
import { VEHICLE_CLASSES, checkVehicle } from '../vehicle/vehicle.ts';
import type { Reader } from './reader.ts';
import { printable, taken } from './reader.ts';
import { say } from '../words/words.ts';

export const VEHICLE_NAMES = ['id', 'name', 'driver', 'vehicleClass', 'values', 'estimated'];

/**
 * Reads a vehicle. Where a choice or a flag of it could not be read, its mass becomes NaN, not known: nothing is judged
 * for it until someone has entered it again.
 */
export function vehicleFrom(
  reader: Reader,
  value: unknown,
  where: string,
  { ids, number }: { readonly ids: Set<string>; readonly number: number },
): Vehicle | null {
  const record = reader.record(value, where, VEHICLE_NAMES);
  if (record === null) return null;
  const filed = reader.record(record.values, `${where}.values`, Object.keys(vehicleFields));
  const { values, whole } = taken(vehicleFields, filed);
  if (!whole)
    reader.error(
      `${where}.values.massKg`,
      say.tripFile.vehicleLost(values.massKg),
      say.tripFile.vehicleLostDone,
    );
  const vehicle: Vehicle = {
    id: reader.id(record.id, `${where}.id`, ids, `vehicle-${number}`),
    name: reader.text(record.name, `${where}.name`),
    driver: reader.text(record.driver, `${where}.driver`),
    vehicleClass: classFrom(reader, record.vehicleClass, `${where}.vehicleClass`),
    values: whole ? values : { ...values, massKg: NaN },
    estimated: estimatedFrom(reader, record.estimated, `${where}.estimated`),
  };
  if (filed) reader.add(checkVehicle({ ...vehicle, values: filed as unknown as VehicleValues }, where));
  return vehicle;
}

function classFrom(reader: Reader, value: unknown, where: string): VehicleClass {
  if (VEHICLE_CLASSES.includes(value as VehicleClass)) return value as VehicleClass;
  reader.error(
    where,
    say.tripFile.classOneOf(VEHICLE_CLASSES.join(', ')),
    say.tripFile.classDone(say.vehicleClass[VEHICLE_CLASSES[0]]),
  );
  return VEHICLE_CLASSES[0];
}

function estimatedFrom(reader: Reader, value: unknown, where: string): VehicleField[] {
  const estimated = new Set<VehicleField>();
  reader.list(value, where, Object.keys(vehicleFields).length).forEach((name, i) => {
    const known = typeof name === 'string' && Object.hasOwn(vehicleFields, name);
    if (!known || estimated.has(name as VehicleField))
      reader.warning(
        `${where}[${i}]`,
        known ? say.tripFile.estimatedTwice(printable(name)) : say.tripFile.noVehicleValue,
        say.tripFile.passedOver,
      );
    else estimated.add(name as VehicleField);
  });
  return [...estimated];
}
