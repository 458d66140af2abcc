import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Ground } from '../../src/terrain/ground.ts';
import type { Check, EngineBraking } from '../../src/traverse/assess.ts';
import { DESCENT_FROM } from '../../src/traverse/limits.ts';
import { traverseAssess } from '../../src/traverse/traverse.ts';
import type { Aids } from '../../src/vehicle/aids.ts';
import type { VehicleValues } from '../../src/vehicle/specs.ts';
import { flatGround, randomScene } from './scenes.ts';

const RUNS = { seed: 20261125, numRuns: 40 };
const LOW: Aids = {
  lowRange: true,
  centreLocked: false,
  rearLocked: false,
  frontLocked: false,
  airedDown: false,
  barsDisconnected: false,
};
const LOCKED: Aids = { ...LOW, centreLocked: true, rearLocked: true, frontLocked: true };

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Any scene, turned down, with any gearing, drive and differentials. */
const down = fc
  .record({
    seed: fc.nat(100_000),
    slopeRad: between(-0.5, -0.1),
    grip: between(0.15, 0.8),
    drive: fc.constantFrom('full-time four', 'part-time four', 'on-demand four', 'front', 'rear'),
    centre: fc.constantFrom('none', 'open', 'limited slip', 'lockable'),
    frontDifferential: fc.constantFrom('open', 'limited slip', 'locker'),
    rearDifferential: fc.constantFrom('open', 'limited slip', 'locker'),
    crawlRatio: between(8, 150),
    engineTorqueNm: between(60, 800),
  })
  .map(({ seed, slopeRad, grip, ...line }) => {
    const { values, ground } = randomScene(10 * seed + 1);
    return {
      values: { ...values, ...line, lowRangeRatio: 2.5 },
      ground: { ...ground, slopeRad, peakAdhesion: grip, slidingAdhesion: 0.8 * grip },
    };
  });

function brakingOf(values: VehicleValues, ground: Ground, aids = LOW): Check {
  const found = traverseAssess(values, ground, 0, aids);
  if (!found.known) throw new Error(found.cause);
  return found.checks.find(({ name }) => name === 'braking')!;
}

/** Null where the vehicle stands nowhere. */
const engineOf = (values: VehicleValues, ground: Ground, aids = LOW): EngineBraking | null =>
  brakingOf(values, ground, aids).engine ?? null;

/** Holds that `more` has no smaller engine braking margin than `less`. */
function neverLess(more: EngineBraking | null, less: EngineBraking | null): void {
  expect(more === null).toBe(less === null);
  if (more === null || less === null) return;
  expect(more.margin).toBeGreaterThanOrEqual(less.margin - 1e-9);
  expect(more.braked).toBeLessThanOrEqual(less.braked + 1e-9);
}

describe('what the engine holds on the way down', () => {
  it('is never lowered by a lower gear or by more torque', () => {
    fc.assert(
      fc.property(down, between(1, 3), between(1, 3), ({ values, ground }, lower, stronger) => {
        const less = engineOf(values, ground);
        neverLess(engineOf({ ...values, crawlRatio: values.crawlRatio * lower }, ground), less);
        neverLess(engineOf({ ...values, engineTorqueNm: values.engineTorqueNm * stronger }, ground), less);
        neverLess(less, engineOf(values, ground, { ...LOW, lowRange: false }));
      }),
      RUNS,
    );
  });

  it('is never lowered by locking centre, rear or front', () => {
    fc.assert(
      fc.property(down, ({ values, ground }) => {
        const ladder: Aids[] = [
          LOW,
          { ...LOW, centreLocked: true },
          { ...LOW, centreLocked: true, rearLocked: true },
          LOCKED,
        ];
        const found = ladder.map((aids) => engineOf(values, ground, aids));
        for (let i = 1; i < found.length; i++) neverLess(found[i], found[i - 1]);
      }),
      RUNS,
    );
  });

  it('is never lowered by more load on the only axle that the engine reaches', () => {
    fc.assert(
      fc.property(down, between(0.01, 0.2), ({ values, ground }, more) => {
        const plane = { ...ground, camberRad: 0, features: [] };
        const by = (drive: 'front' | 'rear', frontShare: number) =>
          engineOf({ ...values, drive, frontShare }, plane);
        const { frontShare } = values;
        neverLess(by('front', Math.min(0.7, frontShare + more)), by('front', frontShare));
        neverLess(by('rear', Math.max(0.3, frontShare - more)), by('rear', frontShare));
      }),
      RUNS,
    );
  });

  it('is never lowered by more grip', () => {
    fc.assert(
      fc.property(down, between(1, 1.6), ({ values, ground }, more) => {
        const better = {
          ...ground,
          peakAdhesion: ground.peakAdhesion * more,
          slidingAdhesion: ground.slidingAdhesion * more,
        };
        neverLess(engineOf(values, better), engineOf(values, ground));
      }),
      RUNS,
    );
  });

  it('never exceeds what braked wheels hold, and adds nothing to it', () => {
    fc.assert(
      fc.property(down, ({ values, ground }) => {
        const strong = { ...values, crawlRatio: 150, engineTorqueNm: 1200 };
        const braking = brakingOf(strong, ground, LOCKED);
        expect(braking.margin).toBe(brakingOf({ ...strong, engineTorqueNm: 60 }, ground, LOCKED).margin);
        if (braking.margin < 0 && braking.engine) expect(braking.engine.margin).toBeLessThan(0);
      }),
      RUNS,
    );
  });

  it('is the same on mirrored ground', () => {
    const hole = fc.record({
      xM: between(-2, 2),
      yM: between(0.5, 0.9),
      lengthM: between(0.8, 2.5),
      widthM: between(0.6, 1.5),
      depthM: between(0.1, 0.5),
    });
    fc.assert(
      fc.property(down, hole, between(-0.15, 0.15), ({ values, ground }, sizes, camberRad) => {
        const left = { ...ground, camberRad, features: [{ kind: 'hole', ...sizes } as const] };
        const right = {
          ...ground,
          camberRad: -camberRad,
          features: [{ kind: 'hole', ...sizes, yM: -sizes.yM } as const],
        };
        const [a, b] = [engineOf(values, left), engineOf(values, right)];
        neverLess(a, b);
        neverLess(b, a);
        if (a && b)
          expect(b.cause).toBe(a.cause.replace(/left|right/g, (s) => (s === 'left' ? 'right' : 'left')));
      }),
      RUNS,
    );
  });

  it('is not spoken of on a plane that climbs or falls less than a descent does', () => {
    fc.assert(
      fc.property(down, between(-Math.asin(DESCENT_FROM) + 1e-6, 0.5), ({ values }, slopeRad) => {
        expect(engineOf(values, { ...flatGround, slopeRad })).toBeNull();
      }),
      RUNS,
    );
  });
});
