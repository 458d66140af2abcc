import fc from 'fast-check';
import { expect, test } from 'vitest';
import { aligned, orders } from '../../src/archive/aligned.ts';

const RUNS = { seed: 20261125, numRuns: 300 };

const anyRow = fc
  .record({ kind: fc.constantFrom('rut', 'hole'), a: fc.nat(2), b: fc.nat(2) })
  .map((row) => new Map<string, unknown>(Object.entries(row)));

const anyRows = fc.array(anyRow, { maxLength: 6 });

/** What pairs cost: fields that differ, and everything of a row that comes or goes. */
function cost(
  before: readonly Map<string, unknown>[],
  after: readonly Map<string, unknown>[],
  pairs: readonly (number | null)[],
): number {
  const kept = pairs.filter((pair) => pair !== null);
  const gone = (before.length - kept.length) * 4;
  return pairs.reduce<number>((sum, pair, j) => {
    if (pair === null) return sum + 4;
    const fields = [...after[j]].filter(([name, value]) => before[pair].get(name) !== value).length;
    return sum + (before[pair].get('kind') === after[j].get('kind') ? fields : Infinity);
  }, gone);
}

/** Every pairing in the order of both. */
function allPairings(before: number, after: number, from = 0): (number | null)[][] {
  if (after === 0) return [[]];
  const alone = allPairings(before, after - 1, from).map((rest) => [null, ...rest]);
  const paired = Array.from({ length: before - from }, (_, i) => from + i).flatMap((i) =>
    allPairings(before, after - 1, i + 1).map((rest) => [i, ...rest]),
  );
  return [...alone, ...paired];
}

test('of all pairings in order it is one from which the least differs', () => {
  fc.assert(
    fc.property(fc.array(anyRow, { maxLength: 4 }), fc.array(anyRow, { maxLength: 4 }), (before, after) => {
      const least = Math.min(
        ...allPairings(before.length, after.length).map((pairs) => cost(before, after, pairs)),
      );
      expect(cost(before, after, aligned(before, after))).toBe(least);
    }),
    RUNS,
  );
});

test('rows are themselves, and those beside one that goes or comes too', () => {
  fc.assert(
    fc.property(anyRows, fc.nat(6), (rows, at) => {
      const all = rows.map((_, i) => i);
      expect(aligned(rows, rows)).toEqual(all);
      const kept = rows.filter((_, i) => i !== at);
      expect(cost(rows, kept, aligned(rows, kept))).toBe(rows.length > at ? 4 : 0);
    }),
    RUNS,
  );
});

test('orders rise, and those that rose already stay', () => {
  const known = fc.array(fc.option(fc.integer({ min: 0, max: 9 })), { maxLength: 12 });
  fc.assert(
    fc.property(known, (list) => {
      const given = orders(list);
      expect(given).toHaveLength(list.length);
      given.forEach((order, i) => {
        if (i > 0) expect(order).toBeGreaterThan(given[i - 1]);
      });
      const rising = list.filter((order) => order !== null);
      if (rising.every((order, i) => i === 0 || order > rising[i - 1]))
        list.forEach((order, i) => {
          if (order !== null) expect(given[i]).toBe(order);
        });
    }),
    RUNS,
  );
});
