import { describe, expect, it } from 'vitest';
import { gradedAnew } from '../../src/archive/filing.ts';
import { belongs, boxAround, boxOfAll, likenessOf } from '../../src/archive/likeness.ts';
import type { Trip } from '../../src/archive/trip.ts';
import { sliceOf } from '../../src/route/station.ts';
import { DEMO } from './outTrips.ts';

const filing = { by: '', atMs: 0, newId: () => 'v' };

/** The same way, every place moved north by some metres. */
function beside(trip: Trip, byM: number): Trip {
  const track = trip.track!;
  return { ...trip, name: 'Another', track: { ...track, lat: track.lat.map((lat) => lat + byM / 111_000) } };
}

describe('a trip is like a graded track', () => {
  const graded = gradedAnew(DEMO, 'g', filing);

  it('whose way it runs along, as far apart as two receivers are', () => {
    expect(likenessOf(beside(DEMO, 8), graded)).toEqual({ alongShare: 1, likeName: false });
    expect(belongs(likenessOf(beside(DEMO, 8), graded))).toBe(true);
  });

  it('and not one elsewhere, unless a word of its name says so', () => {
    const far = beside(DEMO, 3000);
    expect(likenessOf(far, graded).alongShare).toBeLessThan(0.1);
    expect(belongs(likenessOf(far, graded))).toBe(false);
    expect(belongs(likenessOf({ ...far, name: 'EMBER in autumn' }, graded))).toBe(true);
    expect(belongs(likenessOf({ ...far, name: 'A way' }, graded))).toBe(false);
  });

  it('by the part of it that runs along', () => {
    const track = DEMO.track!;
    const half = sliceOf(track, 0, track.distanceM[track.length - 1] / 2)[0];
    const short = {
      ...graded,
      track: { ...track, ...half, length: half.lng.length, segmentStart: Uint32Array.of(0) },
    };
    const { alongShare } = likenessOf(DEMO, short);
    expect(alongShare).toBeGreaterThan(0.2);
    expect(alongShare).toBeLessThan(0.8);
  });
});

it('a trip is looked for around where it lies, by its pins where it has no track', () => {
  const { lng, lat } = DEMO.obstacles[0];
  const [west, south, east, north] = boxAround({ ...DEMO, track: null })!;
  expect(west < lng && lng < east && south < lat && lat < north).toBe(true);
  expect(boxAround({ ...DEMO, track: null, obstacles: [] })).toBeNull();
});

it('the box of all is around each, and passes over what lies nowhere', () => {
  expect(boxOfAll([{ box: null }, { box: [1, 2, 3, 4] }, { box: [0, 3, 2, 9] }])).toEqual([0, 2, 3, 9]);
  expect(boxOfAll([])).toBeNull();
});
