import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Trial } from '../../src/grade/adhesion.ts';
import { ADHESION_SPREAD, adhesionFrom, LEAST_TRIALS } from '../../src/grade/adhesion.ts';

/** Uniform in (0, 1), always the same: Park and Miller's minimal standard generator. */
function chance(seed: number): () => number {
  let state = seed;
  return () => (state = (state * 48_271) % 2_147_483_647) / 2_147_483_647;
}

/** Standard normal deviates by Box and Muller. */
function deviates(next: () => number): () => number {
  return () => Math.sqrt(-2 * Math.log(next())) * Math.cos(2 * Math.PI * next());
}

function tries(theta: number, count: number, seed: number, spread = ADHESION_SPREAD): Trial[] {
  const next = chance(seed);
  const deviate = deviates(next);
  return Array.from({ length: count }, () => {
    const needed = theta - 0.25 + 0.5 * next();
    return { needed, went: theta + spread * deviate() >= needed };
  });
}

describe('an estimate of adhesion', () => {
  it.each([
    [0.2, 12],
    [0.35, 12],
    [0.35, 40],
    [0.6, 40],
  ])('holds a known truth of %d in nineteen of twenty cases, from %i tries', (theta, count) => {
    const runs = 600;
    let held = 0;
    let sum = 0;
    let mixed = 0;
    for (let run = 0; run < runs; run++) {
      const found = adhesionFrom(tries(theta, count, 1 + run * 7919));
      if (found === null) continue;
      if ((found.low ?? -Infinity) <= theta && theta <= (found.high ?? Infinity)) held++;
      if (found.likely !== null) {
        sum += found.likely;
        mixed++;
      }
    }
    // 600 runs at 95 %: three standard deviations of the count are 2.7 %.
    expect(held / runs).toBeGreaterThan(0.92);
    expect(held / runs).toBeLessThan(0.985);
    expect(Math.abs(sum / mixed - theta)).toBeLessThan(0.01);
  });

  const trial = fc.record({ needed: fc.double({ min: 0.05, max: 0.9, noNaN: true }), went: fc.boolean() });
  const some = fc.array(trial, { minLength: LEAST_TRIALS, maxLength: 30 });

  it('never rises by a try that failed, nor falls by one that went', () => {
    fc.assert(
      fc.property(some, trial, (trials, more) => {
        const before = adhesionFrom(trials);
        const after = adhesionFrom([...trials, more]);
        if (before?.likely == null || after?.likely == null) return;
        const by = after.likely - before.likely;
        expect(more.went ? by : -by).toBeGreaterThan(-1e-9);
      }),
      { seed: 11, numRuns: 150 },
    );
  });

  it('asks nothing of the order of the tries', () => {
    fc.assert(
      fc.property(some, (trials) => {
        const turned = adhesionFrom(trials.toReversed());
        const found = adhesionFrom(trials);
        expect(Math.abs((turned?.likely ?? 0) - (found?.likely ?? 0))).toBeLessThan(0.0015);
      }),
      { seed: 12, numRuns: 60 },
    );
  });

  it('says nothing of few, and names no end that nothing holds', () => {
    fc.assert(
      fc.property(some, fc.boolean(), (trials, went) => {
        expect(adhesionFrom(trials.slice(0, LEAST_TRIALS - 1))).toBeNull();
        const found = adhesionFrom(trials.map((one) => ({ ...one, went })));
        expect(found?.likely).toBeNull();
        expect(went ? found?.high : found?.low).toBeNull();
        expect(went ? found?.low : found?.high).not.toBeNull();
      }),
      { seed: 13, numRuns: 60 },
    );
  });
});
