import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Bank } from '../../src/terrain/bank.ts';
import type { Feature } from '../../src/terrain/feature.ts';
import type { Ground } from '../../src/terrain/ground.ts';
import type { Assessment, Check, CheckName } from '../../src/traverse/assess.ts';
import { worstOf } from '../../src/traverse/assess.ts';
import { TOLERANCE } from '../../src/traverse/limits.ts';
import { reliefOf } from '../../src/traverse/relief.ts';
import { march } from '../../src/traverse/march.ts';
import { assessTraverse, traverseAssess } from '../../src/traverse/traverse.ts';
import { upOf } from '../../src/traverse/up.ts';
import { chassisOf } from '../../src/traverse/chassis.ts';
import { NO_AIDS, ladder } from '../../src/vehicle/aids.ts';
import type { VehicleValues } from '../../src/vehicle/specs.ts';
import { flatGround, randomScene } from './scenes.ts';

const RUNS = { seed: 20260102, numRuns: 60 };
const scene = fc.nat(100_000).map((n) => randomScene(10 * n + 1));
function checks(found: Assessment): readonly Check[] {
  if (!found.known) throw new Error(found.cause);
  return found.checks;
}
const margin = (found: Assessment, name: CheckName) =>
  checks(found).find((check) => check.name === name)?.margin ?? NaN;

function mirrored(feature: Feature): Feature {
  switch (feature.kind) {
    case 'rut':
      return { ...feature, centreYM: -feature.centreYM };
    case 'hole':
    case 'rock':
      return { ...feature, yM: -feature.yM };
    case 'log':
      return { ...feature, skewRad: -feature.skewRad, fromYM: -feature.toYM, toYM: -feature.fromYM };
    case 'bank':
      return { ...feature, side: feature.side === 'left' ? 'right' : 'left' } satisfies Bank;
    case 'ledge':
    case 'ditch':
    case 'hump':
      return { ...feature, skewRad: -feature.skewRad };
    case 'water':
    case 'softPatch':
      return feature;
  }
}

const mirror = (ground: Ground): Ground => ({
  ...ground,
  camberRad: -ground.camberRad,
  corridor: { ...ground.corridor, leftM: ground.corridor.rightM, rightM: ground.corridor.leftM },
  features: ground.features.map(mirrored),
});

/** A vehicle that looks the same from both sides. */
const even = (values: VehicleValues): VehicleValues => ({
  ...values,
  frontDifferentialYM: 0,
  rearDifferentialYM: 0,
});

const WITH_LOCKERS = {
  drive: 'full-time four',
  centre: 'lockable',
  frontDifferential: 'locker',
  rearDifferential: 'locker',
  lowRangeRatio: 2.5,
  crawlRatio: 45,
} as const;

describe('a vehicle taken along a line', () => {
  it('over mirrored ground and offset gives the same margins', () => {
    fc.assert(
      fc.property(scene, fc.double({ min: -0.5, max: 0.5, noNaN: true }), ({ values, ground }, offsetM) => {
        const here = checks(traverseAssess(even(values), ground, offsetM, NO_AIDS));
        const there = checks(traverseAssess(even(values), mirror(ground), -offsetM, NO_AIDS));
        for (const [i, check] of here.entries()) {
          expect(there[i].name).toBe(check.name);
          expect(Math.abs(there[i].margin - check.margin)).toBeLessThan(1e-6);
        }
      }),
      RUNS,
    );
  });

  it('never loses traction, braking or side hold by more adhesion', () => {
    fc.assert(
      fc.property(scene, fc.double({ min: 1, max: 1.6, noNaN: true }), ({ values, ground }, more) => {
        const better = {
          ...ground,
          peakAdhesion: ground.peakAdhesion * more,
          slidingAdhesion: ground.slidingAdhesion * more,
        };
        const low = traverseAssess(values, ground, 0, NO_AIDS);
        const high = traverseAssess(values, better, 0, NO_AIDS);
        for (const name of ['traction', 'braking', 'side hold'] as const)
          expect(margin(high, name)).toBeGreaterThanOrEqual(margin(low, name) - 1e-9);
      }),
      RUNS,
    );
  });

  it('never loses traction by low range, centre lock or lockers', () => {
    fc.assert(
      fc.property(scene, ({ values, ground }) => {
        const locking = { ...values, ...WITH_LOCKERS };
        const rungs = ladder(locking).filter(({ aids }) => !aids.airedDown && !aids.barsDisconnected);
        const found = assessTraverse(
          locking,
          [ground],
          0,
          rungs.map(({ aids }) => aids),
        );
        expect(found.length).toBe(4);
        for (let i = 1; i < found.length; i++)
          expect(margin(found[i], 'traction')).toBeGreaterThanOrEqual(
            margin(found[i - 1], 'traction') - 1e-9,
          );
      }),
      RUNS,
    );
  });

  it('never gains tip margin by a higher centre of mass', () => {
    fc.assert(
      fc.property(scene, fc.double({ min: 0.01, max: 0.3, noNaN: true }), ({ values, ground }, higherM) => {
        const raised = { ...values, massHeightM: values.massHeightM + higherM };
        for (const name of ['side tip', 'end tip'] as const)
          expect(margin(traverseAssess(raised, ground, 0, NO_AIDS), name)).toBeLessThanOrEqual(
            margin(traverseAssess(values, ground, 0, NO_AIDS), name) + 1e-3,
          );
      }),
      RUNS,
    );
  });

  // The lean before tipping is found by halving, so that a tilt is known to a part in a thousand.
  it('in any of several planes gets the least that is said of each check in each of them', () => {
    const leanRad = fc.double({ min: -0.3, max: 0.3, noNaN: true });
    fc.assert(
      fc.property(scene, leanRad, leanRad, ({ values, ground }, slopeRad, camberRad) => {
        const planes: Ground[] = [
          { ...ground, slopeRad, camberRad },
          { ...ground, slopeRad, camberRad: -camberRad },
          { ...ground, slopeRad: -slopeRad, camberRad },
        ];
        const sets = ladder(values).map(({ aids }) => aids);
        const together = assessTraverse(values, planes, 0.1, sets);
        const alone = planes.map((plane) => assessTraverse(values, [plane], 0.1, sets));
        together.forEach((found, set) => {
          const worst = worstOf(alone.map((assessments) => assessments[set]));
          expect(checks(found).map(({ name }) => name)).toEqual(checks(worst).map(({ name }) => name));
          for (const { name, margin: least } of checks(worst))
            expect(Math.abs(margin(found, name) - least)).toBeLessThan(name.endsWith('tip') ? 1e-3 : 1e-9);
        });
      }),
      RUNS,
    );
  });

  it('bears its weight at every station where it stands', () => {
    fc.assert(
      fc.property(scene, ({ values, ground }) => {
        const chassis = chassisOf(values, NO_AIDS);
        const up = upOf(ground)!;
        const record = march(chassis, reliefOf(ground), up, ground.lengthM, 0);
        const weightN = chassis.massKg * 9.80665 * up.z;
        for (let n = 0; n < record.length; n++) {
          if (record.standing[n] !== 0) continue;
          const V = record.loadN.subarray(4 * n, 4 * n + 4);
          expect(Math.abs((V[0] + V[1] + V[2] + V[3]) / weightN - 1)).toBeLessThan(1e-6);
        }
      }),
      RUNS,
    );
  });

  it('on flat ground asks its rolling resistance, and leaves underbody heights as measured', () => {
    fc.assert(
      fc.property(scene, ({ values }) => {
        const found = checks(traverseAssess(values, flatGround, 0, NO_AIDS));
        const need = found.find(({ name }) => name === 'traction')!.need;
        expect(need).toBeCloseTo(flatGround.rollingResistance, 6);
        const rear = found.find(({ name }) => name === 'rear differential')!.have;
        expect(rear).toBeCloseTo(values.rearDifferentialHeightM, 6);
      }),
      RUNS,
    );
  });
});

it('every number said is finite, on any ground, steep cambers and walls included', () => {
  const any = fc.nat(100_000).map((n) => randomScene(5 * n));
  fc.assert(
    fc.property(any, fc.double({ min: -1.5, max: 1.5, noNaN: true }), ({ values, ground }, offsetM) => {
      const wall = { kind: 'ledge', xM: 2, riseM: 1.2, faceRad: 1.48, skewRad: 0.3 } as const;
      const walled = { ...ground, features: [...ground.features, wall] };
      const found = traverseAssess(values, walled, offsetM, NO_AIDS);
      for (const { margin: m, have, need, tolerance } of checks(found)) {
        for (const number of [m, have, need, tolerance]) expect(Number.isFinite(number)).toBe(true);
        expect(tolerance).toBeGreaterThan(0);
      }
      if (!found.known) return;
      expect(found.entrySpeedMps).toBeGreaterThanOrEqual(0);
      expect(Number.isFinite(found.pullN)).toBe(true);
      expect(margin(found, 'traction')).toBeLessThan(0);
    }),
    RUNS,
  );
});

it('a finer step moves no margin of a smooth obstacle by more than its tolerance', () => {
  const smooth: Ground = {
    ...flatGround,
    slopeRad: 0.2,
    features: [
      { kind: 'hole', xM: -1.2, yM: 0.75, lengthM: 2, widthM: 1.2, depthM: 0.25 },
      { kind: 'hole', xM: 1.4, yM: -0.75, lengthM: 2, widthM: 1.2, depthM: 0.25 },
      { kind: 'hump', xM: 0, lengthM: 5, heightM: 0.3, skewRad: 0.2 },
    ],
  };
  const { values } = randomScene(1);
  const chassis = chassisOf(values, NO_AIDS);
  const up = upOf(smooth)!;
  const least = (stationM: number) => {
    const record = march(chassis, reliefOf(smooth), up, smooth.lengthM, 0, stationM);
    return Math.min(...record.loadN) / (chassis.massKg * 9.80665);
  };
  const coarse = Math.abs(least(0.1) - least(0.0125));
  const usual = Math.abs(least(0.05) - least(0.0125));
  expect(usual).toBeLessThan(TOLERANCE.grip);
  expect(usual).toBeLessThanOrEqual(coarse + 1e-6);
});
