import { describe, expect, it } from 'vitest';
import type { Quantity } from '../../src/units.ts';
import { fromPercent, fromShown, percentText, rad, slopeText, steepText } from '../../src/units.ts';

describe('imperial units', () => {
  // NIST Special Publication 811 (2008), Appendix B.8, "Factors for units listed alphabetically": seven digits,
  // so the last one is good to 5e-7.
  it.each<[string, Quantity, number, number]>([
    ['foot', 'length', 1, 0.3048],
    ['inch', 'size', 1, 0.0254],
    ['mile', 'distance', 1, 1609.344],
    ['pound', 'mass', 1, 0.45359237],
    ['pound-force', 'force', 1, 4.448222],
    ['psi', 'pressure', 1, 6894.757],
    ['foot pound-force', 'torque', 1, 1.355818],
    ['mile per hour', 'speed', 1, 0.44704],
    ['pound-force per inch', 'stiffness', 1, 175.1268],
  ])('one %s', (_name, quantity, shown, si) => {
    expect(Math.abs(fromShown(shown, quantity, 'imperial') / si - 1)).toBeLessThan(5e-7);
  });
});

describe('steepness in words', () => {
  // US Army TB 9-2350-292-10 p. 22: grade is rise over run, 25 / 100 = 25 %.
  it('a rise of 25 in 100 is 25 %, 1 in 4, 14.0°', () => {
    expect(slopeText(Math.atan(0.25))).toBe('14.0°, 25 %, 1 in 4.0');
  });

  // A right angle's half rises as far as it runs; the tangent of no other angle below it is 1.
  it('45° is 100 %', () => {
    expect(percentText(rad(45))).toBe('100 %');
    expect(fromPercent(100)).toBeCloseTo(rad(45), 15);
    expect(fromPercent(25)).toBeCloseTo(rad(14.036243467926479), 15);
    expect(fromPercent(-25)).toBe(-fromPercent(25));
  });

  it('within a sentence in degrees and in percent', () => {
    expect(steepText(Math.atan(0.25))).toBe('14.0° (25 %)');
    expect(steepText(rad(-45))).toBe('−45.0° (−100 %)');
    expect(steepText(NaN)).toBe('not known');
  });

  it('says level and not known', () => {
    expect(slopeText(0)).toBe('0.0°, 0 %, level');
    expect(slopeText(NaN)).toBe('not known');
    expect(slopeText(rad(-18))).toBe('−18.0°, −32 %, 1 in 3.1');
  });
});
