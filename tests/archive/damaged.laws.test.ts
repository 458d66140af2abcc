import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readTrip } from '../../src/archive/share.ts';
import { matrixOf } from '../../src/convoy/matrix.ts';
import { placesOn } from '../../src/convoy/places.ts';

type Json = Record<string, unknown>;

/** One short obstacle of the demonstration with its main line, and one vehicle. */
const whole = JSON.parse(readFileSync('public/demo/outing.json', 'utf8')) as Record<string, Json[]>;
const [obstacle] = whole.obstacles.filter(({ name }) => name === 'Hobnail ruts');
obstacle.lines = [(obstacle.lines as Json[])[0]];
const trip = { ...whole, obstacles: [obstacle], vehicles: whole.vehicles.slice(0, 1) };

/** Places of numbers, choices and flags inside `value`, as paths. */
function leavesOf(value: unknown, at: readonly string[] = []): (readonly string[])[] {
  if (typeof value !== 'object' || value === null) return [at];
  return Object.entries(value).flatMap(([name, inner]) => leavesOf(inner, [...at, name]));
}

function put(value: unknown, [first, ...rest]: readonly string[], instead: unknown): unknown {
  if (first === undefined) return instead;
  const copy = (Array.isArray(value) ? [...(value as unknown[])] : { ...(value as Json) }) as Json;
  copy[first] = put((value as Json)[first], rest, instead);
  return copy;
}

const places = leavesOf(trip).filter(
  ([list, , part, ...rest]) =>
    (list === 'vehicles' && part === 'values') ||
    (list === 'obstacles' && part === 'stretch' && rest[0] !== 'hows'),
);

test('what is wrong with the ground or the vehicle is judged by nobody', () => {
  const instead = fc.constantFrom(undefined, null, -1e9, 1e9, -3, 'stray', {});
  let wrong = 0;
  fc.assert(
    fc.property(fc.constantFrom(...places), instead, (at, value) => {
      const { value: read, problems } = readTrip(JSON.stringify(put(trip, at, value)));
      if (read === null || !problems.some(({ severity }) => severity === 'error')) return;
      wrong++;
      const { cells } = matrixOf(placesOn(null, read.obstacles), read.vehicles, read.direction);
      const said = cells[0][0].verdicts[0].verdict;
      expect(said.word, `${at.join('.')} = ${JSON.stringify(value)}: ${said.cause}`).toBe('not known');
    }),
    { seed: 7, numRuns: 400 },
  );
  expect(wrong).toBeGreaterThan(250);
});

test('as it is, it is judged', () => {
  const { value } = readTrip(JSON.stringify(trip));
  const { cells } = matrixOf(placesOn(null, value!.obstacles), value!.vehicles, value!.direction);
  expect(cells[0][0].verdicts[0].verdict.word).not.toBe('not known');
});
