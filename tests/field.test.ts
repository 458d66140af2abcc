import { describe, expect, it } from 'vitest';
import { checkValues, choice, flag, number, valueFault } from '../src/field.ts';
import { vehicleFields } from '../src/vehicle/specs.ts';
import { classValues } from '../src/vehicle/classes.ts';
import { checkVehicle, VEHICLE_CLASSES } from '../src/vehicle/vehicle.ts';

const depth = number({ label: 'Depth', sentence: 'Tape to the bottom.' }, 'size', 0.01, 1.5);

describe('a field', () => {
  it('names what is wrong in the unit that was typed', () => {
    expect(valueFault(depth, 2)).toBe('Depth is 200 cm; it must lie between 1 cm and 150 cm.');
    expect(valueFault(depth, 2, 'imperial')).toBe(
      'Depth is 78.7 in; it must lie between 0.4 in and 59.1 in.',
    );
    expect(valueFault(depth, NaN)).toBe('Depth must be a number.');
    expect(valueFault(depth, 0.4)).toBeNull();
  });

  it('allows its choices and yes or no only', () => {
    expect(valueFault(choice({ label: 'Section', sentence: '' }, ['U', 'V']), 'W')).toBe(
      'Section must be one of: U, V.',
    );
    expect(valueFault(flag({ label: 'Boards', sentence: '' }), 'yes')).toBe('Boards must be yes or no.');
  });

  it('a missing value is a problem with its path', () => {
    expect(checkValues({ depthM: depth }, {}, 'features[0]')).toMatchObject([
      { severity: 'error', where: 'features[0].depthM' },
    ]);
  });
});

describe('every class of vehicle', () => {
  it.each(VEHICLE_CLASSES)('%s is within its own fields and does not contradict itself', (vehicleClass) => {
    const values = classValues(vehicleClass);
    expect(Object.keys(values).toSorted()).toEqual(Object.keys(vehicleFields).toSorted());
    const vehicle = { id: 'v', name: '', driver: '', vehicleClass, values, estimated: [] };
    expect(checkVehicle(vehicle, 'vehicles[0]')).toEqual([]);
  });

  it('a contradiction is named', () => {
    const values = { ...classValues('dual-cab utility'), centre: 'open', lowPressurePa: 300e3 } as const;
    const vehicle = {
      id: 'v',
      name: '',
      driver: '',
      vehicleClass: 'dual-cab utility',
      values,
      estimated: [],
    } as const;
    expect(checkVehicle(vehicle, 'v').map((problem) => problem.where)).toEqual([
      'v.values.lowPressurePa',
      'v.values.centre',
    ]);
  });
});
