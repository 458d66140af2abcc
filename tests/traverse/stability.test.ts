import { expect, it } from 'vitest';
import type { Feature } from '../../src/terrain/feature.ts';
import { chassisOf } from '../../src/traverse/chassis.ts';
import { traverseAssess } from '../../src/traverse/traverse.ts';
import { rad } from '../../src/units.ts';
import { classValues } from '../../src/vehicle/classes.ts';
import { flatGround } from './scenes.ts';
import { NO_AIDS } from '../../src/vehicle/aids.ts';

const wagon = {
  ...classValues('mid-size wagon'),
  frontTrackWidthM: 1.5,
  rearTrackWidthM: 1.5,
  tyreSectionM: 0.25,
};

/** Tilt left to the low right side on a camber of 10°, with a rut there whose shoulder lies so far from the wheels' middle. */
function tiltLeft(shoulderYM: number | null): number {
  const rut: Feature = {
    kind: 'rut',
    centreYM: -0.75 + (shoulderYM ?? 0) - 0.3,
    widthM: 0.6,
    depthM: 0.3,
    fromM: -9,
    toM: 9,
    runM: 0,
    section: 'U',
  };
  const features = shoulderYM === null ? [] : [rut];
  const found = traverseAssess(wagon, { ...flatGround, camberRad: rad(10), features }, 0, NO_AIDS);
  if (!found.known) throw new Error(found.cause);
  return found.checks.find(({ name }) => name === 'side tip')!.margin;
}

it('a wheel that bears on the inner half of its tread has the shorter lever', () => {
  const lost = tiltLeft(null) - tiltLeft(0);
  const { massHeightM } = chassisOf(wagon, NO_AIDS);
  // The middle of the half that bears is a quarter of the section inside; ground lines are 5 cm apart.
  const [least, most] = [0.25 / 4 - 0.03, 0.25 / 4 + 0.03].map(
    (shorterM) => Math.atan(0.75 / massHeightM) - Math.atan((0.75 - shorterM) / massHeightM),
  );
  expect(lost).toBeGreaterThan(least);
  expect(lost).toBeLessThan(most);
});

it('a rut beside the tread changes nothing, and one under its inner half is not counted on', () => {
  expect(tiltLeft(-0.2)).toBeCloseTo(tiltLeft(null), 6);
  const inner = tiltLeft(0.6);
  expect(inner).toBeCloseTo(tiltLeft(null), 6);
});
