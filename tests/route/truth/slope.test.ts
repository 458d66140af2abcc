import { describe, expect, it } from 'vitest';
import { climbOf, steepestOf } from '../../../src/route/climb.ts';
import { slopeAt, slopeOf } from '../../../src/route/slope.ts';
import { every, northward, random, trackOf } from '../recorded.ts';

// The truth here is geometry: hills whose slope is known in closed form.

const deg = (angleRad: number) => (angleRad * 180) / Math.PI;

describe('a ramp', () => {
  it.each([-0.6, -0.25, 0, 0.03, 0.1, 0.577, 0.9])(
    'of rise over run %s has that slope everywhere',
    (slope) => {
      for (const spacing of [1, 4.7, 20, 50]) {
        const profile = slopeOf(trackOf(northward(every(spacing, 400), (s) => 700 + slope * s)));
        for (const here of profile.slopeRad) expect(here).toBeCloseTo(Math.atan(slope), 5);
        expect(profile.segments).toHaveLength(1);
        expect(profile.segments[0].slopeRad).toBeCloseTo(Math.atan(slope), 5);
        expect(profile.segments[0].riseM).toBeCloseTo(
          slope * (profile.segments[0].toM - profile.segments[0].fromM),
          3,
        );
      }
    },
  );

  it('has the +- of the stated formula: 2 sqrt(2) sigma / B, in the angle', () => {
    const profile = slopeOf(trackOf(northward(every(5, 600), (s) => 0.2 * s)), { baselineM: 60, sigmaM: 3 });
    const { plusMinusRad } = slopeAt(profile, 300);
    expect(plusMinusRad).toBeCloseTo((2 * Math.SQRT2 * 3) / 60 / (1 + 0.2 ** 2), 2);
  });
});

describe('hills of known shape', () => {
  it('a parabola: the straight line of least squares has the slope of its middle', () => {
    const profile = slopeOf(trackOf(northward(every(1, 1_000), (s) => s * s * 1e-4)));
    for (const stationM of [100, 333, 500, 900]) {
      expect(slopeAt(profile, stationM).slopeRad).toBeCloseTo(Math.atan(2e-4 * stationM), 3);
    }
  });

  it('a sine: smoothing over B leaves 3 (sin u - u cos u) / u^3 of its slope, u = pi B / wavelength', () => {
    // Least squares slope of sin(k x) about x = 0 over [-B/2, B/2]: (12 / B^3) * integral of x sin(k x).
    for (const wavelengthM of [120, 200, 400]) {
      const k = (2 * Math.PI) / wavelengthM;
      const u = (Math.PI * 60) / wavelengthM;
      const share = (3 * (Math.sin(u) - u * Math.cos(u))) / u ** 3;
      const profile = slopeOf(trackOf(northward(every(0.5, 2 * wavelengthM), (s) => 5 * Math.sin(k * s))));
      // Cells make the effective baseline a twelfth longer at most.
      expect(Math.tan(slopeAt(profile, wavelengthM).slopeRad) / (5 * k)).toBeGreaterThan(share * 0.93);
      expect(Math.tan(slopeAt(profile, wavelengthM).slopeRad) / (5 * k)).toBeLessThan(share * 1.01);
    }
  });

  it('a roof: three pieces meet where the slope changes, and climb what they should', () => {
    const heightM = (s: number) => (s < 400 ? 0.15 * s : s < 700 ? 60 : 60 - 0.3 * (s - 700));
    const profile = slopeOf(trackOf(northward(every(3, 1_000), heightM)));
    const long = profile.segments.filter((segment) => segment.toM - segment.fromM > 100);
    expect(long).toHaveLength(3);
    for (const [i, slope] of [0.15, 0, -0.3].entries()) {
      const error = Math.abs(long[i].slopeRad - Math.atan(slope));
      expect(error).toBeLessThan(long[i].plusMinusRad);
      expect(deg(error)).toBeLessThan(0.5);
    }
    expect(climbOf(profile).ascentM).toBeCloseTo(60, 0);
    expect(climbOf(profile).descentM).toBeCloseTo(90, 0);
    const steepest = steepestOf(profile, 50);
    expect(steepest.climb!.slopeRad).toBeCloseTo(Math.atan(0.15), 2);
    expect(steepest.descent!.slopeRad).toBeCloseTo(-Math.atan(0.3), 2);
    expect(steepest.descent!.fromM).toBeGreaterThan(695);
  });
});

describe('a noisy recording', () => {
  it('in whole metres at one a second, with steps over 100 %, keeps to the true slope within its +-', () => {
    const next = random(11);
    const noisy = every(1.4, 1_500).map(
      (s) => [s, Math.round(900 + 0.12 * s + (next() + next() - 1) * 2.5)] as const,
    );
    const track = trackOf(
      northward(
        noisy.map(([s]) => s),
        (s) => noisy.find(([at]) => at === s)![1],
      ),
    );
    let over = 0;
    for (let i = 1; i < track.length; i++) {
      if (
        Math.abs(track.elevationM[i] - track.elevationM[i - 1]) >
        track.distanceM[i] - track.distanceM[i - 1]
      )
        over++;
    }
    expect(over).toBeGreaterThan(100);
    const profile = slopeOf(track);
    const within = [...profile.slopeRad].filter(
      (slope, i) => Math.abs(slope - Math.atan(0.12)) <= profile.plusMinusRad[i],
    );
    expect(within.length / profile.length).toBeGreaterThanOrEqual(0.95);
    for (const slope of profile.slopeRad) expect(Math.abs(deg(slope) - 6.84)).toBeLessThan(5);
    expect(climbOf(profile).ascentM).toBeCloseTo(180, -1);
    expect(climbOf(profile).descentM).toBeLessThan(5);
  });

  it('that drifts by sigma from one baseline to the next stays within its +- 19 times in 20', () => {
    const next = random(3);
    const gauss = () => Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next());
    const drift = Array.from({ length: 400 }, () => 1.5 * gauss());
    const heightM = (s: number) => {
      const at = Math.floor(s / 60);
      return 0.05 * s + drift[at] + (drift[at + 1] - drift[at]) * (s / 60 - at);
    };
    const profile = slopeOf(trackOf(northward(every(4, 20_000), heightM)));
    const within = [...profile.slopeRad].filter(
      (slope, i) => Math.abs(slope - Math.atan(0.05)) <= profile.plusMinusRad[i],
    );
    expect(within.length / profile.length).toBeGreaterThanOrEqual(0.95);
  });
});
