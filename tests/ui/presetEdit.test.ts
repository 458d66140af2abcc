import { describe, expect, test } from 'vitest';
import { checkStretch } from '../../src/terrain/check.ts';
import type { Stretch } from '../../src/terrain/obstacle.ts';
import { PRESETS, presetNamed, stretchFrom } from '../../src/terrain/preset.ts';
import { addFeature, removeFeature, withHow, withValue } from '../../src/ui/groundEdit.ts';
import {
  answer,
  answeredStretch,
  answersOf,
  movedBy,
  NOTHING_ANSWERED,
  withAnswer,
} from '../../src/ui/presetEdit.ts';

const preset = presetNamed('rutted climb')!;
const before = stretchFrom(preset, {}, 'by eye');

test('an answer decides its own values and no others', () => {
  expect(movedBy(preset, {}, 'leftDepthM')).toEqual(['features.0.depthM']);
  expect(movedBy(preset, {}, 'rutWidthM')).toEqual(['features.0.widthM', 'features.1.widthM']);
  expect(movedBy(preset, {}, 'slopeRad')).toEqual(['plane.slopeRad']);
});

test('only what was answered counts as measured', () => {
  const given = answer(NOTHING_ANSWERED, 'leftDepthM', 0.4, 'taped');
  const { features, hows } = answeredStretch(before, preset, given);
  expect(features[0]).toMatchObject({ depthM: 0.4 });
  expect(hows['features.0.depthM']).toBe('taped');
  expect(hows['features.1.depthM'] ?? 'by eye').toBe('by eye');
});

test('surface, room, and a slope that was read elsewhere stay', () => {
  const own = {
    ...before,
    surface: { material: 'mud', condition: 'wet' } as const,
    plane: { slopeRad: 0.2, camberRad: 0.05 },
    hows: { ...before.hows, 'corridor.leftM': 'taped', 'plane.slopeRad': 'taped' } as const,
  };
  const after = answeredStretch(own, preset, answer(NOTHING_ANSWERED, 'rightDepthM', 0.1, 'paced'));
  expect(after.surface).toEqual(own.surface);
  expect(after.plane).toEqual(own.plane);
  expect(after.hows).toMatchObject({ 'corridor.leftM': 'taped', 'plane.slopeRad': 'taped' });
});

test('an answer that is taken back gives its start again', () => {
  const once = answer(NOTHING_ANSWERED, 'leftDepthM', 0.4, 'taped');
  const back = answer(once, 'leftDepthM', null, 'taped');
  expect(answeredStretch(before, preset, back).features).toEqual(before.features);
});

test.each(PRESETS)(
  '$name starts without a fault, and stays so when each answer is a tenth more or less',
  (one) => {
    for (const { key, start } of one.questions)
      for (const share of [0.9, 1, 1.1]) {
        const given = answer(NOTHING_ANSWERED, key, start * share, 'taped');
        expect(checkStretch(answeredStretch(stretchFrom(one), one, given), key)).toEqual([]);
      }
  },
);

test('a slope that is answered lies in the plane alone', () => {
  const ground = addFeature(withValue(before, 'features.0.depthM', 0.4, 'by eye'), 'rock');
  const given = answer(NOTHING_ANSWERED, 'slopeRad', 0.2, 'taped');
  const after = withAnswer(ground, preset, given, 'slopeRad');
  expect(after.features).toBe(ground.features);
  expect(after.plane.slopeRad).toBe(0.2);
  expect(after.hows).toEqual({ ...ground.hows, 'plane.slopeRad': 'taped' });
});

test('a slope that is taken back is known from the track alone', () => {
  const given = answer(NOTHING_ANSWERED, 'slopeRad', 0.2, 'taped');
  const ground = withAnswer(before, preset, given, 'slopeRad');
  const back = withAnswer(ground, preset, answer(given, 'slopeRad', null, 'taped'), 'slopeRad');
  expect(back.plane.slopeRad).toBe(null);
});

test('a length that is not asked for stays as it was entered', () => {
  const ledge = presetNamed('ledge')!;
  const long = withValue(stretchFrom(ledge, {}, 'by eye'), 'lengthM', 14, 'taped');
  const after = withAnswer(long, ledge, answer(NOTHING_ANSWERED, 'riseM', 0.4, 'taped'), 'riseM');
  expect(after.lengthM).toBe(14);
  expect(after.hows.lengthM).toBe('taped');
});

describe('the answers shown are those that the ground agrees with', () => {
  const one = answer(NOTHING_ANSWERED, 'leftDepthM', 0.24, 'taped');
  const two = answer(one, 'lengthM', 12, 'paced');
  const given = [NOTHING_ANSWERED, one, two];
  const grounds = [before, withAnswer(before, preset, one, 'leftDepthM')];
  grounds.push(withAnswer(grounds[1], preset, two, 'lengthM'));

  test('as each was given, and those before once a step is undone', () => {
    grounds.forEach((ground, i) =>
      expect(answersOf(ground, preset, given)?.answers).toEqual({ ...given[i].answers, camberRad: 0 }),
    );
  });

  test('with slope and camber as they were read by another way', () => {
    const read = withValue(grounds[1], 'plane.slopeRad', 0.2, 'taped');
    const shown = answersOf(read, preset, given);
    expect(shown?.answers).toEqual({ leftDepthM: 0.24, slopeRad: 0.2, camberRad: 0 });
    expect(shown?.hows.slopeRad).toBe('taped');
  });

  test('none where a size was dragged, a shape added, or a size got otherwise', () => {
    const [, ground] = grounds;
    for (const other of [
      withValue(ground, 'features.0.depthM', 0.4, 'by eye'),
      addFeature(ground, 'rock'),
      removeFeature(ground, 1),
      withHow(ground, 'features.0.depthM', 'by eye'),
      withValue(ground, 'lengthM', 30),
    ])
      expect(answersOf(other, preset, given)).toBe(null);
  });

  test('after they were stored, with names in another order', () => {
    const stored = JSON.parse(JSON.stringify(grounds[2])) as Stretch;
    const turned = stored.features.map((feature) => Object.fromEntries(Object.entries(feature).reverse()));
    const ground = { ...stored, features: turned as unknown as Stretch['features'] };
    expect(answersOf(ground, preset, given)?.answers.lengthM).toBe(12);
  });

  test.each(PRESETS)('$name, just pinned, agrees with no answer at all', (fresh) => {
    expect(answersOf(stretchFrom(fresh, {}, 'by eye'), fresh, [NOTHING_ANSWERED])).not.toBe(null);
  });

  test.each(PRESETS)('$name agrees with each of its answers once it is given', (fresh) => {
    let ground = stretchFrom(fresh, {}, 'by eye');
    let last = NOTHING_ANSWERED;
    for (const { key, start } of fresh.questions) {
      last = answer(last, key, start * 1.1, 'taped');
      ground = withAnswer(ground, fresh, last, key);
      expect(answersOf(ground, fresh, [last])?.answers[key]).toBe(start * 1.1);
    }
  });
});
