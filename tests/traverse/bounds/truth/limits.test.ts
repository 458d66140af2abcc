import { describe, expect, it } from 'vitest';
import type { Feature } from '../../../../src/terrain/feature.ts';
import type { Ground } from '../../../../src/terrain/ground.ts';
import type { CheckName, Findings } from '../../../../src/traverse/assess.ts';
import { assessBounds } from '../../../../src/traverse/bounds/bounds.ts';
import { rad } from '../../../../src/units.ts';
import { ladder } from '../../../../src/vehicle/aids.ts';
import { classValues } from '../../../../src/vehicle/classes.ts';

const LEVEL: Ground = {
  lengthM: 8,
  slopeRad: 0,
  camberRad: 0,
  peakAdhesion: 0.8,
  slidingAdhesion: 0.7,
  rollingResistance: 0.02,
  corridor: { leftM: 4, leftBound: 'open', rightM: 4, rightBound: 'open', headroomM: 4 },
  features: [],
};

const wagon = classValues('full-size wagon');

function margin(name: CheckName, change: Partial<Ground>, values = wagon, offsetM = 0): number {
  const found = assessBounds(values, [{ ...LEVEL, ...change }], offsetM, [
    ladder(values)[0].aids,
  ])[0] as Findings;
  return found.checks.find((check) => check.name === name)!.margin;
}

/** A rut under each wheel path, wide enough for the tyre to stand on its floor. */
function ruts(depthM: number): Feature[] {
  return [1, -1].map((side) => ({
    kind: 'rut',
    centreYM: (side * wagon.frontTrackWidthM) / 2,
    widthM: 0.8,
    depthM,
    fromM: -10,
    toM: 10,
    runM: 0,
    section: 'U',
  }));
}

describe('what stands under a vehicle, by definition', () => {
  // 40 CFR 86.084-2: axle clearance is the vertical distance from level ground to the lowest point of the differential.
  // Wheels in ruts of that depth bring it down to the ground between them. Tolerance 1 mm.
  it('a differential touches the crown between ruts as deep as its axle clearance', () => {
    const clearanceM = wagon.rearDifferentialHeightM;
    expect(Math.abs(margin('rear differential', { features: ruts(clearanceM) }))).toBeLessThan(0.001);
    expect(margin('rear differential', { features: ruts(clearanceM - 0.05) })).toBeCloseTo(0.05, 3);
    // Moved off the ruts it has all of its clearance again.
    expect(margin('rear differential', { features: ruts(clearanceM) }, wagon, 1.2)).toBeCloseTo(
      clearanceM,
      3,
    );
  });

  // 49 CFR 523.2 (from memory): running clearance is from the surface to the lowest point, unsprung parts apart.
  it('the belly touches the crown between ruts as deep as it is high', () => {
    expect(Math.abs(margin('belly', { features: ruts(wagon.bellyHeightM) }))).toBeLessThan(0.001);
  });

  // 40 CFR 86.084-2 and Directive 2007/46/EC Annex II 4.5.1: the approach angle is the steepest plane, tangent to the
  // front tyres, that nothing ahead of the front axle touches; departure likewise behind. Tolerance 1°, of the stations.
  it.each([
    ['approach', wagon.approachRad],
    ['departure', wagon.departureRad],
  ] as const)('the %s angle is the steepest ramp that is cleared', (name, angleRad) => {
    const ramp = (faceRad: number): Feature[] =>
      name === 'approach'
        ? [{ kind: 'ledge', xM: 0, riseM: 1.5, faceRad, skewRad: 0 }]
        : [{ kind: 'ledge', xM: 0, riseM: -1.5, faceRad, skewRad: 0 }];
    expect(margin(name, { features: ramp(angleRad - rad(1)) })).toBeGreaterThan(0);
    expect(margin(name, { features: ramp(angleRad + rad(1)) })).toBeLessThan(0);
  });

  // The maker's wading depth is for still water; its limit is the printed figure itself.
  it('water is passed up to the wading depth', () => {
    const water = (depthM: number): Feature[] => [{ kind: 'water', fromM: -3, toM: 3, depthM, flowMps: 0 }];
    expect(margin('water depth', { features: water(wagon.wadingDepthM) })).toBeCloseTo(0, 9);
    expect(margin('water depth', { features: water(wagon.wadingDepthM + 0.1) })).toBeCloseTo(-0.1, 9);
  });
});

describe('holding on a slope', () => {
  // what-when-how, "Stability of a vehicle on a slope", Example 31.6: slides at atan 0.35 = 19.29°, across as along.
  it.each([
    ['side hold', { camberRad: rad(19.29), slopeRad: 0 }],
    ['braking', { camberRad: 0, slopeRad: rad(-19.29) }],
  ] as const)('%s ends at 19.29° with adhesion 0.35', (name, plane) => {
    expect(Math.abs(margin(name, { ...plane, peakAdhesion: 0.35 }))).toBeLessThan(0.0005);
  });

  // NHTSA HS-809 868 (2005): the side tip margin of a vehicle with the fleet's factor for sport utilities, 1.17, is used up
  // at atan 1.17 = 49.5°. Tolerance 0.1°.
  it('side tip ends at the angle of the static stability factor', () => {
    const values = { ...wagon, massHeightM: wagon.frontTrackWidthM / (2 * 1.17) };
    expect(Math.abs(margin('side tip', { camberRad: rad(49.5) }, values))).toBeLessThan(rad(0.1));
  });
});
