import { describe, expect, it } from 'vitest';
import { DRAWS, drawn } from '../../src/terrain/draws.ts';
import { groundOf } from '../../src/terrain/ground.ts';
import { presetNamed, stretchFrom } from '../../src/terrain/preset.ts';
import { AS_ENTERED, AT_WORST } from '../../src/terrain/take.ts';
import { gripOf } from '../../src/terrain/surface.ts';

const all = Array.from({ length: DRAWS }, (_, draw) => drawn(draw));

describe('the draws', () => {
  it('take every one of the equal parts of a range exactly once', () => {
    const parts = all.map((take) => Math.floor(((take.measured('a', 0, 1, null) + 1) / 2) * DRAWS));
    expect(parts.toSorted((a, b) => a - b)).toEqual(parts.map((_, i) => i));
  });

  it('deal two values apart from each other', () => {
    const a = all.map((take) => take.measured('features.0.depthM', 0, 1, null));
    const b = all.map((take) => take.measured('features.1.depthM', 0, 1, null));
    const correlation = a.reduce((sum, value, i) => sum + value * b[i], 0) / (DRAWS / 3);
    expect(Math.abs(correlation)).toBeLessThan(0.3);
  });

  it('lie between the ends that the worst is taken from, and are the same each time', () => {
    const stretch = stretchFrom(presetNamed('rutted climb')!, { slopeRad: 0.2 });
    const worst = groundOf(stretch, 'as recorded', null, AT_WORST)!;
    const entered = groundOf(stretch, 'as recorded', null, AS_ENTERED)!;
    const { peak } = gripOf(stretch.surface);
    for (const take of all) {
      const ground = groundOf(stretch, 'as recorded', null, take)!;
      expect(ground.slopeRad).toBeLessThanOrEqual(worst.slopeRad);
      expect(ground.slopeRad).toBeGreaterThanOrEqual(2 * entered.slopeRad - worst.slopeRad);
      expect(ground.peakAdhesion).toBeGreaterThanOrEqual(peak.low);
      expect(ground.peakAdhesion).toBeLessThanOrEqual(peak.high);
    }
    expect(groundOf(stretch, 'as recorded', null, drawn(7))).toEqual(
      groundOf(stretch, 'as recorded', null, drawn(7)),
    );
  });
});
