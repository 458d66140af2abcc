import { describe, expect, it } from 'vitest';
import { STEEPNESS, steepnessOf, steepnessText } from '../../src/route/steepness.ts';
import { rad } from '../../src/units.ts';

/** Relative luminance of sRGB (W3C, WCAG 2.2, 2023, definition of relative luminance). */
function luminance(colour: string): number {
  const [r, g, b] = [1, 3, 5].map((at) => {
    const c = parseInt(colour.slice(at, at + 2), 16) / 255;
    return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

describe('classes of steepness', () => {
  it('hold uphill and downhill alike, a bound belonging to the steeper class', () => {
    expect(steepnessOf(0)).toBe(0);
    expect(steepnessOf(rad(4.99))).toBe(0);
    expect(steepnessOf(rad(-10))).toBe(2);
    expect(steepnessOf(rad(40))).toBe(5);
    expect(steepnessOf(NaN)).toBe(-1);
  });

  it('darken with the slope, so that they are told apart without hue', () => {
    for (let i = 1; i < STEEPNESS.length; i++)
      expect(luminance(STEEPNESS[i - 1].colour) / luminance(STEEPNESS[i].colour)).toBeGreaterThan(1.15);
  });

  it('say their bounds in degrees and percent', () => {
    expect(steepnessText(2)).toEqual({ degrees: '10–15°', percent: '18–27 %' });
    expect(steepnessText(5)).toEqual({ degrees: 'over 25°', percent: 'over 47 %' });
  });
});
