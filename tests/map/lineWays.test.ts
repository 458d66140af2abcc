import { describe, expect, it } from 'vitest';
import type { LineWay } from '../../src/map/lineWays.ts';
import { lineWays, spreadAt } from '../../src/map/lineWays.ts';
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
  model: null,
};

function obstacleWith(stationM: number, ...lines: Line[]): Obstacle {
  return { id: 'o', name: 'Step', stationM, stretch: { lengthM: 40 }, lines } as unknown as Obstacle;
}

const MAIN: Line = { id: 'm', kind: 'main', name: 'main', offsetM: 0 };
const LEFT: Line = { id: 'l', kind: 'offset', name: 'left', offsetM: 0.6 };
const RIGHT: Line = { id: 'r', kind: 'offset', name: 'right', offsetM: -0.4 };

/** The paths of the lines of a kind, as pairs of degrees. */
function pathsOf(ways: readonly LineWay[], kind: Line['kind']): number[][][] {
  return ways
    .filter(({ line }) => line.kind === kind)
    .flatMap(({ paths }) => paths.map(({ lng, lat }) => Array.from(lng, (x, i) => [x, lat[i]])));
}

describe('lines on the map', () => {
  const obstacle = obstacleWith(100, MAIN, LEFT, RIGHT);

  it('run over the stretch of the track, offset lines at their metres to the left and right of travel', () => {
    const ways = lineWays(TRACK, obstacle, 1);
    const [main] = pathsOf(ways, 'main');
    expect((main[0][0] - 100) * METRES.east).toBeCloseTo(80, 3);
    expect((main.at(-1)![0] - 100) * METRES.east).toBeCloseTo(120, 3);
    const offsets = pathsOf(ways, 'offset').map((path) => (path[1][1] - LAT) * METRES.north);
    expect(offsets[0]).toBeCloseTo(0.6, 3);
    expect(offsets[1]).toBeCloseTo(-0.4, 3);
  });

  it('are drawn farther off by the stated factor', () => {
    expect((pathsOf(lineWays(TRACK, obstacle, 20), 'offset')[0][1][1] - LAT) * METRES.north).toBeCloseTo(
      12,
      2,
    );
  });

  it('leave out the ground that was not recorded, and a stretch of unknown length', () => {
    expect(pathsOf(lineWays(TRACK, obstacleWith(300, MAIN), 1), 'main')).toHaveLength(2);
    const unknown = { ...obstacle, stretch: { ...obstacle.stretch, lengthM: NaN } };
    expect(lineWays(TRACK, unknown, 1).flatMap(({ paths }) => paths)).toEqual([]);
  });

  it('are bypasses alone where there is no track', () => {
    const path = [
      [100, LAT],
      [100.001, LAT],
    ];
    const bypass = { id: 'b', kind: 'bypass', name: 'b', path } as unknown as Line;
    const ways = lineWays(null, obstacleWith(0, MAIN, LEFT, bypass), 1);
    expect(ways.map(({ paths }) => paths.length)).toEqual([0, 0, 1]);
  });

  it('follow the path of a bypass, and none where it was not drawn', () => {
    const path = [
      [100, LAT],
      [100.001, LAT + 0.001],
    ] as const;
    const bypass = (drawn: readonly (readonly [number, number])[]) =>
      ({ id: 'b', kind: 'bypass', name: 'Old track', path: drawn }) as unknown as Line;
    expect(pathsOf(lineWays(TRACK, obstacleWith(100, MAIN, bypass(path)), 1), 'bypass')).toEqual([path]);
    for (const drawn of [[], path.slice(0, 1)])
      expect(pathsOf(lineWays(TRACK, obstacleWith(100, MAIN, bypass(drawn)), 1), 'bypass')).toEqual([]);
  });
});

describe('how far offset lines are spread', () => {
  it('is to scale close in', () => {
    for (const metresPerPx of [0.02, 0.03, 0.04]) expect(spreadAt(metresPerPx)).toBe(1);
  });

  it('grows farther away, so that they stay as many pixels from the main line', () => {
    for (const metresPerPx of [0.041, 0.3, 2])
      expect((0.5 * spreadAt(metresPerPx)) / metresPerPx).toBeCloseTo(0.5 / 0.04, 9);
  });
});
