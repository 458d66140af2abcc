import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { readTrip, tripToJson } from '../../src/archive/share.ts';

const WHOLE = readFileSync(new URL('in/version-2.json', import.meta.url), 'utf8');

type Json = Record<string, unknown>;

function whole(): Json & { obstacles: Json[]; vehicles: Json[]; track: Json } {
  return JSON.parse(WHOLE) as ReturnType<typeof whole>;
}

/** The text of the whole trip with one value written as it stands here, which JSON.stringify would not do. */
function withRaw(path: string, raw: string): string {
  const trip = whole();
  const names = path.split('.');
  const last = names.pop()!;
  const at = names.reduce<Json>((value, name) => value[name] as Json, trip);
  at[last] = '\u0001here';
  return JSON.stringify(trip).replace('"\\u0001here"', raw);
}

const nested = (open: string, close: string, depth: number) => open.repeat(depth) + close.repeat(depth);

/** Places of a trip in which anything may stand. */
const PLACES = [
  'id',
  'name',
  'track',
  'waypoints',
  'obstacles',
  'obstacles.0',
  'obstacles.0.id',
  'obstacles.0.stationM',
  'obstacles.0.stretch',
  'obstacles.0.stretch.features',
  'obstacles.0.stretch.features.0',
  'obstacles.0.stretch.hows',
  'obstacles.0.lines',
  'obstacles.0.photos',
  'vehicles',
  'vehicles.0.values',
  'vehicles.0.values.massKg',
  'vehicles.0.estimated',
];

const BOMBS: Readonly<Record<string, string>> = {
  'lists in lists': nested('[', ']', 20_000),
  'records in records': nested('{"a":', '', 5_000).concat('1', '}'.repeat(5_000)),
  'a number beyond all numbers': '1e999',
  'a number below all numbers': '-1e999',
  'no number at all': '-0.0000000000000000000000000000000000000000000000000001e-999',
  'names of the language':
    '{"__proto__":{"polluted":1},"constructor":{"prototype":{"polluted":1}},"toString":1}',
  'a list of two hundred thousand': `[${'0,'.repeat(199_999)}0]`,
  'a list of records of nothing': `[${'{},'.repeat(4_999)}{}]`,
  'a text of two hundred thousand': JSON.stringify('x'.repeat(200_000)),
};

describe.each(Object.entries(BOMBS))('%s', (_, raw) => {
  test.each(PLACES)('in place of %s comes to an end, as a value or a problem', (place) => {
    const { value, problems } = readTrip(withRaw(place, raw));
    if (value === null) expect(problems.length).toBeGreaterThan(0);
    else {
      expect(problems.length).toBeLessThanOrEqual(501);
      const again = readTrip(tripToJson(value)).value;
      expect(JSON.parse(tripToJson(again!))).toEqual(JSON.parse(tripToJson(value)));
    }
    expect(({} as Json).polluted).toBeUndefined();
  });
});

test('a number beyond all numbers is not known, and is told', () => {
  const { value, problems } = readTrip(withRaw('vehicles.0.values.massKg', '1e999'));
  expect(value!.vehicles[0].values.massKg).toBeNaN();
  expect(problems.some(({ where }) => where.includes('massKg'))).toBe(true);
});

test('a file that is nothing but depth is refused', () => {
  for (const text of [nested('[', ']', 200_000), nested('{"a":', '', 200_000)]) {
    const { value, problems } = readTrip(text);
    expect(value).toBeNull();
    expect(problems).toHaveLength(1);
  }
});

test('ids that stand twice, whatever they are called, are told apart', () => {
  const trip = whole();
  const [obstacle] = trip.obstacles;
  for (const id of ['same', '__proto__', 'constructor', 'hasOwnProperty']) {
    const { value } = readTrip(
      JSON.stringify({ ...trip, obstacles: Array.from({ length: 50 }, () => ({ ...obstacle, id })) }),
    );
    const ids = value!.obstacles.map((one) => one.id);
    expect(new Set(ids).size).toBe(50);
    expect(ids[0]).toBe(id);
  }
});

test('a photo that claims more pixels than a device can draw is left out with a sentence', () => {
  const png = Buffer.alloc(60);
  Buffer.from('89504e470d0a1a0a0000000d49484452', 'hex').copy(png);
  png.writeUInt32BE(60_000, 16);
  png.writeUInt32BE(60_000, 20);
  const trip = whole();
  (trip.obstacles[0].photos as Json[])[0].image = png.toString('base64');
  const { value, problems } = readTrip(JSON.stringify(trip));
  expect(value!.obstacles[0].photos).toEqual([]);
  expect(problems[0].what).toBe('The image claims 60000 × 60000 pixels; 16000000 in all are read.');
});
