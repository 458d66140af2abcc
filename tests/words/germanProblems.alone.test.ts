import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test, vi } from 'vitest';
import * as englishTrips from '../../src/archive/share.ts';
import type { Problem } from '../../src/problem.ts';
import * as englishGpx from '../../src/route/gpx.ts';
import * as englishVehicles from '../../src/vehicle/vehicle.ts';
import * as englishStore from '../../src/archive/storeProblem.ts';
import { de } from '../../src/words/de/de.ts';
import { en } from '../../src/words/en/en.ts';

/** The same readers, loaded after German is spoken. */
let germanTrips: typeof englishTrips;
let germanGpx: typeof englishGpx;
let germanVehicles: typeof englishVehicles;
let germanStore: typeof englishStore;

beforeAll(async () => {
  vi.resetModules();
  const { speak } = await import('../../src/words/words.ts');
  speak('de', de);
  germanTrips = await import('../../src/archive/share.ts');
  germanGpx = await import('../../src/route/gpx.ts');
  germanVehicles = await import('../../src/vehicle/vehicle.ts');
  germanStore = await import('../../src/archive/storeProblem.ts');
});

/** Problems of which a sentence is the same in both languages; and how many there are in all. */
function compared(english: readonly Problem[], german: readonly Problem[]) {
  const same = english.flatMap((one, i) => {
    const other = german.at(i);
    if (other === undefined || other.severity !== one.severity || other.times !== one.times)
      return [`${one.what} has no counterpart`];
    return one.what === other.what || one.done === other.done ? [`${other.what} ${other.done}`] : [];
  });
  return { same: german.length > english.length ? [...same, 'more in German'] : same, many: german.length };
}

const filed = JSON.parse(readFileSync('tests/archive/in/version-1.json', 'utf8')) as object;

/** Paths to everything in a record, to the first two entries of a list only. */
function pathsIn(value: unknown, path: readonly string[] = []): (readonly string[])[] {
  if (typeof value !== 'object' || value === null) return [path];
  const inside = Object.entries(value).slice(0, Array.isArray(value) ? 2 : undefined);
  return [path, ...inside.flatMap(([key, one]) => pathsIn(one, [...path, key]))];
}

/** The trip with something else at a path; without it where that is undefined. */
function damaged(value: unknown, path: readonly string[], put: unknown): unknown {
  if (path.length === 0) return put;
  const [key, ...rest] = path;
  const copy = (Array.isArray(value) ? [...(value as unknown[])] : { ...(value as object) }) as Record<
    string,
    unknown
  >;
  copy[key] = damaged(copy[key], rest, put);
  return copy;
}

describe('what is wrong with a trip is said in German', () => {
  test.each([
    ['nothing', undefined],
    ['another number', -1e9],
    ['a text', 'x'],
    ['a list', [1, { kind: 'x' }]],
    ['a record', { unheard: 1 }],
  ])('with %s at any place', (_, put) => {
    let many = 0;
    const faults = pathsIn(filed).flatMap((path) => {
      const text = JSON.stringify(damaged(filed, path, put)) ?? '';
      const both = compared(englishTrips.readTrip(text).problems, germanTrips.readTrip(text).problems);
      many += both.many;
      return both.same.map((fault) => `${path.join('.')}: ${fault}`);
    });
    expect(faults).toEqual([]);
    expect(many).toBeGreaterThan(100);
  });

  test.each(['', '{', '[]', '{"format":"rutline-trip"}', '{"format":"rutline-trip","version":99}'])(
    'in %j',
    (text) => {
      const both = compared(englishTrips.readTrip(text).problems, germanTrips.readTrip(text).problems);
      expect(both).toEqual({ same: [], many: 1 });
    },
  );
});

const POINT = '<trkpt lat="1" lon="2"><ele>3</ele><time>2026-01-01T00:00:00Z</time></trkpt>';

function gpx(inside: string, head = 'version="1.1" creator="x"'): string {
  return `<?xml version="1.0"?>\n<gpx ${head}>${inside}</gpx>`;
}

const RECORDINGS = [
  '',
  'PK\u0003\u0004',
  'BZh9',
  'no markup',
  '<html><body/></html>',
  '<kml/>',
  '<!DOCTYPE gpx [<!ENTITY a "b">]><gpx/>',
  gpx(''),
  gpx('<wpt lat="1" lon="2"/>'),
  gpx(`<trk><trkseg>${POINT}</trkseg></trk>`, ''),
  gpx(`<trk><trkseg>${POINT}</trkseg></trk>`, 'version="2" creator="x"'),
  gpx(`<trk><name>a & b &huh;</name><trkseg>${POINT}${POINT}<trkpt lon="1"/></trkseg></trk>`),
  gpx('<trk><trkseg><trkpt lat="91" lon="1"/><trkpt lat="1" lon="180"/></trkseg></trk><trk/>'),
  gpx('<trk><trkseg><trkpt lat="1" lon="1"><ele>x</ele><time>then</time></trkpt></trkseg></trk>'),
  gpx(
    '<trk><trkseg><trkpt lat="1" lon="1"><ele>-9999</ele><ele>1</ele><time>2026-01-01T00:00:00</time></trkpt></trkseg></trk>',
  ),
  `${gpx(`<trk><trkseg>${POINT}</trkseg></trk>`)}<gpx></gpx> after`,
  `before <?xml version="1.0"?>${gpx(`<trk><trkseg>${POINT}</trk></trkseg>`)}`,
  gpx(`<trk><trkseg>${POINT}`).slice(0, -6),
  gpx(`<trk><trkseg>${POINT}\u0000</trkseg></trk>`),
  '<?xml version="1.0" encoding="huh"?><gpx version="1.1" creator="x"/>',
];

describe('what is wrong with a recording is said in German', () => {
  test.each(RECORDINGS)('%j', async (text) => {
    const bytes = new TextEncoder().encode(text);
    const [english, german] = [await englishGpx.readGpx(bytes), await germanGpx.readGpx(bytes)];
    const both = compared(english.problems, german.problems);
    expect(both.same).toEqual([]);
    expect(both.many).toBeGreaterThan(0);
    for (const { where } of german.problems) expect(where).not.toMatch(/\bline\b|the file/);
  });
});

test('a vehicle that cannot be is told so in German', async () => {
  const { classValues } = await import('../../src/vehicle/classes.ts');
  const values = {
    ...classValues('dual-cab utility'),
    centre: 'open' as const,
    lowPressurePa: 400e3,
    widthM: 1.2,
    bellyHeightM: 0.79,
    massKg: 1,
  };
  const vehicle = {
    id: '',
    name: '',
    driver: '',
    vehicleClass: 'dual-cab utility',
    values,
    estimated: [],
  } as const;
  const both = compared(
    englishVehicles.checkVehicle(vehicle, 'v'),
    germanVehicles.checkVehicle(vehicle, 'v'),
  );
  expect(both).toEqual({ same: [], many: 5 });
});

test('every trouble of the store is told in German', () => {
  for (const trouble of Object.keys(en.store) as englishStore.Trouble[]) {
    const [english, german] = [englishStore, germanStore].map((store) => store.storeProblem(trouble, '…'));
    expect(compared([english], [german]).same).toEqual([]);
    expect(german.where).toBe('dieses Gerät');
  }
});
