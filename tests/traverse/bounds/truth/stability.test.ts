import { describe, expect, it } from 'vitest';
import { endTipRad, sideTipRad } from '../../../../src/traverse/bounds/stability.ts';
import { degrees } from '../../../../src/units.ts';

describe('static stability', () => {
  // Fleet-average static stability factor SSF = t / 2h, model year 2003: NHTSA Technical Report HS-809 868, "Trends in the
  // Static Stability Factor of Passenger Cars, Light Trucks, and Vans", 2005. The tip angle is atan(SSF); tolerance 0.05°.
  it.each([
    ['cars', 1.41, 54.7],
    ['sport utility', 1.17, 49.5],
    ['pickups', 1.18, 49.7],
    ['minivans', 1.24, 51.1],
    ['full-size vans', 1.12, 48.2],
  ])('%s: factor %f tips at %f°', (_fleet, factor, expected) => {
    const massHeightM = 0.7;
    expect(Math.abs(degrees(sideTipRad(2 * factor * massHeightM, massHeightM)) - expected)).toBeLessThan(
      0.06,
    );
  });

  // what-when-how, "Stability of a vehicle on a slope", Example 31.6: lower axle 1.0 m behind, 1.5 m high.
  it('overturns backwards at 33.69° with its mass 1.0 m ahead of the lower axle and 1.5 m up', () => {
    expect(degrees(endTipRad(1.0, 1.5))).toBeCloseTo(33.69, 2);
  });
});
