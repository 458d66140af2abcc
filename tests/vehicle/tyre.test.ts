import { expect, it } from 'vitest';
import { classValues } from '../../src/vehicle/classes.ts';
import { tyreOf } from '../../src/vehicle/tyre.ts';

const values = classValues('mid-size wagon');

it('a tyre at its usual pressure has the stiffness entered, half its diameter and its section', () => {
  const tyre = tyreOf(values, false);
  expect(tyre.stiffnessNPerM).toBeCloseTo(values.tyreStiffnessNPerM, 6);
  expect(tyre.radiusM).toBe(values.tyreDiameterM / 2);
  expect(tyre.sectionM).toBe(values.tyreSectionM);
});

it('aired down it is softer, but never as soft as its pressure alone', () => {
  const ratio = tyreOf(values, true).stiffnessNPerM / values.tyreStiffnessNPerM;
  expect(ratio).toBeLessThan(1);
  expect(ratio).toBeGreaterThan(values.lowPressurePa / values.tyrePressurePa);
});

it('a lowest pressure above the usual one does not stiffen it', () => {
  const contradicting = { ...values, lowPressurePa: values.tyrePressurePa * 2 };
  expect(tyreOf(contradicting, true).stiffnessNPerM).toBeCloseTo(values.tyreStiffnessNPerM, 6);
});
