import { describe, expect, it } from 'vitest';
import { drawsThatGo, outOfHundred } from '../../src/grade/sureness.ts';
import { groundsOf, verdictOn } from '../../src/grade/verdict.ts';
import { DRAWS, drawn } from '../../src/terrain/draws.ts';
import { groundOf } from '../../src/terrain/ground.ts';
import { PRESETS, stretchFrom } from '../../src/terrain/preset.ts';
import { assessTraverse } from '../../src/traverse/traverse.ts';
import { rad } from '../../src/units.ts';
import { classValues } from '../../src/vehicle/classes.ts';
import { VEHICLE_CLASSES } from '../../src/vehicle/vehicle.ts';

/** Draws that the coarser samples and the narrowed search may see otherwise than the whole traverse does. */
const MOST_APART = 2;

/** Answers that leave presets in doubt rather than out of the question. */
const EASIER: Readonly<Record<string, Readonly<Record<string, number>>>> = {
  'cross-axle holes': { depthM: 0.25 },
  ledge: { riseM: 0.12 },
  ditch: { depthM: 0.2, widthM: 3 },
  rocks: { heightM: 0.1, secondM: 0.08 },
  log: { diameterM: 0.12 },
};

const cases = PRESETS.flatMap((preset, i) =>
  [2, 9].map((slopeDeg) => ({
    name: preset.name,
    slopeDeg,
    preset,
    vehicleClass: VEHICLE_CLASSES[(i + slopeDeg) % VEHICLE_CLASSES.length],
  })),
);

describe('how many draws go', () => {
  // Every draw of every check at every fine station, against what is looked at to save time.
  it.each(cases)(
    '$name at $slopeDeg°: as many as when nothing is left out',
    ({ preset, slopeDeg, vehicleClass }) => {
      const lockers = { rearDifferential: 'locker', frontDifferential: 'locker' } as const;
      const values = { ...classValues(vehicleClass), ...lockers };
      const stretch = stretchFrom(preset, { ...EASIER[preset.name], slopeRad: rad(slopeDeg) });
      const vehicle = { id: 'v', name: 'v', driver: '', vehicleClass, values, estimated: [] };
      const verdict = verdictOn(vehicle, groundsOf(stretch, 'as recorded', null), 0);
      const whole = Array.from({ length: DRAWS }, (_, draw) => {
        const ground = groundOf(stretch, 'as recorded', null, drawn(draw))!;
        const [found] = assessTraverse(values, [ground], 0, [verdict.rung.aids]);
        return found.known && found.checks.every((check) => check.margin >= 0);
      }).filter((goes) => goes).length;
      const [narrowed] = drawsThatGo([{ values, offsetM: 0, verdict }], stretch, 'as recorded', null);
      expect(Math.abs(narrowed! - whole)).toBeLessThanOrEqual(MOST_APART);
    },
  );

  it('a hundred only where all go, nothing only where none does', () => {
    expect(outOfHundred(DRAWS)).toBe(100);
    expect(outOfHundred(DRAWS - 1)).toBe(99);
    expect(outOfHundred(1)).toBe(1);
    expect(outOfHundred(0)).toBe(0);
  });
});
