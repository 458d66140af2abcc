import { expect, test } from 'vitest';
import { heightM } from '../../src/terrain/feature.ts';
import { presetNamed, stretchFrom } from '../../src/terrain/preset.ts';
import { asTravelled } from '../../src/terrain/travelled.ts';

const stretch = {
  ...stretchFrom(presetNamed('rutted climb')!, { slopeRad: 0.2, leftDepthM: 0.4, rightDepthM: 0.1 }),
  plane: { slopeRad: 0.2, camberRad: null },
};

test('as recorded nothing turns', () => {
  expect(asTravelled(stretch, 'as recorded')).toBe(stretch);
});

test('reversed, a climb is a descent, the left rut lies right, and what is unknown stays so', () => {
  const turned = asTravelled(stretch, 'reversed');
  expect(turned.plane).toEqual({ slopeRad: -0.2, camberRad: null });
  for (const [x, y] of [
    [0, 0.775],
    [1, -0.775],
    [-2, 0.3],
  ])
    expect(heightM(turned.features, x, y)).toBeCloseTo(heightM(stretch.features, -x, -y), 12);
  expect(asTravelled(turned, 'reversed')).toEqual(stretch);
});
