import fc from 'fast-check';
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { Carried } from '../../src/archive/carried.ts';
import { CARRIED, LEAST, carrying, holds } from '../../src/archive/carried.ts';
import { OUT_FORMATS, outText } from '../../src/archive/out/formats.ts';
import { readTrip, tripToJson } from '../../src/archive/share.ts';
import type { Trip } from '../../src/archive/trip.ts';
import { anyTrip } from './trips.ts';

const ALL: Carried = { drivers: true, notes: true, times: true, photos: true };

const whole = readTrip(readFileSync('tests/archive/in/version-2.json', 'utf8')).value!;

/** A word of its own in each place where something of a person stands. */
const TOLD = {
  drivers: ['Wren-drives'],
  notes: ['trip-note', 'radio-spoken', 'obstacle-note', 'track-said', 'waypoint-said'],
  times: ['2033-05-18'],
  photos: ['under-the-photo'],
} as const;

const trip: Trip = {
  ...whole,
  note: 'trip-note',
  radioChannel: 'radio-spoken',
  track: {
    ...whole.track!,
    description: 'track-said',
    timeS: new Float64Array(whole.track!.length).fill(2_000_000_000),
  },
  waypoints: [{ name: 'gate', description: 'waypoint-said', lng: 12, lat: 44, elevationM: NaN }],
  obstacles: whole.obstacles.map((obstacle) => ({
    ...obstacle,
    note: 'obstacle-note',
    photos: obstacle.photos.map((photo) => ({ ...photo, caption: 'under-the-photo' })),
  })),
  vehicles: whole.vehicles.map((vehicle) => ({ ...vehicle, driver: 'Wren-drives' })),
};

/** All that leaves, in every format, as one text; times as they stand in each. */
function leaving(what: Carried): string {
  const given = carrying(trip, what);
  const json = tripToJson(given).replaceAll('2000000000', '2033-05-18');
  return [json, ...OUT_FORMATS.map((format) => outText(given, format, 'metric'))].join('\n');
}

describe('what leaves the program', () => {
  test('tells nothing of people unless someone said so', () => {
    const text = leaving(LEAST);
    for (const word of Object.values(TOLD).flat()) expect(text).not.toContain(word);
  });

  test.each(CARRIED)('tells the %s when asked, and only those', (one) => {
    const text = leaving({ ...LEAST, [one]: true });
    for (const other of CARRIED)
      for (const word of TOLD[other])
        if (other === one) expect(text).toContain(word);
        else expect(text).not.toContain(word);
  });

  test('is the trip itself with all of it', () => {
    expect(tripToJson(carrying(trip, ALL))).toBe(tripToJson(trip));
  });

  test('reads again without a fault, and judges as before', () => {
    fc.assert(
      fc.property(anyTrip(), (any) => {
        const { value, problems } = readTrip(tripToJson(carrying(any, LEAST)));
        expect(problems).toEqual([]);
        const bare = (one: Trip) => one.obstacles.map(({ stretch, lines, stationM }) => ({ stretch, lines, stationM })); // prettier-ignore
        expect(bare(value!)).toEqual(bare(any));
        expect(value!.vehicles.map(({ values }) => values)).toEqual(any.vehicles.map(({ values }) => values));
        expect(holds(value!)).toEqual(LEAST);
      }),
      { seed: 31, numRuns: 60 },
    );
  });
});

test('only what is there is offered', () => {
  expect(holds(trip)).toEqual(ALL);
  expect(holds(carrying(trip, LEAST))).toEqual(LEAST);
});
