import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { scaleBar } from '../../src/map/scaleBar.ts';

describe('the scale bar', () => {
  it.each([
    [5, 'metric', '500 m', 100],
    [0.02, 'metric', '2 m', 100],
    [30, 'metric', '2 km', 66.67],
    [0.003, 'metric', '0.2 m', 66.67],
    [2, 'imperial', '1000 ft', 152.4],
    [20, 'imperial', '1 mi', 80.47],
    [10, 'imperial', '0.5 mi', 80.47],
  ] as const)('at %d m a pixel (%s) is %s long', (metresPerPx, system, words, lengthPx) => {
    const bar = scaleBar(metresPerPx, 160, system);
    expect(bar.words).toBe(words);
    expect(bar.lengthPx).toBeCloseTo(lengthPx, 1);
  });

  it('always fits, and uses at least two fifths of the room', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 5000, noNaN: true }),
        fc.constantFrom('metric' as const, 'imperial' as const),
        (metresPerPx, system) => {
          const { lengthPx } = scaleBar(metresPerPx, 160, system);
          expect(lengthPx).toBeLessThanOrEqual(160.001);
          expect(lengthPx).toBeGreaterThan(160 * 0.39);
        },
      ),
      { seed: 11 },
    );
  });
});
