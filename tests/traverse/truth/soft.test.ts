import { describe, expect, it } from 'vitest';
import { fiftyPassConeIndex, mobilityIndex, onePassConeIndex } from '../../../src/traverse/soft.ts';
import { classValues } from '../../../src/vehicle/classes.ts';
import { VEHICLE_CLASSES } from '../../../src/vehicle/vehicle.ts';

describe('cone index that a vehicle asks for', () => {
  // J. D. Priddy & W. E. Willoughby, "Clarification of vehicle cone index with reference to mean maximum pressure",
  // J. Terramechanics, 2006: their equation, worked out at δ/h = 0.15; tolerance 0.01.
  it.each([
    [20, 13.83],
    [40, 18.58],
    [60, 22.87],
    [80, 27.01],
    [100, 31.1],
    [115, 34.15],
  ])('one pass at a mobility index of %d is %f', (MI, expected) => {
    expect(Math.abs(onePassConeIndex(MI, 0.15) - expected)).toBeLessThan(0.01);
  });

  // The same: 60 at δ/h = 0.25 and 0.35. Airing down helps.
  it('more deflection asks for less', () => {
    expect(Math.abs(onePassConeIndex(60, 0.25) - 20.12)).toBeLessThan(0.01);
    expect(Math.abs(onePassConeIndex(60, 0.35) - 18.5)).toBeLessThan(0.01);
  });

  // The same: its two branches meet within half a percent at 115.
  it('the branches meet', () => {
    expect(Math.abs(onePassConeIndex(115.001, 0.15) / onePassConeIndex(115, 0.15) - 1)).toBeLessThan(0.005);
  });

  // FM 5-430-00-1 (1994), ch. 7, from memory: fifty passes ask for more than one, for every class.
  it.each(VEHICLE_CLASSES)('fifty passes of a %s ask for more than one', (vehicleClass) => {
    const MI = mobilityIndex(classValues(vehicleClass));
    expect(fiftyPassConeIndex(MI, 0.15)).toBeGreaterThan(onePassConeIndex(MI, 0.15));
    // Common practice, no source: light four-wheel drives go once where a thumb sinks in, CI 12 to 35.
    expect(onePassConeIndex(MI, 0.15)).toBeGreaterThan(12);
    expect(onePassConeIndex(MI, 0.15)).toBeLessThan(35);
  });
});
