import { describe, expect, it } from 'vitest';
import { axleOf } from '../../src/vehicle/axle.ts';
import { crestHeightM, PARTS, underside } from '../../src/vehicle/body.ts';
import { classValues } from '../../src/vehicle/classes.ts';
import { VEHICLE_CLASSES } from '../../src/vehicle/vehicle.ts';

const hub = (values: ReturnType<typeof classValues>, end: 'front' | 'rear') =>
  axleOf(values, end, false, 9.80665).hubHeightM;
const points = (values: ReturnType<typeof classValues>) =>
  underside(values, hub(values, 'front'), hub(values, 'rear'));

describe.each(VEHICLE_CLASSES)('the underside of a %s', (vehicleClass) => {
  const values = classValues(vehicleClass);
  const all = points(values);

  it('is above the ground, and as low as the belly and both differentials were measured', () => {
    for (const { zM } of all) expect(zM).toBeGreaterThan(0);
    const lowest = (part: string) => Math.min(...all.filter((p) => p.part === part).map((p) => p.zM));
    expect(lowest('front differential')).toBe(values.frontDifferentialHeightM);
    expect(lowest('rear differential')).toBe(values.rearDifferentialHeightM);
    expect(Math.min(lowest('belly'), lowest('crest of the belly'))).toBeGreaterThanOrEqual(
      values.bellyHeightM,
    );
  });

  it('ends at its overhangs', () => {
    const x = all.map((p) => p.xM);
    expect(Math.max(...x)).toBeCloseTo(values.wheelbaseM / 2 + values.frontOverhangM, 9);
    expect(Math.min(...x)).toBeCloseTo(-values.wheelbaseM / 2 - values.rearOverhangM, 9);
  });

  it('is the same left and right but for the differentials', () => {
    for (const p of all) {
      if (p.part.includes('differential')) continue;
      const mirrored = all.some((q) => q.xM === p.xM && Math.abs(q.yM + p.yM) < 1e-12 && q.zM === p.zM);
      expect(mirrored).toBe(true);
    }
  });
});

it('every part has its points', () => {
  const parts = new Set(
    VEHICLE_CLASSES.flatMap((vehicleClass) => points(classValues(vehicleClass)).map((p) => p.part)),
  );
  for (const part of PARTS) expect(parts).toContain(part);
});

it('a sharper crest to clear lifts the middle most', () => {
  const middle = crestHeightM(0.36, 2.8, 0, 0.4);
  expect(crestHeightM(0.36, 2.8, 0, 0.5)).toBeGreaterThan(middle);
  expect(crestHeightM(0.36, 2.8, 0.7, 0.4)).toBeLessThan(middle);
});

it('the housing of a beam moves with its axle, that of an independent one with the body', () => {
  const wagon = classValues('mid-size wagon');
  const axleOfPart = (values: typeof wagon, part: string) =>
    points(values).find((p) => p.part === part)?.axle;
  expect(axleOfPart({ ...wagon, rearAxle: 'beam' }, 'rear differential')).toBe('rear');
  expect(axleOfPart({ ...wagon, rearAxle: 'independent' }, 'rear differential')).toBeNull();
});
