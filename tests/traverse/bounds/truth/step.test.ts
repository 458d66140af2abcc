import { describe, expect, it } from 'vitest';
import { contactAngleRad, hubPullN, unaidedStepM } from '../../../../src/traverse/bounds/step.ts';

describe('a wheel at a step', () => {
  // Statics problem "wheel of radius 0.34 m and weight 25 N at a step of 0.12 m" (numerade); method of Fundamentals of
  // Physics 10e, ch. 12 Q25. Worked out from moments about the edge, tolerance 0.01 N.
  it('25 N on 0.34 m over 0.12 m takes 29.46 N at the hub', () => {
    expect(Math.abs(hubPullN(25, 0.34, 0.12) - 29.46)).toBeLessThan(0.01);
  });

  // Physics problem 10069 (database of physics solutions): h = 3R/4 needs √15 times the weight.
  it('three quarters of the radius takes √15 times the weight', () => {
    expect(hubPullN(1, 1, 0.75)).toBeCloseTo(Math.sqrt(15), 9);
  });

  // Derived: equilibrium of a driven wheel on an edge, no push: tan φ = μ.
  it.each([0.2, 0.5, 0.8, 1.2])('the highest step unaided at adhesion %f has its contact at atan μ', (mu) => {
    expect(Math.tan(contactAngleRad(0.4, unaidedStepM(0.4, mu)))).toBeCloseTo(mu, 9);
  });

  it('a step as high as the radius cannot be pulled over from the hub', () => {
    expect(hubPullN(1, 0.4, 0.4)).toBe(Infinity);
  });
});
