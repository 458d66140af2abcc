import { describe, expect, test } from 'vitest';
import { checkStretch } from '../../src/terrain/check.ts';
import type { FeatureKind } from '../../src/terrain/feature.ts';
import { featureFields } from '../../src/terrain/feature.ts';
import { PRESETS, presetNamed, stretchFrom } from '../../src/terrain/preset.ts';
import {
  addFeature,
  movedALittle,
  remade,
  removeFeature,
  withHow,
  withValue,
} from '../../src/ui/groundEdit.ts';

const ruts = stretchFrom(presetNamed('rutted climb')!, {}, 'by eye');

test('a value is replaced at its path, with how it was got; the rest stays the same in memory', () => {
  const changed = withValue(ruts, 'features.1.depthM', 0.4, 'taped');
  expect(changed.features[1]).toMatchObject({ depthM: 0.4 });
  expect(changed.hows['features.1.depthM']).toBe('taped');
  expect(changed.features[0]).toBe(ruts.features[0]);
  expect(changed.corridor).toBe(ruts.corridor);
  expect(ruts.features[1]).toMatchObject({ depthM: 0.25 });
});

test('a choice has no how', () => {
  expect(withValue(ruts, 'surface.material', 'mud').hows).toBe(ruts.hows);
});

test.each(Object.keys(featureFields) as FeatureKind[])(
  'a new %s is within its ranges on any preset',
  (kind) => {
    for (const preset of PRESETS) {
      const stretch = addFeature(stretchFrom(preset), kind);
      expect(checkStretch(stretch, 'here')).toEqual([]);
      expect(stretch.features.at(-1)?.kind).toBe(kind);
    }
  },
);

describe('removing a shape', () => {
  const three = withHow(
    withHow(addFeature(ruts, 'hole'), 'features.2.depthM', 'paced'),
    'features.0.widthM',
    'taped',
  );

  test('keeps how the others were got, at their new places', () => {
    const { features, hows } = removeFeature(three, 1);
    expect(features.map(({ kind }) => kind)).toEqual(['rut', 'hole']);
    expect(hows['features.1.depthM']).toBe('paced');
    expect(hows['features.0.widthM']).toBe('taped');
    expect(Object.keys(hows).filter((path) => path.startsWith('features.2'))).toEqual([]);
  });

  test('leaves nothing of its own behind', () => {
    const only = removeFeature(removeFeature(removeFeature(three, 0), 0), 0);
    expect(only.features).toEqual([]);
    expect(Object.keys(only.hows).filter((path) => path.startsWith('features'))).toEqual([]);
  });
});

test.each(PRESETS)('remade, $name says what it said, in other records', (preset) => {
  const stretch = stretchFrom(preset, {}, 'taped');
  const again = remade(stretch);
  expect(again).toEqual(stretch);
  again.features.forEach((feature, i) => expect(feature).not.toBe(stretch.features[i]));
});

test.each(PRESETS)(
  'moved a little, $name differs in one size, by a tenth at most, and each has its turn',
  (preset) => {
    const stretch = stretchFrom(preset, {}, 'taped');
    const sizes = (of: typeof stretch) =>
      of.features.flatMap((feature) => Object.values(feature).filter((value) => typeof value === 'number'));
    const before = sizes(stretch);
    const moved = new Set<number>();
    for (let n = 1; n <= 2 * before.length; n++) {
      const after = sizes(movedALittle(stretch, n));
      const unlike = before.flatMap((size, i) => (after[i] === size ? [] : [i]));
      // A size of nothing stays so.
      expect(unlike.length).toBe(before[n % before.length] === 0 ? 0 : 1);
      for (const i of unlike) {
        expect(Math.abs(after[i] - before[i])).toBeLessThanOrEqual(0.1 * Math.abs(before[i]));
        moved.add(i);
      }
    }
    expect(moved.size).toBe(before.filter((size) => size !== 0).length);
  },
);

test('without shapes there is nothing to move', () => {
  const bare = { ...ruts, features: [] };
  expect(movedALittle(bare, 1)).toBe(bare);
});
