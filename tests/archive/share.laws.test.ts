import Ajv from 'ajv/dist/2020.js';
import type { ErrorObject } from 'ajv';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { tripSchema } from '../../src/archive/schema.ts';
import { readTrip, tripToJson } from '../../src/archive/share.ts';
import type { Problem } from '../../src/problem.ts';
import { checkObstacle } from '../../src/terrain/check.ts';
import { checkVehicle } from '../../src/vehicle/vehicle.ts';
import { anyTrip } from './trips.ts';

const SEED = 20250517;
const valid = new Ajv({ allErrors: true, strictTypes: false, strictTuples: false }).compile(tripSchema());

type Path = readonly (string | number)[];

/** Every place in a JSON value, outermost first. */
function placesIn(value: unknown, at: Path = []): Path[] {
  if (typeof value !== 'object' || value === null) return [at];
  return [at, ...Object.entries(value).flatMap(([name, inner]) => placesIn(inner, [...at, name]))];
}

/** A copy in which one place is something else; `undefined` takes it out, `extra` adds a name beside it. */
function damaged(value: unknown, [first, ...rest]: Path, instead: unknown): unknown {
  if (first === undefined) return instead;
  const copy: Record<string, unknown> | unknown[] = Array.isArray(value)
    ? [...(value as unknown[])]
    : { ...(value as object) };
  (copy as Record<string, unknown>)[first] = damaged(
    (value as Record<string, unknown>)[first],
    rest,
    instead,
  );
  return copy;
}

const INSTEAD = [
  undefined,
  null,
  'stray',
  1e300,
  -12345.5,
  0.4,
  true,
  [],
  {},
  { kind: 'constructor' },
  [null],
];

/** A trip as JSON, many times over, each time with one piece of it replaced, and the place of that piece. */
function anyDamages() {
  return anyTrip().chain((trip) => {
    const json: unknown = JSON.parse(tripToJson(trip));
    const damage = fc
      .record({ at: fc.constantFrom(...placesIn(json)), instead: fc.constantFrom(...INSTEAD) })
      .map(({ at, instead }) => ({ at, text: JSON.stringify(damaged(json, at, instead)) ?? '' }));
    return fc.array(damage, { minLength: 20, maxLength: 20 });
  });
}

/** The place that a complaint of the schema is about, written as our problems write it. */
function placeOf({ instancePath, params, propertyName: nameItself }: ErrorObject): string {
  const { missingProperty, additionalProperty, propertyName } = params as Record<string, string | undefined>;
  const last = missingProperty ?? additionalProperty ?? propertyName ?? nameItself;
  const path = instancePath.split('/').slice(1);
  if (last !== undefined) path.push(last);
  return path
    .map((part, i) =>
      /^\d+$/.test(part) ? `[${part}]` : path[i - 1] === 'hows' ? `["${part}"]` : `.${part}`,
    )
    .join('')
    .replace(/^\./, '');
}

/** False for complaints that only sum up others, or that a track is no null. */
function tellsThePlace({ keyword, schemaPath }: ErrorObject): boolean {
  return keyword !== 'if' && keyword !== 'anyOf' && !schemaPath.includes('/anyOf/1/');
}

/** What no schema can say: it sees one value at a time. */
const BEYOND_THE_SCHEMA = [
  /stands here twice/,
  /order of the track|end of the track/,
  /before it starts|right of its right end/,
  /deeper than its own width|beyond the room|beyond the ends/,
  /entries for \d+ points/,
  /first points of the segments/,
  /no such value/,
  /no JPEG, PNG or WebP/,
  /wider than the vehicle|above the tyre pressure|higher than the sills|no centre differential/,
];

/** Whether schema and reader both find no fault; fails where they differ about what both can see. */
function agreed(text: string): boolean {
  const { problems } = readTrip(text);
  if (text !== '' && valid(JSON.parse(text))) {
    const beyond = problems.filter(({ what }) => !BEYOND_THE_SCHEMA.some((one) => one.test(what)));
    expect(beyond).toEqual([]);
    return true;
  }
  expect(problems.length).toBeGreaterThan(0);
  for (const error of text === '' ? [] : valid.errors!.filter(tellsThePlace)) {
    const place = placeOf(error);
    const said = problems.some(({ where }) => where === 'the file' || place.startsWith(where));
    expect(said, `${place}: ${error.message}, but only ${JSON.stringify(problems)}`).toBe(true);
  }
  return false;
}

/** Places of a trip that a verdict is drawn from. */
const JUDGED = /surface|corridor|features|lengthM|\.values/;

/** Whether damage there is to one of them, and not to a list or record that holds several. */
function matters(at: Path): boolean {
  const ground = at.some((name) => ['surface', 'corridor', 'features', 'lengthM'].includes(String(name)));
  return ground || (at[0] === 'vehicles' && at[2] === 'values');
}

describe('a trip without a fault', () => {
  test('comes back from its file as it was, without a word', () => {
    fc.assert(
      fc.property(anyTrip(), (trip) => {
        const { value, problems } = readTrip(tripToJson(trip));
        expect(problems).toEqual([]);
        expect(value).toEqual(trip);
      }),
      { seed: SEED, numRuns: 300 },
    );
  });

  test('fits the published schema', () => {
    fc.assert(
      fc.property(anyTrip(), (trip) => {
        valid(JSON.parse(tripToJson(trip)));
        expect(valid.errors ?? []).toEqual([]);
      }),
      { seed: SEED, numRuns: 300 },
    );
  });
});

describe('a trip with one piece damaged', () => {
  test('is found at fault by the reader wherever the schema finds fault, at that place', () => {
    let refused = 0;
    fc.assert(
      fc.property(anyDamages(), (damages) => {
        for (const { text } of damages) refused += agreed(text) ? 0 : 1;
      }),
      { seed: SEED, numRuns: 150 },
    );
    expect(refused).toBeGreaterThan(1000);
  });

  test('is never judged by ground or a vehicle that lost a piece', () => {
    let lost = 0;
    fc.assert(
      fc.property(anyDamages(), (damages) => {
        for (const { text, at } of damages) {
          const { value, problems } = readTrip(text || 'null');
          if (value === null || !matters(at)) continue;
          const hurt = ({ severity, where }: Problem) => severity === 'error' && JUDGED.test(where);
          if (!problems.some(hurt)) continue;
          lost++;
          const left = [
            ...value.obstacles.flatMap((obstacle) => checkObstacle(obstacle, '')),
            ...value.vehicles.flatMap((vehicle) => checkVehicle(vehicle, '')),
          ];
          expect(left.length, `${at.join('.')}: ${JSON.stringify(problems)}`).toBeGreaterThan(0);
        }
      }),
      { seed: SEED, numRuns: 100 },
    );
    expect(lost).toBeGreaterThan(300);
  });

  test('breaks off anywhere, and is answered with a problem and no value', () => {
    fc.assert(
      fc.property(anyTrip(), fc.double({ min: 0, max: 0.999, noNaN: true }), (trip, share) => {
        const text = tripToJson(trip).trimEnd();
        const { value, problems } = readTrip(text.slice(0, Math.floor(text.length * share)));
        expect(value).toBeNull();
        expect(problems.map(({ severity }) => severity)).toEqual(['error']);
      }),
      { seed: SEED, numRuns: 300 },
    );
  });
});

test('any JSON at all is answered, and every problem says where, what and what to do', () => {
  fc.assert(
    fc.property(fc.jsonValue(), fc.boolean(), (json, dressed) => {
      const trip = dressed ? { format: 'rutline-trip', version: 1, obstacles: [json], track: json } : json;
      const { problems } = readTrip(JSON.stringify(trip));
      expect(problems.length).toBeGreaterThan(0);
      for (const { where, what, done } of problems) expect([where, what, done]).not.toContain('');
    }),
    { seed: SEED, numRuns: 500 },
  );
});
