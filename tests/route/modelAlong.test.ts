import { describe, expect, it } from 'vitest';
import { camberAt, steepestCamber } from '../../src/route/camber.ts';
import { disagreementOf } from '../../src/route/disagreement.ts';
import type { ElevationGrid } from '../../src/route/elevation.ts';
import { heightsOf, modelBaselineM, otherHeights } from '../../src/route/heights.ts';
import { liesAlong, modelAlong } from '../../src/route/modelAlong.ts';
import { slopeAt, slopeOf } from '../../src/route/slope.ts';
import { metresPerDegree } from '../../src/route/ellipsoid.ts';
import type { Track, TrackModel } from '../../src/route/track.ts';
import { degrees } from '../../src/units.ts';
import { every, northward, trackOf } from './recorded.ts';

const STEP_M = 30;
const { east, north } = metresPerDegree(45);

/** Ground about 10 E 45 N, as high as told by the metres to the east and to the north of there. */
function ground(heightM: (eastM: number, northM: number) => number, stepM = STEP_M): ElevationGrid {
  const [columns, rows] = [41, 81];
  const at = { lngStepDeg: stepM / east, latStepDeg: stepM / north, columns, rows };
  const elevationM = Float32Array.from({ length: columns * rows }, (_, i) =>
    heightM(((i % columns) - 20) * stepM, (rows - 11 - Math.floor(i / columns)) * stepM),
  );
  return { west: 10 - 20 * at.lngStepDeg, south: 45 - 10 * at.latStepDeg, ...at, elevationM };
}

function along(track: Track, grid: ElevationGrid, more: Partial<TrackModel> = {}): Track {
  return { ...track, model: { ...modelAlong(track, grid, 'ground.tif')!, isUsed: true, ...more } };
}

/** 1 km north, recorded as level. */
const level = trackOf(northward(every(5, 1_000), () => 500));

describe('a model along a track', () => {
  it('gives slopes and cross slopes once it is chosen, and leaves the recording as it is', () => {
    const track = along(
      level,
      ground((x, y) => 500 - 0.3 * x + 0.2 * y),
    );
    expect(slopeAt(slopeOf(track), 500).slopeRad).toBeCloseTo(Math.atan(0.2), 3);
    // Higher to the west, which is to the left on the way north.
    expect(camberAt(track, 500)!.camberRad).toBeCloseTo(Math.atan(0.3), 3);
    expect(slopeAt(slopeOf(track, { from: 'recorded' }), 500).slopeRad).toBeCloseTo(0, 6);
    expect(track.elevationM).toBe(level.elevationM);
    const unused = along(
      level,
      ground((_x, y) => 500 + 0.2 * y),
      { isUsed: false },
    );
    expect(slopeOf(unused).from).toBe('recorded');
    expect(slopeAt(slopeOf(unused), 500).slopeRad).toBeCloseTo(0, 6);
    expect([otherHeights(track), otherHeights(unused), otherHeights(level)]).toEqual([
      'recorded',
      'model',
      null,
    ]);
  });

  it('is null where it has no ground there', () => {
    const far = { ...ground(() => 0), west: 50 };
    expect(modelAlong(level, far, 'far.tif')).toBeNull();
    expect(liesAlong(far, level)).toBe(false);
    expect(
      liesAlong(
        ground(() => 0),
        level,
      ),
    ).toBe(true);
  });

  it('smooths over two of its nodes at least, and says so', () => {
    for (const [stepM, baselineM] of [
      [30, 60],
      [90, 180],
      [1, 20],
    ] as const) {
      const model = {
        ...along(
          level,
          ground(() => 0),
        ).model!,
        nodeM: stepM,
      };
      expect(modelBaselineM(model)).toBe(baselineM);
      expect(slopeOf({ ...level, model }).baselineM).toBe(baselineM);
    }
  });

  it('is surer the smaller its error, and less sure on a hillside', () => {
    const plusMinus = (track: Track) => slopeAt(slopeOf(track), 500).plusMinusRad;
    const flat = (errorM: number) =>
      along(
        level,
        ground(() => 500),
        { errorM },
      );
    // Two ends 60 m apart, each off by 4 m: 2 × √2 × 4 / 60.
    expect(plusMinus(flat(4))).toBeCloseTo((2 * Math.SQRT2 * 4) / 60, 1);
    expect(plusMinus(flat(1))).toBeLessThan(plusMinus(flat(4)) / 3);
    const hillside = along(
      level,
      ground((x) => 500 + 0.8 * x),
      { errorM: 1 },
    );
    expect(plusMinus(hillside)).toBeGreaterThan(1.5 * plusMinus(flat(1)));
  });

  it('leaves unknown what it does not know, however short, and falls back on nothing', () => {
    const grid = ground((_x, y) => (y > 480 && y < 520 ? NaN : 500 + 0.1 * y));
    const track = along(level, grid);
    const profile = slopeOf(track);
    expect(slopeAt(profile, 200).slopeRad).toBeCloseTo(Math.atan(0.1), 3);
    expect(slopeAt(profile, 800).slopeRad).toBeCloseTo(Math.atan(0.1), 3);
    for (const stationM of [458, 500, 542]) {
      expect(slopeAt(profile, stationM).slopeRad).toBeNaN();
      expect(camberAt(track, stationM), `${stationM}`).toBeNull();
    }
    const unknown = profile.segments.filter(({ known }) => !known);
    expect(unknown).toHaveLength(1);
    expect(unknown[0].fromM).toBeLessThan(458);
    expect(unknown[0].toM).toBeGreaterThan(542);
    expect(heightsOf(track).bridged).toBe(false);
  });

  it('has ends and stretches of unknown ground where it begins and ends midway', () => {
    const track = along(
      level,
      ground((_x, y) => (y < 300 || y > 700 ? NaN : 500)),
    );
    const { segments } = slopeOf(track);
    expect(segments.map(({ known }) => known)).toEqual([false, true, false]);
    expect(segments[0].fromM).toBe(0);
    expect(segments[2].toM).toBeCloseTo(level.distanceM.at(-1)!, 9);
    for (let i = 1; i < segments.length; i++) expect(segments[i].fromM).toBe(segments[i - 1].toM);
  });

  it('names its steepest cross slope', () => {
    const track = along(
      level,
      ground((x, y) => 500 + (y > 580 && y < 620 ? 0.5 : 0.1) * x),
    );
    const steepest = steepestCamber(track)!;
    expect(degrees(steepest.camberRad)).toBeLessThan(-20);
    expect(Math.abs(steepest.stationM - 600)).toBeLessThan(10);
    expect(steepestCamber(level)).toBeNull();
  });
});

describe('a model and a recording', () => {
  const both = (track: Track) =>
    disagreementOf(slopeOf(track, { from: 'recorded' }), slopeOf(track, { from: 'model' }));

  it('differ as a whole, and most somewhere', () => {
    const bump = (y: number) => 30 * Math.exp(-(((y - 700) / 80) ** 2));
    const differs = both(
      along(
        level,
        ground((_x, y) => 540 + bump(y)),
      ),
    )!;
    expect(differs.usualM).toBeCloseTo(40, 0);
    expect(differs.mostM).toBeGreaterThan(60);
    expect(Math.abs(differs.stationM - 700)).toBeLessThan(15);
  });

  it('are not compared across a gap, nor where either is unknown', () => {
    const gap = trackOf(
      northward(every(5, 400), () => 500),
      northward(every(5, 900, 500), () => 900),
    );
    const differs = both(
      along(
        gap,
        ground((_x, y) => (y < 450 ? 500 : 900)),
      ),
    )!;
    expect(Math.abs(differs.mostM)).toBeLessThan(1);
    const nowhere = trackOf(northward(every(5, 400), () => NaN));
    expect(
      both(
        along(
          nowhere,
          ground(() => 500),
        ),
      ),
    ).toBeNull();
  });
});
