import { describe, expect, it } from 'vitest';
import { climbOf, steepestOf } from '../../src/route/climb.ts';
import { slopeAt, slopeOf } from '../../src/route/slope.ts';
import { every, northward, trackOf } from './recorded.ts';

const ramp = (slope: number) => (s: number) => 100 + slope * s;

describe('unknown slope', () => {
  it('is a track without elevation, as one stretch', () => {
    const profile = slopeOf(trackOf(northward(every(5, 200), () => NaN)));
    expect(profile.segments).toHaveLength(1);
    expect(profile.segments[0]).toMatchObject({
      fromM: 0,
      known: false,
      slopeRad: NaN,
      riseM: NaN,
      plusMinusRad: NaN,
    });
    expect(slopeAt(profile, 100)).toEqual({ smoothedM: NaN, slopeRad: NaN, plusMinusRad: NaN });
    expect(climbOf(profile)).toEqual({ ascentM: 0, descentM: 0 });
    expect(steepestOf(profile, 20)).toEqual({ climb: null, descent: null });
  });

  it('is a long hole in the elevations; a short one is bridged', () => {
    const holed = (fromM: number, toM: number) => (s: number) => (s > fromM && s < toM ? NaN : 100 + 0.1 * s);
    const short = slopeOf(trackOf(northward(every(5, 600), holed(200, 290))));
    expect(short.segments.map((segment) => segment.known)).toEqual([true]);
    const long = slopeOf(trackOf(northward(every(5, 600), holed(200, 400))));
    expect(long.segments.map(({ known, fromM, toM }) => [known, Math.round(fromM), Math.round(toM)])).toEqual(
      [
        [true, 0, 200],
        [false, 200, 400],
        [true, 400, 600],
      ],
    );
    expect(slopeAt(long, 300).slopeRad).toBeNaN();
  });

  it('is what lies beyond the ends, or is too short to tell', () => {
    const profile = slopeOf(trackOf(northward(every(5, 200), ramp(0.1))));
    expect(slopeAt(profile, -1).slopeRad).toBeNaN();
    expect(slopeAt(profile, 201).slopeRad).toBeNaN();
    expect(slopeAt(profile, 0).slopeRad).toBeCloseTo(Math.atan(0.1), 4);
    expect(slopeAt(profile, 199.9).slopeRad).toBeCloseTo(Math.atan(0.1), 4);
    expect(slopeOf(trackOf(northward(every(5, 20), ramp(0.1)))).segments[0].known).toBe(false);
    expect(slopeOf(trackOf([[10, 45, 100]])).segments).toEqual([]);
    expect(
      slopeOf(
        trackOf([
          [10, 45, 100],
          [10, 45, 120],
        ]),
      ).segments,
    ).toEqual([]);
  });

  it('is a jump that no vehicle could climb: both sides are known by themselves', () => {
    const spike = (s: number) => (s === 300 ? 500 : 100 + 0.1 * s);
    const profile = slopeOf(trackOf(northward(every(5, 600), spike)));
    for (const slope of profile.slopeRad)
      expect(Number.isNaN(slope) || Math.abs(slope - Math.atan(0.1)) < 0.001).toBe(true);
    expect(slopeAt(profile, 300).slopeRad).toBeNaN();
    expect(slopeAt(profile, 310).slopeRad).toBeCloseTo(Math.atan(0.1), 4);
  });
});

describe('a gap', () => {
  const track = trackOf(northward(every(5, 300), ramp(0.2)), northward(every(5, 5_300, 5_000), ramp(-0.1)));

  it('is never crossed by a segment, a fit or a climb', () => {
    const profile = slopeOf(track);
    expect(profile.segments.map((segment) => Math.tan(segment.slopeRad).toFixed(3))).toEqual([
      '0.200',
      '-0.100',
    ]);
    expect(profile.segments[0].toM).toBe(profile.segments[1].fromM);
    expect(climbOf(profile).ascentM).toBeCloseTo(60, 0);
    expect(climbOf(profile).descentM).toBeCloseTo(30, 0);
    expect(steepestOf(profile, 50).climb!.toM).toBeLessThanOrEqual(profile.segments[0].toM);
  });

  it('breaks the curve, and gives its far side', () => {
    const profile = slopeOf(track);
    expect([...profile.smoothedM].filter(Number.isNaN)).toHaveLength(1);
    expect(slopeAt(profile, track.distanceM[track.segmentStart[1]]).slopeRad).toBeCloseTo(Math.atan(-0.1), 4);
  });
});

describe('elevations', () => {
  it('can come from elsewhere than the recording', () => {
    const track = trackOf(northward(every(5, 300), ramp(0.2)));
    const elevationM = track.distanceM.map((s) => 50 - 0.3 * s);
    expect(slopeAt(slopeOf(track, { elevationM }), 150).slopeRad).toBeCloseTo(Math.atan(-0.3), 4);
    expect(() => slopeOf(track, { elevationM: new Float64Array(2) })).toThrow(RangeError);
  });

  it('of a vehicle that stands still weigh no more than one that drives by', () => {
    const still = Array.from(
      { length: 5_000 },
      (_, i) => [10, 45 + 150 / 111_131, 115 + Math.sin(i)] as const,
    );
    const before = northward(every(3, 147), ramp(0.1));
    const after = northward(every(3, 300, 153), ramp(0.1));
    const profile = slopeOf(trackOf([...before, ...still, ...after]));
    for (const slope of profile.slopeRad) expect(slope).toBeCloseTo(Math.atan(0.1), 1);
  });
});

describe('climbs', () => {
  it('smaller than the threshold are noise', () => {
    const wave = (heightM: number) =>
      slopeOf(trackOf(northward(every(5, 2_000), (s) => heightM * Math.sin((s * Math.PI) / 250))));
    expect(climbOf(wave(1)).ascentM).toBe(0);
    expect(climbOf(wave(10)).ascentM).toBeGreaterThan(4 * 18);
    expect(climbOf(wave(10), 50).ascentM).toBe(0);
  });

  it('of the steepest stretch say where, and skip what is less sure than steep', () => {
    const heightM = (s: number) => 0.05 * s + (s > 400 ? 0.25 * Math.min(80, s - 400) : 0);
    const profile = slopeOf(trackOf(northward(every(4, 900), heightM)));
    for (const lengthM of [10, 20, 50]) {
      const { climb, descent } = steepestOf(profile, lengthM);
      expect(climb!.toM - climb!.fromM).toBeCloseTo(lengthM, 6);
      expect(climb!.fromM).toBeGreaterThan(395);
      expect(climb!.toM).toBeLessThan(485);
      expect(Math.tan(climb!.slopeRad)).toBeCloseTo(0.3, 1);
      expect(descent).toBeNull();
    }
    expect(steepestOf(slopeOf(trackOf(northward(every(4, 900), ramp(0.01)))), 50).climb).toBeNull();
  });
});
