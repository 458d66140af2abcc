import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { walkFeatures } from '../../src/archive/featureWalk.ts';

async function walked(text: string, mostBytes = 1e6) {
  const features: unknown[] = [];
  const end = await walkFeatures(new Blob([text]), mostBytes, (feature, i) => {
    expect(i).toBe(features.length);
    features.push(feature);
  });
  return { end, features };
}

/** As it is read from text: without −0, for one. */
function again(features: readonly unknown[]): unknown[] {
  return JSON.parse(JSON.stringify(features)) as unknown[];
}

describe('a walk through features', () => {
  test('gives what JSON.parse gives, whatever the features are, in whatever order the members stand', () =>
    fc.assert(
      fc.asyncProperty(
        fc.array(fc.jsonValue()),
        fc.boolean(),
        fc.boolean(),
        async (features, isLast, isMarked) => {
          const members = [
            `"type":"FeatureCollection"`,
            `"features":${JSON.stringify(features)}`,
            `"bbox":[1,2]`,
          ];
          const text = `${isMarked ? '\uFEFF' : ''}{${(isLast ? members.toReversed() : members).join()}}`;
          expect(await walked(text)).toEqual({ end: 'all', features: again(features) });
        },
      ),
    ));

  test('of anything else is an answer, never more than the text holds', () =>
    fc.assert(
      fc.asyncProperty(fc.oneof(fc.string(), fc.json()), async (text) => {
        const { end, features } = await walked(text);
        expect(end).not.toBe('all');
        expect(features).toEqual([]);
      }),
    ));

  test('cut short is no JSON, and gives the features before the cut', () =>
    fc.assert(
      fc.asyncProperty(fc.array(fc.jsonValue(), { minLength: 1 }), fc.nat(), async (features, cut) => {
        const text = `{"type":"FeatureCollection","features":${JSON.stringify(features)}}`;
        const { end, features: come } = await walked(text.slice(0, cut % text.length));
        expect(end).toBe('no JSON');
        expect(come).toEqual(again(features).slice(0, come.length));
      }),
    ));

  test('ends at a feature that is too large, and holds none after it', async () => {
    const text = `{"type":"FeatureCollection","features":[1,"${'x'.repeat(5e6)}",2]}`;
    expect(await walked(text, 2e6)).toEqual({ end: 'too large a feature', features: [1] });
    expect((await walked(text, 9e6)).features).toHaveLength(3);
  });

  test('goes as deep as the text does', async () => {
    const depth = 200_000;
    const text = `{"type":"FeatureCollection","features":[${'['.repeat(depth)}${']'.repeat(depth)}]}`;
    expect((await walked(text)).end).toBe('all');
  });
});
