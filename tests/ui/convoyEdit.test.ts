import { expect, test } from 'vitest';
import type { Trip } from '../../src/archive/trip.ts';
import {
  addVehicle,
  changeVehicle,
  confirmed,
  duplicateVehicle,
  inOrder,
  moveVehicle,
  placeVehicle,
  removeVehicle,
  withVehicleValue,
} from '../../src/ui/convoyEdit.ts';
import { vehicleFields } from '../../src/vehicle/specs.ts';
import { VEHICLE_CLASSES, checkVehicle } from '../../src/vehicle/vehicle.ts';

const EMPTY: Trip = {
  id: 't',
  name: '',
  note: '',
  radioChannel: '',
  direction: 'as recorded',
  track: null,
  waypoints: [],
  obstacles: [],
  heldGrips: [],
  vehicles: [],
};

const three = ['a', 'b', 'c'].reduce((trip, id) => addVehicle(trip, 'compact 4x4', id), EMPTY);
const order = (trip: Trip) => trip.vehicles.map(({ id }) => id).join('');

test.each(VEHICLE_CLASSES)('a new %s is all estimates and has no fault', (vehicleClass) => {
  const [vehicle] = addVehicle(EMPTY, vehicleClass, 'x').vehicles;
  expect(vehicle.estimated).toHaveLength(Object.keys(vehicleFields).length);
  expect(checkVehicle(vehicle, 'x')).toEqual([]);
});

test('vehicles of one class get names of their own', () => {
  expect(three.vehicles.map(({ name }) => name)).toEqual(['Compact 4x4', 'Compact 4x4 2', 'Compact 4x4 3']);
});

test('the order changes by one place, and the ends stay', () => {
  expect(order(moveVehicle(three, 'c', -1))).toBe('acb');
  expect(order(moveVehicle(three, 'a', 1))).toBe('bac');
  expect(moveVehicle(three, 'a', -1)).toBe(three);
  expect(moveVehicle(three, 'c', 1)).toBe(three);
});

test('a vehicle is put before another or behind all, and a place that is none changes nothing', () => {
  expect(order(placeVehicle(three, 0, 3))).toBe('bca');
  expect(order(placeVehicle(three, 0, 2))).toBe('bac');
  expect(order(placeVehicle(three, 2, 0))).toBe('cab');
  expect(order(placeVehicle(three, 2, 1))).toBe('acb');
  for (const [from, before] of [
    [1, 1],
    [1, 2],
    [1, -1],
    [1, 4],
    [3, 0],
    [-1, 0],
  ])
    // prettier-ignore
    expect(placeVehicle(three, from, before)).toBe(three);
});

test('an order takes whom it names first and forgets nobody', () => {
  expect(order(inOrder(three, ['c', 'a']))).toBe('cab');
  expect(order(inOrder(three, ['x', 'b']))).toBe('bac');
});

test('a duplicate stands behind its first, with the same values and no driver', () => {
  const named = changeVehicle(three, 'b', (vehicle) => ({ ...vehicle, driver: 'Wren' }));
  const twice = duplicateVehicle(named, 'b', 'd');
  expect(order(twice)).toBe('abdc');
  expect(twice.vehicles[2].values).toBe(twice.vehicles[1].values);
  expect(twice.vehicles[2].driver).toBe('');
  expect(order(removeVehicle(twice, 'b'))).toBe('adc');
});

test('a value that was entered or confirmed is no estimate any more', () => {
  const [vehicle] = three.vehicles;
  const wider = withVehicleValue(vehicle, 'widthM', 1.8);
  expect(wider.values.widthM).toBe(1.8);
  expect(wider.estimated).not.toContain('widthM');
  expect(confirmed(wider, ['heightM', 'massKg']).estimated).toHaveLength(vehicle.estimated.length - 3);
});
