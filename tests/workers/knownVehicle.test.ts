import { expect, test } from 'vitest';
import { classValues } from '../../src/vehicle/classes.ts';
import type { Vehicle } from '../../src/vehicle/vehicle.ts';
import { knownVehicle } from '../../src/workers/knownVehicle.ts';

function vehicleOf(id: string, massKg = NaN): Vehicle {
  const values = { ...classValues('compact 4x4'), massKg };
  return { id, name: id, driver: '', vehicleClass: 'compact 4x4', values, estimated: [] };
}

test('a vehicle that says the same is the one that came before, what is not known among it', () => {
  const first = knownVehicle(vehicleOf('a'));
  expect(knownVehicle(vehicleOf('b'))).not.toBe(first);
  expect(knownVehicle(structuredClone(first))).toBe(first);
});

test('one that says something else is another, and so is one of the same numbers under another id', () => {
  const first = knownVehicle(vehicleOf('c', 1500));
  const heavier = knownVehicle(vehicleOf('c', 1501));
  expect(heavier.values.massKg).toBe(1501);
  expect(knownVehicle(vehicleOf('d', 1500)).id).toBe('d');
  expect(knownVehicle(vehicleOf('c', 1500))).toBe(first);
});

test('those that came long ago are not kept', () => {
  const first = knownVehicle(vehicleOf('e'));
  for (let i = 0; i < 100; i++) knownVehicle(vehicleOf(`f${i}`));
  expect(knownVehicle(vehicleOf('e'))).not.toBe(first);
});
