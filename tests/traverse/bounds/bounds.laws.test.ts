import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Ground } from '../../../src/terrain/ground.ts';
import { reversedCorridor } from '../../../src/terrain/reverse.ts';
import type { Check, CheckName, Findings } from '../../../src/traverse/assess.ts';
import { assessBounds } from '../../../src/traverse/bounds/bounds.ts';
import { effort } from '../../../src/traverse/bounds/differential.ts';
import { steepestTan } from '../../../src/traverse/bounds/gradeability.ts';
import { ladder } from '../../../src/vehicle/aids.ts';
import { classValues } from '../../../src/vehicle/classes.ts';
import { VEHICLE_CLASSES } from '../../../src/vehicle/vehicle.ts';

const SEEDED = { seed: 20261, numRuns: 40 };

const LEVEL: Ground = {
  lengthM: 6,
  slopeRad: 0,
  camberRad: 0,
  peakAdhesion: 0.6,
  slidingAdhesion: 0.5,
  rollingResistance: 0.03,
  corridor: { leftM: 2, leftBound: 'bank', rightM: 1.7, rightBound: 'trees', headroomM: 4 },
  features: [],
};

function found(
  ground: Ground,
  offsetM = 0,
  vehicleClass: (typeof VEHICLE_CLASSES)[number] = 'mid-size wagon',
): Findings {
  const values = classValues(vehicleClass);
  const answer = assessBounds(values, [ground], offsetM, [ladder(values)[0].aids])[0];
  if (!answer.known) throw new Error(answer.cause);
  return answer;
}

function margin(findings: Findings, name: CheckName): number {
  return (findings.checks.find((check) => check.name === name) as Check).margin;
}

const ground = fc
  .record({
    slopeRad: fc.double({ min: -0.35, max: 0.35, noNaN: true }),
    camberRad: fc.double({ min: -0.25, max: 0.25, noNaN: true }),
    depthM: fc.double({ min: 0.05, max: 0.5, noNaN: true }),
    centreYM: fc.double({ min: -1, max: 1, noNaN: true }),
    widthM: fc.double({ min: 0.2, max: 0.8, noNaN: true }),
  })
  .map(({ slopeRad, camberRad, ...rut }): Ground => ({
    ...LEVEL,
    slopeRad,
    camberRad,
    features: [{ kind: 'rut', fromM: -3, toM: 3, runM: 0.5, section: 'U', ...rut }],
  }));

const vehicleClass = fc.constantFrom(...VEHICLE_CLASSES);

describe('the quick bounds obey', () => {
  it('a mirrored ground and offset give the mirrored answer', () => {
    // A differential off the middle breaks the symmetry of the vehicle, so one with both in the middle is taken.
    const values = { ...classValues('dual-cab utility'), frontDifferentialYM: 0, rearDifferentialYM: 0 };
    const aids = [ladder(values)[0].aids];
    fc.assert(
      fc.property(ground, fc.double({ min: -0.5, max: 0.5, noNaN: true }), (one, offsetM) => {
        const mirrored: Ground = {
          ...one,
          camberRad: -one.camberRad,
          corridor: reversedCorridor(one.corridor),
          features: one.features.map((f) => (f.kind === 'rut' ? { ...f, centreYM: -f.centreYM } : f)),
        };
        const a = assessBounds(values, [one], offsetM, aids)[0] as Findings;
        const b = assessBounds(values, [mirrored], -offsetM, aids)[0] as Findings;
        for (const [i, check] of a.checks.entries()) expect(b.checks[i].margin).toBeCloseTo(check.margin, 6);
      }),
      SEEDED,
    );
  });

  it('more adhesion never lowers a margin', () => {
    fc.assert(
      fc.property(ground, vehicleClass, (less, which) => {
        const a = found(less, 0, which);
        const b = found({ ...less, peakAdhesion: less.peakAdhesion + 0.1 }, 0, which);
        for (const [i, check] of a.checks.entries())
          expect(b.checks[i].margin).toBeGreaterThanOrEqual(check.margin - 1e-9);
      }),
      SEEDED,
    );
  });

  it('each further rung never lowers the traction margin', () => {
    fc.assert(
      fc.property(ground, vehicleClass, (one, which) => {
        const values = {
          ...classValues(which),
          frontDifferential: 'locker',
          rearDifferential: 'locker',
        } as const;
        const rungs = ladder(values);
        const answers = assessBounds(
          values,
          [one],
          0,
          rungs.map((rung) => rung.aids),
        ) as Findings[];
        const locking = answers.slice(0, rungs.findIndex((rung) => rung.aids.frontLocked) + 1);
        for (let i = 1; i < locking.length; i++)
          expect(margin(locking[i], 'traction')).toBeGreaterThanOrEqual(
            margin(locking[i - 1], 'traction') - 1e-9,
          );
      }),
      SEEDED,
    );
  });

  it('a higher centre of mass never adds tip margin', () => {
    fc.assert(
      fc.property(ground, fc.double({ min: 0.01, max: 0.4, noNaN: true }), (one, higherM) => {
        const values = classValues('full-size wagon');
        const aids = [ladder(values)[0].aids];
        const low = assessBounds(values, [one], 0, aids)[0] as Findings;
        const high = assessBounds(
          { ...values, massHeightM: values.massHeightM + higherM },
          [one],
          0,
          aids,
        )[0] as Findings;
        expect(margin(high, 'side tip')).toBeLessThan(margin(low, 'side tip'));
        expect(margin(high, 'end tip')).toBeLessThan(margin(low, 'end tip'));
      }),
      SEEDED,
    );
  });

  it('open <= biased <= locked, and all equal for equal wheels', () => {
    const force = fc.double({ min: 0, max: 20e3, noNaN: true });
    fc.assert(
      fc.property(force, force, fc.double({ min: 1, max: 5, noNaN: true }), (a, b, ratio) => {
        const open = effort(a, b, { kind: 'open' });
        const biased = effort(a, b, { kind: 'biased', ratio });
        const locked = effort(a, b, { kind: 'locked' });
        expect(open).toBeLessThanOrEqual(biased + 1e-9);
        expect(biased).toBeLessThanOrEqual(locked + 1e-9);
        expect(effort(a, a, { kind: 'open' })).toBeCloseTo(effort(a, a, { kind: 'locked' }), 9);
      }),
    );
  });

  it('on even ground the traction margin is zero at the closed form of the steepest slope', () => {
    const values = {
      ...classValues('dual-cab utility'),
      engineTorqueNm: 1200,
      drive: 'rear',
      brakeTraction: 'none',
    } as const;
    const tan = steepestTan('rear', LEVEL.peakAdhesion, {
      wheelbaseM: values.wheelbaseM,
      behindFrontM: values.wheelbaseM * (1 - values.frontShare),
      massHeightM: values.massHeightM,
    });
    const answer = assessBounds(values, [{ ...LEVEL, slopeRad: Math.atan(tan), rollingResistance: 0 }], 0, [
      ladder(values)[0].aids,
    ])[0] as Findings;
    expect(margin(answer, 'traction')).toBeCloseTo(0, 9);
  });
});
