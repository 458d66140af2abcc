import { describe, expect, it } from 'vitest';
import type { Feature } from '../../src/terrain/feature.ts';
import type { Ground } from '../../src/terrain/ground.ts';
import type { Check, CheckName } from '../../src/traverse/assess.ts';
import { G_MPS2 } from '../../src/traverse/gravity.ts';
import { ROLLING_HELPS, TOLERANCE } from '../../src/traverse/limits.ts';
import { traverseAssess } from '../../src/traverse/traverse.ts';
import { degrees, rad } from '../../src/units.ts';
import type { Aids } from '../../src/vehicle/aids.ts';
import { classValues } from '../../src/vehicle/classes.ts';
import { overrunOf } from '../../src/vehicle/driveline.ts';
import { flatGround } from './scenes.ts';
import { NO_AIDS } from '../../src/vehicle/aids.ts';

const LOW = { ...NO_AIDS, lowRange: true };
const wagon = {
  ...classValues('mid-size wagon'),
  drive: 'full-time four',
  centre: 'lockable',
  frontDifferential: 'locker',
  rearDifferential: 'locker',
  crawlRatio: 60,
} as const;

function check(name: CheckName, ground: Partial<Ground>, aids: Aids = LOW, values = wagon): Check {
  const found = traverseAssess(values, { ...flatGround, ...ground }, 0, aids);
  if (!found.known) throw new Error(found.cause);
  return found.checks.find((one) => one.name === name)!;
}
const engine = (ground: Partial<Ground>, aids: Aids = LOW) => check('braking', ground, aids).engine!;

describe('engine braking on a plane', () => {
  it('holds the slope on which its force and hard ground’s rolling resistance balance the weight', () => {
    const { have, need, margin, cause } = engine({ slopeRad: rad(-20) });
    const weightN = wagon.massKg * G_MPS2;
    const share = overrunOf(wagon, LOW).forceN / weightN + ROLLING_HELPS * Math.cos(rad(20));
    expect(have).toBeCloseTo(Math.asin(share), 6);
    expect(need).toBeCloseTo(rad(20), 9);
    expect(margin).toBeCloseTo(have - need, 9);
    expect(cause).toBe('engine and gearing');
  });

  it('is held down by the grip of a slippery plane, as brakes are', () => {
    const ice = { slopeRad: rad(-8), peakAdhesion: 0.1, slidingAdhesion: 0.08 };
    const { have, cause, braked } = engine(ice);
    expect(degrees(have)).toBeCloseTo(degrees(Math.asin(0.08 * Math.cos(rad(8)))), 3);
    expect(cause).toBe('grip of the surface');
    expect(braked).toBe(1);
  });

  it('leaves the brakes what it lacks, over what they can hold', () => {
    const slopeRad = rad(-20);
    const { have, braked } = engine({ slopeRad });
    expect(braked).toBeCloseTo((Math.sin(rad(20)) - Math.sin(have)) / (0.48 * Math.cos(rad(20))), 6);
  });
});

describe('a wheel in the air on the way down', () => {
  const holes: Feature[] = [
    { kind: 'hole', xM: -1.4, yM: 0.75, lengthM: 1.8, widthM: 0.9, depthM: 0.45 },
    { kind: 'hole', xM: 1.4, yM: -0.75, lengthM: 1.8, widthM: 0.9, depthM: 0.45 },
  ];
  const ground = { slopeRad: rad(-10), features: holes };

  it('takes all engine braking away where every differential is open', () => {
    const { have, cause } = engine(ground);
    expect(degrees(have)).toBeLessThan(4);
    expect(degrees(engine({ slopeRad: rad(-10) }).have)).toBeGreaterThan(10);
    expect(cause).toMatch(/in the air, and an open differential lets the engine braking go$/);
    expect(engine({ slopeRad: rad(-10) }).margin).toBeGreaterThan(TOLERANCE.grip);
  });

  it('leaves it to the other axle where the centre is locked, and nothing is lost with lockers', () => {
    const centre = engine(ground, { ...LOW, centreLocked: true });
    const all = engine(ground, { ...LOW, centreLocked: true, rearLocked: true, frontLocked: true });
    expect(centre.margin).toBeGreaterThan(engine(ground).margin);
    expect(all.margin).toBeGreaterThan(centre.margin);
    expect(all.cause).toBe('engine and gearing');
  });

  it('is not blamed in high range, where a walk does not turn the engine anyway', () => {
    const tall = traverseAssess({ ...wagon, crawlRatio: 40 }, { ...flatGround, ...ground }, 0, NO_AIDS);
    const braking = tall.known && tall.checks.find(({ name }) => name === 'braking');
    expect(braking && braking.engine!.cause).toBe('engine and gearing');
  });
});

/** Level ground that falls by `dropM` in one step at the pin. */
const ledge = (dropM: number, faceDeg = 80): Feature => ({
  kind: 'ledge',
  xM: 0,
  riseM: -dropM,
  faceRad: rad(faceDeg),
  skewRad: 0,
});

describe('a step down, met from above', () => {
  const levelMargin = (name: CheckName) => check(name, {}).margin;

  it('brings the nose down, nearer to tipping forward, by the step over the wheelbase at least', () => {
    const tip = check('end tip', { slopeRad: rad(-20), features: [ledge(0.4)] });
    const even = check('end tip', { slopeRad: rad(-20) });
    expect(tip.cause).toContain('nose down');
    expect(even.margin - tip.margin).toBeGreaterThan(0.8 * Math.atan(0.4 / wagon.wheelbaseM));
    expect(even.margin - tip.margin).toBeLessThan(2.5 * Math.atan(0.4 / wagon.wheelbaseM));
  });

  it('hangs the belly on its edge, the deeper the sooner', () => {
    const rampover = (dropM: number) => {
      const found = check('rampover', { features: [ledge(dropM)] });
      return Math.min(found.margin, check('belly', { features: [ledge(dropM)] }).margin);
    };
    expect(rampover(0.2)).toBeLessThan(levelMargin('belly'));
    expect(rampover(0.4)).toBeLessThan(rampover(0.2));
    expect(rampover(0.8)).toBeLessThan(0);
    expect(check('belly', { features: [ledge(0.8)] }).stationM).toBeCloseTo(0, 0);
  });

  it('brings the front corner to the lower ground, and the tail to the edge', () => {
    const face = { features: [ledge(1.5, 40)] };
    expect(check('approach', face).margin).toBeLessThan(levelMargin('approach') - 0.1);
    expect(check('approach', face).stationM).toBeGreaterThan(0);
    expect(check('departure', face).margin).toBeLessThan(levelMargin('departure') - 0.1);
    expect(check('departure', face).stationM).toBeLessThan(1.5 / Math.tan(rad(40)));
  });

  it('is rolled over and not slid down while it is shorter than the vehicle', () => {
    const down = check('braking', { slopeRad: rad(-10), features: [ledge(0.3)] });
    expect(down.margin).toBeGreaterThan(0);
    expect(down.margin).toBeLessThan(check('braking', { slopeRad: rad(-10) }).margin - 0.02);
  });
});

describe('ground that falls for longer than the vehicle, on a plane that is level', () => {
  /** Ledges end to end: a face of `deg` for as long as the line. */
  const fall = (deg: number): Feature[] => {
    const lengthM = 1.5 / Math.tan(rad(deg));
    return [-2, -1, 0, 1, 2, 3].map((i) => ({ ...ledge(1.5, deg), xM: i * lengthM }) as Feature);
  };

  it('slides as the same slope of the plane does', () => {
    const sliding = degrees(Math.atan(flatGround.slidingAdhesion));
    expect(check('braking', { features: fall(sliding - 2) }).margin).toBeGreaterThan(0);
    const down = check('braking', { features: fall(sliding + 2) });
    expect(down.margin).toBeLessThan(0);
    expect(down.cause).toBe('wheels slide on the way down');
  });

  it('asks the engine for the slope under the wheels', () => {
    expect(degrees(engine({ features: fall(18) }).need)).toBeCloseTo(18, 1);
  });

  it('met from below, cannot be held from rolling back where it is too steep', () => {
    const rise = fall(36).map((one) => ({ ...one, riseM: 1.5 }) as Feature);
    const up = check('braking', { features: rise });
    expect(up.margin).toBeLessThan(0);
    expect(up.cause).toBe('brakes cannot hold it on the climb');
  });
});

it('holding it on the way down leaves less to hold it sideways', () => {
  const side = (slopeRad: number) => check('side hold', { slopeRad, camberRad: rad(10) }).margin;
  expect(side(rad(-20))).toBeLessThan(side(0) - 0.03);
  const tan = Math.tan(rad(10));
  expect(side(rad(-29))).toBeLessThan(Math.sqrt(0.6 ** 2 - tan ** 2) - tan);
});
