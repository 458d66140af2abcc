import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { TRIP_LIMITS } from '../../src/archive/limits.ts';
import { readTrip } from '../../src/archive/share.ts';
import { nearestOn } from '../../src/route/station.ts';
import type { Track } from '../../src/route/track.ts';
import { bypassOf, pathOfRecording, withPath } from '../../src/ui/pathEdit.ts';

const trip = readTrip(readFileSync('public/demo/outing.json', 'utf8')).value!;
const ditch = trip.obstacles.find(({ lines }) => lines.some(({ kind }) => kind === 'bypass'))!;
const bypass = ditch.lines.find(({ kind }) => kind === 'bypass')!;

function recording(length: number, gaps: number, lngOff = 0): Track {
  const at = (i: number) => i / length;
  return {
    name: 'round the back',
    description: '',
    kind: 'track',
    length,
    lng: Float64Array.from({ length }, (_, i) => ditch.lng + lngOff + 0.001 * at(i)),
    lat: Float64Array.from({ length }, (_, i) => ditch.lat + 0.0002 * Math.sin(40 * at(i))),
    elevationM: new Float64Array(length),
    timeS: new Float64Array(length),
    distanceM: Float64Array.from({ length }, (_, i) => i),
    segmentStart: Uint32Array.from({ length: gaps + 1 }, (_, i) => 2 * i),
    model: null,
  };
}

describe('the path of a bypass', () => {
  it('is replaced in the trip and nowhere else, in the recorded direction whichever way it was drawn', () => {
    const before = bypassOf(trip, ditch.id, bypass.id)!;
    expect(before.path.length).toBeGreaterThan(1);
    const drawn = withPath(trip, ditch.id, bypass.id, before.path.slice(1));
    const backward = withPath(trip, ditch.id, bypass.id, before.path.slice(1).toReversed());
    expect(backward).toEqual(drawn);
    const { path, ...rest } = bypassOf(drawn, ditch.id, bypass.id)!;
    expect({ ...rest, path: before.path }).toEqual(before);
    expect(path.toSorted()).toEqual(before.path.slice(1).toSorted());
    const [from, to] = [path[0], path.at(-1)!].map((at) => nearestOn(trip.track!, ...at).stationM);
    expect(from).toBeLessThan(to);
    expect(bypassOf(trip, ditch.id, bypass.id)).toEqual(before);
    const others = (all: typeof trip) => all.obstacles.filter(({ id }) => id !== ditch.id);
    expect(others(drawn)).toEqual(others(trip));
  });

  it('is none of a line that is no bypass', () => {
    expect(bypassOf(trip, ditch.id, ditch.lines[0].id)).toBeUndefined();
    expect(withPath(trip, ditch.id, ditch.lines[0].id, [[0, 0]])).toEqual(trip);
  });
});

describe('a recording taken for it', () => {
  it('gives its points, and nothing to look at twice', () => {
    const { value, problems } = pathOfRecording(recording(50, 0), ditch, 'metric');
    expect(value).toHaveLength(50);
    expect(problems).toEqual([]);
  });

  it('of too many points is thinned to what a trip may hold, and says so', () => {
    const { value, problems } = pathOfRecording(recording(TRIP_LIMITS.path + 5_000, 0), ditch, 'metric');
    expect(value!.length).toBeLessThanOrEqual(TRIP_LIMITS.path);
    expect(problems.map(({ what }) => what)).toEqual(['It has 15,000 points, more than a path may have.']);
  });

  it('with gaps, or far from the obstacle, says so in the units of the look', () => {
    const found = (gaps: number, off: number) =>
      pathOfRecording(recording(50, gaps, off), ditch, 'imperial').problems.map(({ what }) => what);
    expect(found(1, 0)).toEqual(['The recording has a gap.']);
    expect(found(3, 0)).toEqual(['The recording has 3 gaps.']);
    expect(found(0, 1)[0]).toMatch(/^It comes no nearer to .+ than \d+\.\d\d mi\.$/);
  });
});
