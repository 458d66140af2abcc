import { describe, expect, it } from 'vitest';
import { bandsOf, COARSE, FINE, sweepOf } from '../../src/grade/sweep.ts';
import { groundsOf, verdictOn } from '../../src/grade/verdict.ts';
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
  it('says at each offset the word that the verdict says there', () => {
    const sweep = sweepOf(vehicle, grounds, 1, { acrossM: 0.4, alongM: 0.5, judged: true })!;
    expect(sweep.words).toHaveLength(sweep.offsetM.length);
    sweep.offsetM.forEach((offsetM, i) => {
      expect(sweep.words[i]).toBe(verdictOn(vehicle, grounds, offsetM).ladder[1].word);
    });
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
    expect(sweepOf(vehicle, { entered: null, worst: null }, 0, FINE)).toBeNull();
  });
});

describe('bands that go', () => {
  const offsets = [-0.3, -0.2, -0.1, 0, 0.1, 0.2, 0.3];

  it("lose the driver's error at both ends", () => {
    const words = ['goes', 'goes', 'goes with care', 'goes', 'goes', 'needs a pull', 'goes'] as const;
    const [band, ...more] = bandsOf(offsets, words, 0.1);
    expect(band.fromM).toBeCloseTo(-0.2, 9);
    expect(band.toM).toBeCloseTo(0, 9);
    expect(more).toEqual([]);
  });

  it('are none where nothing goes, or where it goes in one place only', () => {
    expect(bandsOf(offsets, Array(7).fill('needs momentum') as 'needs momentum'[], 0.1)).toEqual([]);
    const words = [
      'does not go',
      'does not go',
      'goes',
      'does not go',
      'goes',
      'goes',
      'does not go',
    ] as const;
    expect(bandsOf(offsets, words, 0.1)).toEqual([]);
  });
});
