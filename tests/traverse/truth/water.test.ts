import { describe, expect, it } from 'vitest';
import { liftedShare } from '../../../src/traverse/buoyancy.ts';
import { chassisOf } from '../../../src/traverse/chassis.ts';
import { traverseAssess } from '../../../src/traverse/traverse.ts';
import { classValues } from '../../../src/vehicle/classes.ts';
import { flatGround, openCorridor } from '../scenes.ts';
import { largest } from '../rigid.ts';
import { NO_AIDS } from '../../../src/vehicle/aids.ts';

const ford = (depthM: number) => ({
  ...flatGround,
  corridor: openCorridor,
  features: [{ kind: 'water', fromM: -3, toM: 3, depthM, flowMps: 0 } as const],
});

describe('depth at which a vehicle floats: UNSW full-scale tank tests (ABC News 18 Jun 2016; newatlas 43930)', () => {
  it.each([
    // Floor heights and sizes are not printed with the tests; typical ones of such a vehicle are taken.
    ['four-wheel drive of 2.5 t, 0.95 m', 2500, 2.85, 1.6, 0.45, 0.95],
    ['small car of 1.05 t, 0.60 m', 1050, 2.45, 1.45, 0.25, 0.6],
  ])('%s (tolerance 0.1 m)', (_, massKg, wheelbaseM, trackM, floorHeightM, floatsM) => {
    const values = {
      ...classValues('mid-size wagon'),
      massKg,
      wheelbaseM,
      frontTrackWidthM: trackM,
      rearTrackWidthM: trackM,
      floorHeightM,
      roofLoadKg: 0,
    };
    const chassis = chassisOf(values, NO_AIDS);
    const depthM = largest(2, (depth) => liftedShare(ford(depth), chassis, 0) < 1);
    expect(Math.abs(depthM - floatsM)).toBeLessThan(0.1);
  });
});

it('water to the floor takes no load; above it ever more, until it carries the vehicle', () => {
  const values = classValues('mid-size wagon');
  const traction = (depthM: number) => {
    const found = traverseAssess(values, ford(depthM), 0, NO_AIDS);
    if (!found.known) throw new Error(found.cause);
    return found.checks.find(({ name }) => name === 'traction')!;
  };
  const dry = traction(values.floorHeightM).margin;
  expect(traction(values.floorHeightM + 0.2).margin).toBeLessThan(dry);
  expect(traction(values.floorHeightM + 0.6)).toMatchObject({ cause: 'the water carries it' });
  expect(traction(values.floorHeightM + 0.6).margin).toBeLessThan(0);
});
