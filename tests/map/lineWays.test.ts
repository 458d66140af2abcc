import type { Feature, LineString, Point } from 'geojson';
import { describe, expect, it } from 'vitest';
import { lineWays, spreadOf } from '../../src/map/lineWays.ts';
import { metresPerDegree } from '../../src/route/ellipsoid.ts';
import type { Track } from '../../src/route/track.ts';
import type { Line, Obstacle } from '../../src/terrain/obstacle.ts';

const LAT = -30;
const METRES = metresPerDegree(LAT);

/** A straight track due east, a point every 10 m, with a gap after 300 m. */
const TRACK: Track = {
  name: '',
  description: '',
  kind: 'track',
  length: 61,
  lng: Float64Array.from({ length: 61 }, (_, i) => 100 + (i * 10) / METRES.east),
  lat: new Float64Array(61).fill(LAT),
  elevationM: new Float64Array(61),
  timeS: new Float64Array(61),
  distanceM: Float64Array.from({ length: 61 }, (_, i) => i * 10),
  segmentStart: Uint32Array.of(0, 31),
};

function obstacleWith(stationM: number, ...lines: Line[]): Obstacle {
  return { id: 'o', name: 'Step', stationM, stretch: { lengthM: 40 }, lines } as unknown as Obstacle;
}

const MAIN: Line = { id: 'm', kind: 'main', name: 'main', offsetM: 0 };
const LEFT: Line = { id: 'l', kind: 'offset', name: 'left', offsetM: 0.6 };
const RIGHT: Line = { id: 'r', kind: 'offset', name: 'right', offsetM: -0.4 };

function linesOf(shapes: Feature<LineString | Point>[], kind: string): number[][][] {
  return shapes.filter((s) => s.properties!.kind === kind).map((s) => s.geometry.coordinates as number[][]);
}

describe('lines on the map', () => {
  const obstacle = obstacleWith(100, MAIN, LEFT, RIGHT);

  it('run over the stretch of the track, offset lines at their metres to the left and right of travel', () => {
    const shapes = lineWays(TRACK, obstacle, 1, new Map(), 'metric');
    const [main] = linesOf(shapes, 'main');
    expect((main[0][0] - 100) * METRES.east).toBeCloseTo(80, 3);
    expect((main.at(-1)![0] - 100) * METRES.east).toBeCloseTo(120, 3);
    const offsets = linesOf(shapes, 'offset').map((line) => (line[1][1] - LAT) * METRES.north);
    expect(offsets[0]).toBeCloseTo(0.6, 3);
    expect(offsets[1]).toBeCloseTo(-0.4, 3);
  });

  it('are drawn farther off by the stated factor', () => {
    const shapes = lineWays(TRACK, obstacle, 20, new Map(), 'metric');
    expect((linesOf(shapes, 'offset')[0][1][1] - LAT) * METRES.north).toBeCloseTo(12, 2);
  });

  it('carry their offset and note in words that stand upright', () => {
    const shapes = lineWays(TRACK, obstacle, 1, new Map([['l', '1.45–1.60 m']]), 'metric');
    const words = shapes.filter((s) => 'words' in s.properties!).map((s) => s.properties);
    expect(words).toMatchObject([
      { words: '0.60 m left · 1.45–1.60 m', anchor: 'bottom' },
      { words: '0.40 m right', anchor: 'top' },
    ]);
    for (const { turnDeg } of words as { turnDeg: number }[])
      expect(Math.abs(turnDeg)).toBeLessThanOrEqual(90);
  });

  it('leave out the ground that was not recorded', () => {
    const shapes = lineWays(TRACK, obstacleWith(300, MAIN), 1, new Map(), 'metric');
    expect(linesOf(shapes, 'main')).toHaveLength(2);
  });

  it('follow the path of a bypass, and none where it was not drawn', () => {
    const path = [
      [100, LAT],
      [100.001, LAT + 0.001],
    ] as const;
    const bypass = (drawn: readonly (readonly [number, number])[]) =>
      ({ id: 'b', kind: 'bypass', name: 'Old track', path: drawn }) as unknown as Line;
    const shapes = lineWays(TRACK, obstacleWith(100, MAIN, bypass(path)), 1, new Map(), 'metric');
    expect(linesOf(shapes, 'bypass')).toEqual([path]);
    expect(
      linesOf(lineWays(TRACK, obstacleWith(100, MAIN, bypass([])), 1, new Map(), 'metric'), 'bypass'),
    ).toEqual([]);
  });
});

describe('how far offset lines are spread', () => {
  it('is 1 close in and keeps the nearest two lines apart farther away', () => {
    const obstacle = obstacleWith(100, MAIN, LEFT, RIGHT);
    expect(spreadOf(obstacle, 0.02)).toBe(1);
    expect(spreadOf(obstacle, 1)).toBeCloseTo(11 / 0.4, 6);
    expect(spreadOf(obstacleWith(100, MAIN), 1)).toBe(1);
  });
});
