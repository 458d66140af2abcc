import { describe, expect, it } from 'vitest';
import { breakoverAngleRad, pointCrestHeightM, tangentAngleRad } from '../../../src/vehicle/angles.ts';
import { degrees, rad } from '../../../src/units.ts';

describe('clearance angles by definition', () => {
  // Australian Design Rule 43/04 cl. 6.4.2 and 6.4.3: 33.33 mm of clearance for each metre of axle spacing is printed as
  // the same demand as an apex of 7°38′ between two planes; tolerance 1′.
  it('33.33 mm a metre is an apex of 7°38′', () => {
    const apex = 7 + 38 / 60;
    expect(Math.abs(pointCrestHeightM(1, rad(apex)) - 0.03333)).toBeLessThan(0.0001);
    expect(Math.abs(degrees(breakoverAngleRad(1e-9, 0.5, 0.5, 0.03333)) - apex)).toBeLessThan(1 / 60);
  });

  // 40 CFR 86.084-2: breakover is the supplement of the largest angle between the two tangents to the tyres' static
  // loaded radii. Derived here from that wording by elementary geometry, independently of the formula: the tangents are
  // searched for numerically.
  it('a point 0.22 m up midway of 2.80 m between 0.38 m tyres stands on a breakover of 18.25°', () => {
    const r = 0.38;
    const touches = (angle: number) => {
      const h = r - r / Math.cos(angle) + 1.4 * Math.tan(angle);
      return h - 0.22;
    };
    let low = 0;
    let high = 0.5;
    for (let i = 0; i < 60; i++) {
      const middle = (low + high) / 2;
      if (touches(middle) < 0) low = middle;
      else high = middle;
    }
    expect(degrees(breakoverAngleRad(r, 1.4, 1.4, 0.22))).toBeCloseTo(degrees(2 * low), 6);
    expect(degrees(breakoverAngleRad(r, 1.4, 1.4, 0.22))).toBeCloseTo(18.25, 2);
  });

  it('a point inside the tyre has no tangent, a point on the ground ahead none to clear', () => {
    expect(tangentAngleRad(0.38, 0.1, 0.3)).toBe(Math.PI / 2);
    expect(tangentAngleRad(0.38, 0.8, 0)).toBeCloseTo(0, 12);
  });
});
