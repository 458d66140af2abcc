import { expect, it } from 'vitest';
import { degrees } from '../../../src/units.ts';
import { classValues } from '../../../src/vehicle/classes.ts';
import type { VehicleValues } from '../../../src/vehicle/specs.ts';

/**
 * US 49 CFR 523.5(b)(2), "capable of off-highway operation", as quoted in full by a secondary page: at least four of
 * approach 28°, breakover 14°, departure 20°, running clearance 20 cm, front and rear axle clearance 18 cm. The limits are
 * met or not; no tolerance.
 */
function metOfFive(values: VehicleValues): number {
  return [
    degrees(values.approachRad) >= 28,
    degrees(values.rampoverRad) >= 14,
    degrees(values.departureRad) >= 20,
    values.bellyHeightM >= 0.2,
    Math.min(values.frontDifferentialHeightM, values.rearDifferentialHeightM) >= 0.18,
  ].filter(Boolean).length;
}

// Which of our classes are built for it is common practice, no source.
it.each([
  'compact 4x4',
  'mid-size wagon',
  'full-size wagon',
  'dual-cab utility',
  'long-wheelbase van',
] as const)('a %s with low range starts as what the rule calls capable of off-highway operation', (name) => {
  expect(metOfFive(classValues(name))).toBeGreaterThanOrEqual(4);
});

it('a soft-roader does not', () => {
  expect(metOfFive(classValues('all-wheel-drive soft-roader'))).toBeLessThan(4);
});
