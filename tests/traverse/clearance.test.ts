import { describe, expect, it } from 'vitest';
import type { Feature } from '../../src/terrain/feature.ts';
import type { Check, CheckName } from '../../src/traverse/assess.ts';
import { traverseAssess } from '../../src/traverse/traverse.ts';
import { classValues } from '../../src/vehicle/classes.ts';
import { flatGround } from './scenes.ts';
import { NO_AIDS } from '../../src/vehicle/aids.ts';

const wagon = { ...classValues('mid-size wagon'), rearDifferentialYM: 0, frontDifferentialYM: 0.2 };

function check(name: CheckName, features: readonly Feature[], values = wagon): Check {
  const found = traverseAssess(values, { ...flatGround, features }, 0, NO_AIDS);
  if (!found.known) throw new Error(found.cause);
  return found.checks.find((one) => one.name === name)!;
}

const pair = (depthM: number): Feature[] =>
  [1, -1].map((side) => ({
    kind: 'rut',
    centreYM: (side * wagon.rearTrackWidthM) / 2,
    widthM: 0.6,
    depthM,
    fromM: -4,
    toM: 4,
    runM: 1,
    section: 'U',
  }));

describe('between ruts', () => {
  it('the rear differential comes down by the depth of the ruts', () => {
    const gap = check('rear differential', pair(0.15)).have;
    // Tolerance 5 mm: the wheels' load on the springs does not change, but heights are sampled every 2.5 cm.
    expect(Math.abs(gap - (wagon.rearDifferentialHeightM - 0.15))).toBeLessThan(0.005);
  });

  it('touches when they are deeper than it is high, and says so', () => {
    const found = check('rear differential', pair(wagon.rearDifferentialHeightM + 0.05));
    expect(found.margin).toBeLessThan(0);
    expect(found.cause).toBe('rear differential touches');
    expect(Math.abs(found.stationM)).toBeLessThan(4);
  });
});

describe('a rock between the wheels', () => {
  const rock = (yM: number): Feature => ({
    kind: 'rock',
    xM: 0.5,
    yM,
    heightM: 0.25,
    lengthM: 0.3,
    widthM: 0.3,
  });

  it('is met by the differential that passes over it, where it lies', () => {
    const rear = check('rear differential', [rock(0)]);
    expect(rear.margin).toBeLessThan(0);
    expect(Math.abs(rear.stationM - 0.5)).toBeLessThan(0.25);
    expect(rear.have).toBeLessThan(check('front differential', [rock(0)]).have);
  });

  it('is missed by one that sits to the side', () => {
    expect(check('front differential', [rock(-0.3)]).have).toBeCloseTo(wagon.frontDifferentialHeightM, 2);
  });
});

it('a ledge steeper and higher than the approach angle allows is met by the front corner', () => {
  const ledge: Feature = { kind: 'ledge', xM: 0, riseM: 0.6, faceRad: 1.3, skewRad: 0 };
  expect(check('approach', [ledge]).margin).toBeLessThan(0);
  expect(check('approach', [{ ...ledge, riseM: 0.1 }]).margin).toBeGreaterThan(0);
});

it('a hump sharper than the rampover angle is met by the belly', () => {
  const hump: Feature = { kind: 'hump', xM: 0, lengthM: 2, heightM: 0.6, skewRad: 0 };
  const crest = check('rampover', [hump]);
  const belly = check('belly', [hump]);
  expect(Math.min(crest.margin, belly.margin)).toBeLessThan(0);
  expect(check('rampover', [{ ...hump, lengthM: 12, heightM: 0.3 }]).margin).toBeGreaterThan(0);
});

it('aired down, the underside is lower', () => {
  const low = traverseAssess(wagon, flatGround, 0, { ...NO_AIDS, airedDown: true });
  if (!low.known) throw new Error(low.cause);
  expect(low.checks.find(({ name }) => name === 'belly')!.have).toBeLessThan(check('belly', []).have);
});
