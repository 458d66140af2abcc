import { expect, test } from 'vitest';
import { checkStretch } from '../../src/terrain/check.ts';
import { PRESETS, presetNamed, stretchFrom } from '../../src/terrain/preset.ts';
import {
  answer,
  answeredStretch,
  movedBy,
  NOTHING_ANSWERED,
  withAnswer,
  withPlane,
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

test('a slope read by another way is what the question was answered with, and stays with the next answer', () => {
  const typed = answer(NOTHING_ANSWERED, 'slopeRad', 0.1, 'by eye');
  const ground = withAnswer(before, preset, typed, 'slopeRad', 0.1);
  const read = {
    ...ground,
    plane: { ...ground.plane, slopeRad: 0.2 },
    hows: { ...ground.hows, 'plane.slopeRad': 'taped' } as const,
  };
  const given = withPlane(typed, read);
  expect(given.answers.slopeRad).toBe(0.2);
  expect(given.hows.slopeRad).toBe('taped');
  const after = withAnswer(read, preset, answer(given, 'leftDepthM', 0.4, 'taped'), 'leftDepthM', 0.4);
  expect(after.plane.slopeRad).toBe(0.2);
  expect(after.hows['plane.slopeRad']).toBe('taped');
});

test('a slope that is taken back is known from the track alone, and comes back with no other answer', () => {
  const typed = answer(NOTHING_ANSWERED, 'slopeRad', 0.1, 'by eye');
  const ground = withAnswer(before, preset, typed, 'slopeRad', 0.1);
  const back = withAnswer(ground, preset, answer(typed, 'slopeRad', null, 'by eye'), 'slopeRad', null);
  expect(back.plane.slopeRad).toBe(null);
  const given = withPlane(typed, back);
  expect(given.answers).not.toHaveProperty('slopeRad');
  const after = withAnswer(back, preset, answer(given, 'leftDepthM', 0.4, 'taped'), 'leftDepthM', 0.4);
  expect(after.plane.slopeRad).toBe(null);
});
