import { describe, expect, it } from 'vitest';
import { COARSE, FINE, sweepOf } from '../../src/grade/sweep.ts';
import { groundsOf } from '../../src/grade/verdict.ts';
import { presetNamed, stretchFrom } from '../../src/terrain/preset.ts';
import { rad } from '../../src/units.ts';
import { classValues } from '../../src/vehicle/classes.ts';
import type { Vehicle } from '../../src/vehicle/vehicle.ts';

const vehicle: Vehicle = {
  id: 'v',
  name: 'compact',
  driver: '',
  vehicleClass: 'compact 4x4',
  values: classValues('compact 4x4'),
  estimated: [],
};

const grounds = groundsOf(
  stretchFrom(presetNamed('rutted climb')!, { slopeRad: rad(4), lengthM: 6 }, 'taped'),
  'as recorded',
  null,
);

describe('the sweep sideways', () => {
  it('finds bands with their best place and the tracks that it is open to, only when judged', () => {
    const judged = sweepOf(vehicle, grounds, 1, FINE)!;
    expect(judged.bands!.length).toBeGreaterThan(0);
    for (const { fromM, toM, bestM, tracks } of judged.bands!) {
      expect(bestM).toBeGreaterThanOrEqual(fromM - 1e-9);
      expect(bestM).toBeLessThanOrEqual(toM + 1e-9);
      const own = Math.max(vehicle.values.frontTrackWidthM, vehicle.values.rearTrackWidthM);
      expect(tracks!.fromM).toBeLessThanOrEqual(own);
      expect(tracks!.toM).toBeGreaterThanOrEqual(own);
    }
    expect(sweepOf(vehicle, grounds, 1, COARSE)!.bands).toBeNull();
  });

  it('holds the main line and shows what lies beyond the room as short', () => {
    const { offsetM, stationM, ease } = sweepOf(vehicle, grounds, 0, COARSE)!;
    expect(Array.from(offsetM).some((one) => Math.abs(one) < 1e-9)).toBe(true);
    expect(ease).toHaveLength(offsetM.length * stationM.length);
    expect(Array.from(ease.subarray(0, stationM.length)).every((one) => one < 0)).toBe(true);
  });

  it('looks more closely when fine', () => {
    const [coarse, fine] = [COARSE, FINE].map((grain) =>
      sweepOf(vehicle, grounds, 0, { ...grain, judged: false })!,
    );
    expect(fine.offsetM.length).toBeGreaterThan(coarse.offsetM.length);
    expect(fine.stationM.length).toBeGreaterThan(coarse.stationM.length);
  });

  it('is nothing on ground that is not known', () => {
    expect(sweepOf(vehicle, { entered: null, worst: [] }, 0, FINE)).toBeNull();
  });
});
