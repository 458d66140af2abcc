import { describe, expect, it } from 'vitest';
import type { Feature } from '../../src/terrain/feature.ts';
import type { Ground } from '../../src/terrain/ground.ts';
import type { Check, CheckName } from '../../src/traverse/assess.ts';
import { CHECKS } from '../../src/traverse/assess.ts';
import { traverseAssess } from '../../src/traverse/traverse.ts';
import { classValues } from '../../src/vehicle/classes.ts';
import { flatGround } from './scenes.ts';
import { NO_AIDS } from '../../src/vehicle/aids.ts';

const wagon = {
  ...classValues('mid-size wagon'),
  centre: 'lockable',
  rearDifferential: 'locker',
  brakeTraction: 'none',
} as const;

function checks(ground: Ground, aids = NO_AIDS, offsetM = 0): readonly Check[] {
  const found = traverseAssess(wagon, ground, offsetM, aids);
  if (!found.known) throw new Error(found.cause);
  return found.checks;
}
const named = (all: readonly Check[], name: CheckName) => all.find((check) => check.name === name)!;

describe('what is said of a line', () => {
  it('each check at most once, in its order of names, with a cause and a tolerance', () => {
    const all = checks(flatGround);
    expect(new Set(all.map(({ name }) => name)).size).toBe(all.length);
    for (const check of all) {
      expect(CHECKS).toContain(check.name);
      expect(check.tolerance).toBeGreaterThan(0);
      expect(check.margin).toBeCloseTo(check.have - check.need, 9);
      expect(check.cause).not.toBe('');
    }
  });

  it('nothing while the slope or the camber is not known: where to measure instead', () => {
    const noSlope = traverseAssess(wagon, { ...flatGround, slopeRad: NaN }, 0, NO_AIDS);
    expect(noSlope).toMatchObject({
      known: false,
      cause: expect.stringContaining('slope not known') as string,
    });
    const noCamber = traverseAssess(wagon, { ...flatGround, camberRad: NaN }, 0, NO_AIDS);
    expect(noCamber).toMatchObject({
      known: false,
      cause: expect.stringContaining('camber not known') as string,
    });
  });
});

describe('holes that lift diagonal wheels', () => {
  const holes: Feature[] = [
    { kind: 'hole', xM: -1.4, yM: 0.75, lengthM: 1.8, widthM: 0.9, depthM: 0.45 },
    { kind: 'hole', xM: 1.4, yM: -0.75, lengthM: 1.8, widthM: 0.9, depthM: 0.45 },
  ];
  const ground = { ...flatGround, slopeRad: 0.1, features: holes };

  it('leave an open axle without drive; locking the rear gives it back', () => {
    const centre = { ...NO_AIDS, lowRange: true, centreLocked: true };
    const open = named(checks(ground, centre), 'traction');
    const locked = named(checks(ground, { ...centre, rearLocked: true }), 'traction');
    expect(open.margin).toBeLessThan(0);
    expect(locked.margin).toBeGreaterThan(open.margin + 0.1);
  });
});

it('a camber beyond the tilt it bears tips it, to the low side', () => {
  const tip = named(checks({ ...flatGround, camberRad: 0.78 }), 'side tip');
  expect(tip.margin).toBeLessThan(0);
  expect(tip.cause).toContain('right');
});

it('a wheel on the shoulder of a deep rut slides in where grip is low, and stays where the rut is not', () => {
  const rut: Feature = {
    kind: 'rut',
    centreYM: 0.5,
    widthM: 0.7,
    depthM: 0.4,
    fromM: -4,
    toM: 4,
    runM: 1,
    section: 'V',
  };
  const slippery = { ...flatGround, peakAdhesion: 0.25, slidingAdhesion: 0.2, features: [rut] };
  expect(named(checks(slippery), 'side hold').margin).toBeLessThan(0);
  expect(named(checks(slippery, NO_AIDS, -1.2), 'side hold').margin).toBeGreaterThan(0);
});

it('the way down is held by loaded wheels up to their sliding adhesion', () => {
  const down = (slopeRad: number) => named(checks({ ...flatGround, slopeRad: -slopeRad }), 'braking').margin;
  expect(down(Math.atan(0.47))).toBeGreaterThan(0);
  expect(down(Math.atan(0.49))).toBeLessThan(0);
});
