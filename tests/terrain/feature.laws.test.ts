import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Feature } from '../../src/terrain/feature.ts';
import { featureFields, heightM, heightsAlong, topM } from '../../src/terrain/feature.ts';
import type { FeatureKind } from '../../src/terrain/feature.ts';
import { reversedFeature } from '../../src/terrain/reverse.ts';

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Any feature that its own table of fields allows. */
const feature = fc.constantFrom(...(Object.keys(featureFields) as FeatureKind[])).chain((kind) => {
  const sizes = Object.entries(featureFields[kind]).map(([name, field]) => {
    if (field.kind === 'number') return [name, number(field.min, field.max)] as const;
    return [name, field.kind === 'choice' ? fc.constantFrom(...field.choices) : fc.boolean()] as const;
  });
  return fc
    .record(Object.fromEntries(sizes) as Record<string, fc.Arbitrary<unknown>>)
    .map((record) => ({ kind, ...record }) as unknown as Feature)
    .filter((f) => !('fromM' in f) || f.fromM < f.toM);
});

describe('the same ground met from the other end', () => {
  it('has every height where it was, turned half round, up to one constant', () => {
    fc.assert(
      fc.property(feature, number(-6, 6), number(-3, 3), (one, x, y) => {
        const turned = reversedFeature(one);
        const shift = heightM([one], 0, 0) - heightM([turned], 0, 0);
        expect(heightM([turned], -x, -y) + shift).toBeCloseTo(heightM([one], x, y), 6);
      }),
      { seed: 20262, numRuns: 500 },
    );
  });

  it('turned twice is itself', () => {
    fc.assert(
      fc.property(feature, number(-6, 6), number(-3, 3), (one, x, y) => {
        expect(heightM([reversedFeature(reversedFeature(one))], x, y)).toBeCloseTo(heightM([one], x, y), 6);
      }),
      { seed: 20263, numRuns: 500 },
    );
  });
});

describe('heights along a line', () => {
  it('are the heights of its places', () => {
    fc.assert(
      fc.property(fc.array(feature, { maxLength: 5 }), number(-4, 4), (features, y) => {
        const along = new Float64Array(73);
        heightsAlong(features, y, -9, 0.25, along);
        along.forEach((height, i) => expect(height).toBeCloseTo(heightM(features, -9 + i * 0.25, y), 9));
      }),
      { seed: 20267, numRuns: 300 },
    );
  });

  it('are never above the height that no place is above', () => {
    fc.assert(
      fc.property(fc.array(feature, { maxLength: 5 }), number(-6, 6), number(-9, 9), (features, y, x) => {
        expect(heightM(features, x, y)).toBeLessThanOrEqual(topM(features) + 1e-12);
      }),
      { seed: 20268, numRuns: 2000 },
    );
  });
});
