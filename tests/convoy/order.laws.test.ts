import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Runner } from '../../src/convoy/order.ts';
import { orderOf } from '../../src/convoy/order.ts';

const runners = fc
  .array(
    fc.record({
      passesBorne: fc.oneof(fc.integer({ min: -1, max: 6 }), fc.constant(Infinity)),
      canPull: fc.boolean(),
    }),
    {
      minLength: 1,
      maxLength: 6,
    },
  )
  .map((list) => list.map((runner, i): Runner => ({ vehicleId: `v${i}`, ...runner })));

function permutations<T>(list: readonly T[]): T[][] {
  if (list.length <= 1) return [[...list]];
  return list.flatMap((one, i) =>
    permutations([...list.slice(0, i), ...list.slice(i + 1)]).map((rest) => [one, ...rest]),
  );
}

function unaided(line: readonly Runner[]): number {
  return line.filter((runner, i) => runner.passesBorne >= i).length;
}

describe('the proposed order', () => {
  it('has everyone once, and counts truly', () => {
    fc.assert(
      fc.property(runners, (all) => {
        const order = orderOf(all);
        expect(order.vehicleIds.toSorted()).toEqual(all.map((r) => r.vehicleId).toSorted());
        const line = order.vehicleIds.map((id) => all.find((r) => r.vehicleId === id)!);
        expect(order.unaided).toBe(unaided(line));
        expect(order.reasons.length).toBe(all.length);
      }),
      { seed: 20264, numRuns: 300 },
    );
  });

  it('keeps a puller last, and one first where two can pull and go', () => {
    fc.assert(
      fc.property(runners, (all) => {
        const { vehicleIds } = orderOf(all);
        const pulls = (id: string) => all.find((r) => r.vehicleId === id)!.canPull;
        const pullers = all.filter((r) => r.canPull);
        if (pullers.length > 0) expect(pulls(vehicleIds[vehicleIds.length - 1])).toBe(true);
        const able = pullers.filter((r) => r.passesBorne >= 0);
        if (able.length >= 2) expect(pulls(vehicleIds[0])).toBe(true);
      }),
      { seed: 20265, numRuns: 300 },
    );
  });

  it('no order with the same ends lets more go unaided', () => {
    fc.assert(
      fc.property(runners, (all) => {
        const order = orderOf(all);
        const first = order.vehicleIds[0];
        const last = order.vehicleIds[order.vehicleIds.length - 1];
        const best = Math.max(
          ...permutations(all)
            .filter((line) => line[0].vehicleId === first && line[line.length - 1].vehicleId === last)
            .map(unaided),
        );
        expect(order.unaided).toBe(best);
      }),
      { seed: 20266, numRuns: 200 },
    );
  });
});
