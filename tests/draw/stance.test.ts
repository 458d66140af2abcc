import { expect, test } from 'vitest';
import { stanceOf, tellingStationM } from '../../src/draw/stance.ts';
import type { Feature } from '../../src/terrain/feature.ts';
import { classValues } from '../../src/vehicle/classes.ts';

const values = classValues('full-size wagon');
const rut = (centreYM: number, depthM: number, widthM = 0.6): Feature => ({
  kind: 'rut',
  centreYM,
  widthM,
  depthM,
  fromM: -5,
  toM: 5,
  runM: 1,
  section: 'U',
});

test('on plain ground it stands level with both tyres on it', () => {
  const stance = stanceOf([], 0, 0.3, values);
  expect(stance.heightM).toBe(0);
  expect(stance.leanRad).toBe(0);
  expect(stance.housingInGroundM).toBe(0);
});

test('a rut under the left tyre lets the left side down', () => {
  const stance = stanceOf([rut(values.rearTrackWidthM / 2, 0.2, 1)], 0, 0, values);
  expect(stance.leanRad).toBeCloseTo(Math.atan(-0.2 / stance.trackWidthM), 6);
  expect(stance.heightM).toBeCloseTo(-0.1, 6);
});

test('ruts deeper than the housing is high put the housing into the crown by the difference', () => {
  const half = Math.min(values.frontTrackWidthM, values.rearTrackWidthM) / 2;
  const lowest = Math.min(values.frontDifferentialHeightM, values.rearDifferentialHeightM);
  const deep = [rut(half, lowest + 0.1, 1), rut(-half, lowest + 0.1, 1)];
  expect(stanceOf(deep, 0, 0, values).housingInGroundM).toBeCloseTo(0.1, 2);
  const shallow = [rut(half, lowest - 0.05, 1), rut(-half, lowest - 0.05, 1)];
  expect(stanceOf(shallow, 0, 0, values).housingInGroundM).toBe(0);
});

test('a tyre wider than a rut stands on its shoulders', () => {
  const narrow = rut(values.rearTrackWidthM / 2, 0.2, values.tyreSectionM / 2);
  expect(stanceOf([narrow], 0, 0, values).leanRad).toBe(0);
});

test('the telling cut goes through the first shape that has a place', () => {
  expect(tellingStationM([])).toBe(0);
  expect(tellingStationM([{ kind: 'hole', xM: -2, yM: 0.7, lengthM: 1, widthM: 1, depthM: 0.3 }])).toBe(-2);
  expect(tellingStationM([{ ...rut(0.7, 0.2), fromM: 0, toM: 6 } as Feature])).toBe(3);
});
