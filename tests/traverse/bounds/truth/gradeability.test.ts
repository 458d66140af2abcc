import { describe, expect, it } from 'vitest';
import { steepestTan } from '../../../../src/traverse/bounds/gradeability.ts';
import { axleLoadsN } from '../../../../src/traverse/bounds/loads.ts';
import { degrees, rad } from '../../../../src/units.ts';

const steepestDeg = (...args: Parameters<typeof steepestTan>) => degrees(Math.atan(steepestTan(...args)));

describe('steepest slope by driven axle', () => {
  // Statics textbook problem "friction and the difference between rear wheel, front wheel and four wheel drive",
  // physicsforums thread 339714: answers printed there, to 0.01°.
  it.each([
    ['rear', 10.18],
    ['front', 17.17],
    ['four locked', 26.57],
  ] as const)('15 kN car, adhesion 0.5, %s drive climbs %f°', (drive, expected) => {
    const layout = { wheelbaseM: 2.675, behindFrontM: 0.875, massHeightM: 0.475 };
    expect(steepestDeg(drive, 0.5, layout)).toBeCloseTo(expected, 1);
    expect(Math.abs(steepestDeg(drive, 0.5, layout) - expected)).toBeLessThan(0.01);
  });

  // Statics textbook problem "3200-lb car's wheels and the road", lengths in inches; the set-up is printed, the answers
  // are worked out from the same moments: tolerance 0.01°.
  it.each([
    ['rear', 12.39],
    ['front', 20.05],
    ['four locked', 30.96],
  ] as const)('3200 lb car, adhesion 0.60, %s drive climbs %f°', (drive, expected) => {
    const layout = { wheelbaseM: 107 * 0.0254, behindFrontM: 35 * 0.0254, massHeightM: 19 * 0.0254 };
    expect(Math.abs(steepestDeg(drive, 0.6, layout) - expected)).toBeLessThan(0.01);
  });

  // what-when-how, "Automobile", §31.10.3 and Example 31.7: effort over weight on level ground equals a_max / g for
  // front, rear, locked and open-centre drive; tolerance 0.005 m/s².
  it.each([
    ['front', 2.889],
    ['rear', 3.022],
    ['four locked', 5.886],
    ['four open centre', 4.996],
  ] as const)('1.15 / 2.75 m car, adhesion 0.6, %s drive gives %f m/s²', (drive, expected) => {
    const layout = { wheelbaseM: 2.75, behindFrontM: 1.15, massHeightM: 0.85 };
    expect(Math.abs(steepestTan(drive, 0.6, layout) * 9.81 - expected)).toBeLessThan(0.005);
  });

  // Vehicle dynamics slide set p3 (slideshare 263385814): mass in the middle, adhesion 0.7; tolerance 0.005 m/s².
  it.each([
    ['front', 2.889],
    ['rear', 4.231],
    ['four locked', 6.867],
  ] as const)('car with its mass in the middle, adhesion 0.7, %s drive gives %f m/s²', (drive, expected) => {
    const layout = { wheelbaseM: 2.6, behindFrontM: 1.3, massHeightM: 0.7 };
    expect(Math.abs(steepestTan(drive, 0.7, layout) * 9.81 - expected)).toBeLessThan(0.005);
  });
});

describe('axle loads on a slope', () => {
  // what-when-how, "Stability of a vehicle on a slope", Example 31.6: inputs printed; outputs from its moments.
  it('a 49,050 N vehicle facing up 10° bears 15,791 N in front and 32,514 N behind', () => {
    const { frontN, rearN } = axleLoadsN({
      weightN: 49_050,
      wheelbaseM: 2.25,
      behindFrontM: 1.25,
      massHeightM: 1.5,
      slopeRad: rad(10),
    });
    expect(Math.abs(frontN - 15_791)).toBeLessThan(2);
    expect(Math.abs(rearN - 32_514)).toBeLessThan(2);
  });
});
