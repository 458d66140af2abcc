import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { breaksOf } from '../../src/route/breaks.ts';
import { climbOf } from '../../src/route/climb.ts';
import { slopeAt, slopeOf } from '../../src/route/slope.ts';
import type { Recorded } from './recorded.ts';
import { every, northward, trackOf } from './recorded.ts';

const SEED = { seed: 20_240, numRuns: 60 };

/** A hilly recording of some 100 to 500 points. */
const hills = fc
  .tuple(
    fc.array(fc.double({ min: -40, max: 40, noNaN: true }), { minLength: 4, maxLength: 20 }),
    fc.double({ min: 1, max: 20, noNaN: true }),
  )
  .map(([heights, spacing]) =>
    northward(every(spacing, (heights.length - 1) * 100), (s) => {
      const i = Math.min(heights.length - 2, Math.floor(s / 100));
      const t = s / 100 - i;
      return 800 + heights[i] + (heights[i + 1] - heights[i]) * t * t * (3 - 2 * t);
    }),
  );

const reversed = (points: readonly Recorded[]) => [...points].reverse();

describe('slope', () => {
  it('changes its sign when the track is driven the other way', () => {
    fc.assert(
      fc.property(hills, (points) => {
        const there = slopeOf(trackOf(points));
        const back = slopeOf(trackOf(reversed(points)));
        const lengthM = Math.min(there.stationM.at(-1)!, back.stationM.at(-1)!);
        for (let s = 0; s <= lengthM; s += 17) {
          const a = slopeAt(there, s);
          const b = slopeAt(back, lengthM - s);
          expect(Math.abs(a.slopeRad + b.slopeRad)).toBeLessThan(0.5 * (a.plusMinusRad + b.plusMinusRad));
        }
        const [up, down] = [climbOf(there), climbOf(back)];
        expect(Math.abs(up.ascentM - down.descentM)).toBeLessThan(3 + 0.02 * up.ascentM);
      }),
      SEED,
    );
  });

  it('does not change when all heights are raised alike', () => {
    fc.assert(
      fc.property(hills, fc.integer({ min: -300, max: 3_000 }), (points, raise) => {
        const low = slopeOf(trackOf(points));
        const high = slopeOf(trackOf(points.map(([lng, lat, z]) => [lng, lat, z! + raise] as const)));
        for (let i = 0; i < low.length; i++) expect(high.slopeRad[i]).toBeCloseTo(low.slopeRad[i], 6);
      }),
      SEED,
    );
  });

  it('has segments that follow on one another, and rises that add up', () => {
    fc.assert(
      fc.property(hills, hills, (first, second) => {
        const far = second.map(([lng, lat, z]) => [lng + 1, lat, z] as const);
        const track = trackOf(first, far);
        const { segments } = slopeOf(track);
        expect(segments[0].fromM).toBe(0);
        expect(segments.at(-1)!.toM).toBe(track.distanceM.at(-1));
        for (let i = 1; i < segments.length; i++) expect(segments[i].fromM).toBe(segments[i - 1].toM);
        const gapM = track.distanceM[track.segmentStart[1]];
        expect(segments.some((segment) => segment.fromM < gapM && segment.toM > gapM)).toBe(false);
      }),
      SEED,
    );
  });

  it('of a track cut in two differs only near the cut', () => {
    fc.assert(
      fc.property(hills, fc.double({ min: 0.2, max: 0.8, noNaN: true }), (points, share) => {
        const cut = Math.floor(points.length * share);
        const whole = trackOf(points);
        const two = trackOf(points.slice(0, cut), points.slice(cut));
        const link = whole.distanceM[cut] - whole.distanceM[cut - 1];
        expect(two.distanceM.at(-1)).toBeCloseTo(whole.distanceM.at(-1)! - link, 6);
        const a = slopeOf(whole);
        const b = slopeOf(two);
        for (let s = 0; s < whole.distanceM[cut - 1] - 100; s += 10) {
          expect(slopeAt(b, s).slopeRad).toBeCloseTo(slopeAt(a, s).slopeRad, 9);
        }
      }),
      SEED,
    );
  });
});

describe('breaks', () => {
  it('leave the curve by no more than the tolerance', () => {
    const curve = fc.array(fc.double({ min: -100, max: 100, noNaN: true }), { minLength: 2, maxLength: 80 });
    fc.assert(
      fc.property(curve, fc.double({ min: 0.01, max: 30, noNaN: true }), (heights, tolerance) => {
        const x = Float64Array.from(heights, (_, i) => i * 3);
        const y = Float64Array.from(heights);
        const breaks = breaksOf(x, y, tolerance);
        expect(breaks[0]).toBe(0);
        expect(breaks.at(-1)).toBe(heights.length - 1);
        for (let b = 1; b < breaks.length; b++) {
          const [from, to] = [breaks[b - 1], breaks[b]];
          for (let i = from; i <= to; i++) {
            const chord = y[from] + ((y[to] - y[from]) * (x[i] - x[from])) / (x[to] - x[from]);
            expect(Math.abs(y[i] - chord)).toBeLessThanOrEqual(tolerance + 1e-9);
          }
        }
      }),
      SEED,
    );
  });
});
