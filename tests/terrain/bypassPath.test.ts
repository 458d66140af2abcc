import { describe, expect, it } from 'vitest';
import { metresPerDegree, stepM } from '../../src/route/ellipsoid.ts';
import type { Track } from '../../src/route/track.ts';
import { asRecorded, pathFromTrack, pathLengthM, pathOf } from '../../src/terrain/bypassPath.ts';

const LAT = 45;
const METRES = metresPerDegree(LAT);

/** Places so many metres east and north of [lng, 45]. */
function places(metres: readonly (readonly [east: number, north: number])[], lng = 10) {
  return metres.map(([east, north]) => [lng + east / METRES.east, LAT + north / METRES.north] as const);
}

function trackOf(pairs: readonly (readonly [number, number])[]): Track {
  const steps = pairs.map(([lng, lat], i) => (i === 0 ? 0 : stepM(...pairs[i - 1], lng, lat)));
  let sum = 0;
  return {
    name: '',
    description: '',
    kind: 'track',
    length: pairs.length,
    ...pathOf(pairs),
    elevationM: new Float64Array(pairs.length).fill(NaN),
    timeS: new Float64Array(pairs.length).fill(NaN),
    distanceM: Float64Array.from(steps, (step) => (sum += step)),
    segmentStart: Uint32Array.of(0),
    model: null,
  };
}

describe('the path of a bypass', () => {
  it('is as long as its steps', () => {
    expect(
      pathLengthM(
        places([
          [0, 0],
          [30, 0],
          [30, 40],
        ]),
      ),
    ).toBeCloseTo(70, 3);
    expect(pathLengthM([])).toBe(0);
    expect(pathLengthM(places([[0, 0]]))).toBe(0);
  });

  it('is a recording point by point where that is few enough', () => {
    const pairs = places([
      [0, 0],
      [10, 0.01],
      [20, 0],
    ]);
    expect(pathFromTrack(trackOf(pairs), 3)).toEqual(pairs);
  });

  it('is thinned to what may be kept, from end to end, and stays by the recording', () => {
    const bend = places(
      Array.from({ length: 9_000 }, (_, i) => [i / 10, 20 * Math.sin(i / 600) + 0.2 * Math.sin(i)] as const),
    );
    const path = pathFromTrack(trackOf(bend), 200);
    expect(path.length).toBeLessThanOrEqual(200);
    expect(path.length).toBeGreaterThan(10);
    for (const [kept, was] of [
      [path[0], bend[0]],
      [path.at(-1)!, bend.at(-1)!],
    ] as const) {
      expect(stepM(...kept, ...was)).toBeLessThan(0.001);
    }
    const swing = Math.max(...path.map(([, lat]) => (lat - LAT) * METRES.north));
    expect(swing).toBeGreaterThan(19);
  });

  it('is brought down to its two ends where no more may be kept', () => {
    const wild = places(Array.from({ length: 5_000 }, (_, i) => [i, (i * 7919) % 101] as const));
    expect(pathFromTrack(trackOf(wild), 2)).toHaveLength(2);
  });

  it('keeps to the longitudes of the globe where it crosses the meridian of 180', () => {
    const across = places(
      Array.from({ length: 60 }, (_, i) => [i * 10 - 300, (i % 2) * 0.01] as const),
      -180,
    );
    const wrapped = across.map(([lng, lat]) => [lng < -180 ? lng + 360 : lng, lat] as const);
    const path = pathFromTrack(trackOf(wrapped), 10);
    expect(path.length).toBeLessThanOrEqual(10);
    for (const [lng] of path) expect(Math.abs(lng)).toBeLessThanOrEqual(180);
    expect(pathLengthM(path)).toBeCloseTo(590, 0);
  });
});

describe('a path drawn from either end', () => {
  const track = trackOf(
    places([
      [0, 0],
      [0, 100],
      [0, 200],
      [100, 200],
      [200, 200],
    ]),
  );
  const round = places([
    [0, 90],
    [15, 100],
    [0, 112],
  ]);

  it('runs as the track was recorded', () => {
    expect(asRecorded(round, track, 100)).toEqual(round);
    expect(asRecorded(round.toReversed(), track, 100)).toEqual(round);
  });

  it('goes by the course of the track where it is, not by the whole of it', () => {
    const short = places([
      [0, 150],
      [60, 200],
    ]);
    expect(asRecorded(short, track, 200)).toEqual(short);
    expect(asRecorded(short.toReversed(), track, 200)).toEqual(short);
  });

  it('is left alone where it has no course, or the track has none', () => {
    expect(asRecorded(round.slice(0, 1), track, 100)).toEqual(round.slice(0, 1));
    expect(asRecorded([], track, 100)).toEqual([]);
    expect(asRecorded(round.toReversed(), { ...track, length: 0 }, 100)).toEqual(round.toReversed());
  });
});
