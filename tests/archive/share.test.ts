import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { readTrip, tripToJson } from '../../src/archive/share.ts';
import { TRIP_VERSION } from '../../src/archive/upgrade.ts';
import { problemText } from '../../src/problem.ts';

type Json = Record<string, unknown>;

const WHOLE = readFileSync(new URL('in/version-1.json', import.meta.url), 'utf8');

/** The whole trip with something done to it, read. */
function readWith(change: (trip: Json, obstacle: Json, stretch: Json) => void) {
  const trip = JSON.parse(WHOLE) as Json;
  const obstacle = (trip.obstacles as Json[])[0];
  change(trip, obstacle, obstacle.stretch as Json);
  return readTrip(JSON.stringify(trip));
}

function lines({ problems }: ReturnType<typeof readTrip>): string[] {
  return problems.map(problemText);
}

describe('a trip file is refused', () => {
  test('when a newer Rutline wrote it, and nothing is read', () => {
    const read = readWith((trip) => (trip.version = TRIP_VERSION + 1));
    expect(read.value).toBeNull();
    expect(lines(read)[0]).toContain('newer Rutline');
    expect(lines(read)[0]).toContain('Update Rutline');
  });

  test.each([
    ['{}'],
    ['[]'],
    ['null'],
    ['"text"'],
    ['{"format":"rutline-trip"}'],
    ['{"format":"rutline-trip","version":0}'],
  ])('when it is %s', (text) => {
    const read = readTrip(text);
    expect(read.value).toBeNull();
    expect(read.problems).toHaveLength(1);
  });

  test('when it is not JSON', () => {
    expect(lines(readTrip('<gpx/>'))[0]).toContain('not whole JSON');
  });
});

describe('a trip file keeps', () => {
  test('a size out of range, and says which and where', () => {
    const read = readWith((_, __, stretch) => ((stretch.features as Json[])[4].heightM = 25));
    expect(lines(read)).toEqual([
      'error: obstacles[0].stretch.features[4].heightM: Height is 2500 cm; it must lie between 5 cm and 300 cm. Correct it: Crest above the straight line from foot to foot.',
    ]);
    expect(read.value?.obstacles[0].stretch.features[4]).toMatchObject({ heightM: 25 });
  });

  test('an unknown size as not known, through being written again', () => {
    const read = readWith((_, __, stretch) => ((stretch.features as Json[])[1].depthM = null));
    expect(read.value?.obstacles[0].stretch.features[1]).toMatchObject({ depthM: NaN });
    expect(lines(readTrip(tripToJson(read.value!)))).toEqual(lines(read));
  });

  test('how values were got, with the value they belong to, when a shape before it is lost', () => {
    const read = readWith((_, __, stretch) => {
      (stretch.features as Json[])[0].kind = 'crater';
      stretch.hows = {
        'features.0.depthM': 'taped',
        'features.2.riseM': 'scanned',
        'plane.slopeRad': 'taped',
      };
    });
    const stretch = read.value!.obstacles[0].stretch;
    expect(stretch.features[1]).toMatchObject({ kind: 'ledge' });
    expect(stretch.hows).toEqual({ 'features.1.riseM': 'scanned', 'plane.slopeRad': 'taped' });
    expect(stretch.lengthM).toBeNaN();
    expect(lines(read).join('\n')).toContain('its length (14 m) was set to not known');
  });

  test('two of a name apart', () => {
    const read = readWith((trip) => (trip.vehicles as Json[]).push((trip.vehicles as Json[])[0]));
    expect(read.value?.vehicles.map(({ id }) => id)).toEqual(['v1', 'v1-2']);
    expect(lines(read)).toEqual(['error: vehicles[1].id: "v1" stands here twice. Renamed "v1-2".']);
  });

  test('obstacles in the order of the track', () => {
    const read = readWith((trip, obstacle) => {
      trip.obstacles = [
        { ...obstacle, id: 'far' },
        { ...obstacle, id: 'near', stationM: 10 },
      ];
    });
    expect(read.value?.obstacles.map(({ id }) => id)).toEqual(['near', 'far']);
    expect(read.problems).toHaveLength(1);
  });

  test('an obstacle whose position is lost where its station is, and the other way round', () => {
    const unplaced = readWith((_, obstacle) => (obstacle.lat = 'north')).value!.obstacles[0];
    expect(unplaced.lng).toBeCloseTo(0.501, 4);
    expect(unplaced.lat).toBeCloseTo(45.0005, 4);
    expect(unplaced.stationM).toBe(96);
    const astray = readWith((_, obstacle) => delete obstacle.stationM).value!;
    expect(astray.obstacles[0].stationM).toBeCloseTo(astray.track!.distanceM[1], 6);
  });

  test('a main line, made where there is none, and in front where there is', () => {
    const none = readWith((_, obstacle) => (obstacle.lines = []));
    expect(none.value?.obstacles[0].lines).toEqual([
      { id: 'main', kind: 'main', name: 'main line', offsetM: 0 },
    ]);
    const behind = readWith((_, obstacle) => (obstacle.lines as Json[]).reverse());
    expect(behind.value?.obstacles[0].lines.map(({ kind }) => kind)).toEqual(['main', 'bypass', 'offset']);
    expect(none.problems.length * behind.problems.length).toBe(1);
  });

  test('gaps of the track as gaps, when points before them are lost', () => {
    const read = readWith((trip) => ((trip.track as { lng: unknown[] }).lng[1] = 400));
    expect(read.value?.track?.length).toBe(4);
    expect([...read.value!.track!.segmentStart]).toEqual([0, 2]);
    expect(lines(read)).toEqual([
      'error: track.lng[1]: A point has no usable position. The point was left out.',
    ]);
  });
});

describe('a trip file is bounded', () => {
  test('in its lists', () => {
    const read = readWith((_, __, stretch) => {
      stretch.features = Array.from({ length: 201 }, () => (stretch.features as Json[])[0]);
    });
    expect(read.value?.obstacles[0].stretch.features).toHaveLength(200);
    expect(read.value?.obstacles[0].stretch.lengthM).toBeNaN();
  });

  test('in its texts', () => {
    const read = readWith((trip) => (trip.note = 'x'.repeat(100_001)));
    expect(read.value?.note).toHaveLength(100_000);
  });

  test('in its problems', () => {
    const read = readWith((trip) => (trip.waypoints = Array.from({ length: 1000 }, () => 1)));
    expect(read.problems).toHaveLength(501);
    expect(lines(read)[500]).toContain('500 more');
  });

  test('in what a name may mean', () => {
    const read = readTrip(
      WHOLE.replace('"plane.slopeRad": "taped"', '"__proto__": "taped", "constructor": "taped"'),
    );
    expect(Object.keys(read.value!.obstacles[0].stretch.hows)).toEqual(['lengthM', 'features.0.depthM']);
    expect(read.problems).toHaveLength(2);
  });
});

test('a byte order mark is no fault', () => {
  expect(readTrip(`\uFEFF${WHOLE}`).problems).toEqual([]);
});

describe('the radio channel', () => {
  test('is kept as written', () => {
    const { value } = readWith((trip) => (trip.radioChannel = 'UHF 18, then 24'));
    const again = readTrip(tripToJson(value!));
    expect(again.value!.radioChannel).toBe('UHF 18, then 24');
    expect(again.problems).toEqual([]);
  });

  test('may be left out, and is then empty', () => {
    const read = readWith((trip) => delete trip.radioChannel);
    expect(read.value!.radioChannel).toBe('');
    expect(read.problems).toEqual([]);
  });

  test('is cut at 60 characters, and that is said', () => {
    const read = readWith((trip) => (trip.radioChannel = 'x'.repeat(61)));
    expect(read.value!.radioChannel).toBe('x'.repeat(60));
    expect(lines(read)[0]).toContain('radioChannel');
  });
});
