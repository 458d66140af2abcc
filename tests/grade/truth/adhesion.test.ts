import { describe, expect, it } from 'vitest';
import type { Trial } from '../../../src/grade/adhesion.ts';
import { adhesionFrom, logNormal } from '../../../src/grade/adhesion.ts';

/**
 * Beetles exposed to carbon disulphide: Bliss, "The calculation of the dosage-mortality curve", Annals of Applied
 * Biology 22 (1935), as printed in Dobson, An Introduction to Generalized Linear Models, table "Beetle mortality":
 * dose (log10 mg/l), exposed, killed.
 */
const BEETLES = [
  [1.6907, 59, 6],
  [1.7242, 60, 13],
  [1.7552, 62, 18],
  [1.7842, 56, 28],
  [1.8113, 63, 52],
  [1.8369, 59, 53],
  [1.861, 62, 60],
  [1.8839, 60, 60],
] as const;

/** The probit fit of the same: Φ⁻¹(p) = −34.94 + 19.73 dose (Dobson, as above; values from memory). */
const PROBIT = { intercept: -34.94, slope: 19.73 };

describe('the most likely adhesion', () => {
  it('of a published dose and response is the published half-way dose', () => {
    // To be killed is to fail at a dose; doses are laid into the range that is searched.
    const shift = 1;
    const trials: Trial[] = BEETLES.flatMap(([dose, exposed, killed]) =>
      Array.from({ length: exposed }, (_, i) => ({ needed: dose - shift, went: i >= killed })),
    );
    const found = adhesionFrom(trials, 1 / PROBIT.slope);
    const halfWay = -PROBIT.intercept / PROBIT.slope - shift;
    expect(found?.likely).not.toBeNull();
    expect(Math.abs((found?.likely ?? 0) - halfWay)).toBeLessThan(0.001);
    // The published standard error of that dose is near 0.0038 (delta method), so that 1.96 of it are near 0.0075.
    expect(Math.abs((found?.high ?? 0) - (found?.low ?? 0) - 0.015)).toBeLessThan(0.003);
  });

  it('is where as many go as do not, when all needed the same', () => {
    const trials = Array.from({ length: 10 }, (_, i) => ({ needed: 0.4, went: i % 2 === 0 }));
    expect(adhesionFrom(trials)?.likely).toBeCloseTo(0.4, 6);
  });
});

/** Abramowitz and Stegun, Handbook of Mathematical Functions, 1964, Table 26.1: P(x), and 26.2: −log10 Q(x). */
describe('the normal distribution', () => {
  it.each([
    [0, 0.5],
    [1, 0.841344746],
    [2, 0.977249868],
    [3, 0.998650102],
  ])('at %d', (z, p) => {
    expect(Math.exp(logNormal(z))).toBeCloseTo(p, 8);
    expect(Math.exp(logNormal(-z))).toBeCloseTo(1 - p, 8);
  });

  it.each([
    [5, 6.54265],
    [10, 23.11805],
    [20, 88.5601],
  ])('far out, at −%d', (z, minusLog) => {
    expect(-logNormal(-z) / Math.LN10).toBeCloseTo(minusLog, 4);
  });
});
