import fc from 'fast-check';
import { expect, test } from 'vitest';
import { alongLine } from '../../src/traverse/along.ts';
import { lettingGo } from '../../src/traverse/relief.ts';
import { Shelf } from '../../src/traverse/shelf.ts';
import { assessTraverse } from '../../src/traverse/traverse.ts';
import { ladder } from '../../src/vehicle/aids.ts';
import { randomScene } from './scenes.ts';

const SEED = 20261129;

/** Arrays of some kind and length, and where a shelf is cleared. */
const asks = fc.array(
  fc.record({
    kind: fc.constantFrom('numbers' as const, 'bytes' as const, 'counts' as const),
    count: fc.nat(30_000),
    thenClear: fc.boolean(),
  }),
  { minLength: 1, maxLength: 30 },
);

test('arrays of a shelf are zeros and none lies over another, on blocks used anew as on new ones', () => {
  fc.assert(
    fc.property(fc.nat(4000), asks, (bytes, all) => {
      const shelf = new Shelf(bytes);
      let laid: { array: Float64Array | Uint8Array | Uint32Array; mark: number }[] = [];
      for (const [i, { kind, count, thenClear }] of all.entries()) {
        const array = shelf[kind](count);
        expect(array.length).toBe(count);
        expect(array.every((value) => value === 0)).toBe(true);
        array.fill(i + 1);
        laid.push({ array, mark: i + 1 });
        for (const { array, mark } of laid) expect(array.every((value) => value === mark)).toBe(true);
        if (!thenClear) continue;
        shelf.clear();
        laid = [];
      }
    }),
    { seed: SEED, numRuns: 60 },
  );
});

test('what is let go of changes no answer: not one that is there already, and not the same asked again', () => {
  fc.assert(
    fc.property(fc.nat(100_000), fc.nat(100_000), (one, other) => {
      const answer = (n: number) => {
        const { values, ground } = randomScene(10 * n + 1);
        const aidSets = ladder(values).map(({ aids }) => aids);
        return {
          assessed: assessTraverse(values, [ground], 0.2, aidSets),
          along: alongLine(values, ground, 0.2, aidSets, aidSets.length - 1),
        };
      };
      const kept = answer(one);
      const letGo = lettingGo(() => answer(one));
      expect(letGo).toEqual(kept);
      lettingGo(() => answer(other));
      expect(letGo).toEqual(kept);
      expect(lettingGo(() => answer(one))).toEqual(kept);
    }),
    { seed: SEED, numRuns: 12 },
  );
});

test('all arrays of a look along a line lie in one buffer, whatever the vehicle and its ladder', () => {
  fc.assert(
    fc.property(fc.nat(100_000), (n) => {
      const { values, ground } = randomScene(10 * n + 1);
      const aidSets = ladder(values).map(({ aids }) => aids);
      const along = alongLine(values, ground, 0.2, aidSets, 0)!;
      const { record, traction, gapM, gapXM, gapYM, leastGapM, leastPart, tipRad } = along;
      const arrays = Object.values({ ...record, length: null }).filter((each) => ArrayBuffer.isView(each));
      expect(arrays).toHaveLength(14);
      for (const { buffer } of [...arrays, ...traction, gapM, gapXM, gapYM, leastGapM, leastPart, tipRad])
        expect(buffer).toBe(record.stationM.buffer);
    }),
    { seed: SEED, numRuns: 30 },
  );
});
