import { describe, expect, it } from 'vitest';
import { groundOf, knownSlope } from '../../src/terrain/ground.ts';
import type { Stretch } from '../../src/terrain/obstacle.ts';
import { PRESETS, presetNamed, stretchFrom } from '../../src/terrain/preset.ts';
import { CONDITIONS, gripOf, MATERIALS } from '../../src/terrain/surface.ts';
import type { Rut } from '../../src/terrain/rut.ts';
import { AS_ENTERED, AT_WORST } from '../../src/terrain/take.ts';
import { rad } from '../../src/units.ts';

const climb = stretchFrom(presetNamed('rutted climb')!, { slopeRad: rad(15), leftDepthM: 0.4 });
const track = { slopeRad: rad(8), plusMinusRad: rad(2) };

function unmeasured(stretch: Stretch): Stretch {
  return { ...stretch, plane: { ...stretch.plane, slopeRad: null } };
}

describe('the slope that counts', () => {
  it('is the one measured at the pin; else the track says it; else nobody does', () => {
    expect(knownSlope(climb, track)).toMatchObject({ slopeRad: rad(15), from: 'measured here' });
    expect(knownSlope(unmeasured(climb), track)).toMatchObject({ slopeRad: rad(8), from: 'track' });
    expect(knownSlope(unmeasured(climb), null)).toBeNull();
    expect(knownSlope(unmeasured(climb), { slopeRad: NaN, plusMinusRad: NaN })).toBeNull();
    expect(groundOf(unmeasured(climb), 'as recorded', null, AS_ENTERED)).toBeNull();
  });
});

describe('the ground for one direction', () => {
  it('turns slope, camber, sides and features round', () => {
    const stretch: Stretch = {
      ...climb,
      plane: { slopeRad: rad(15), camberRad: rad(4) },
      corridor: { ...climb.corridor, leftM: 2, rightM: 1.5, rightBound: 'drop' },
    };
    const back = groundOf(stretch, 'reversed', null, AS_ENTERED)!;
    expect(back.slopeRad).toBeCloseTo(rad(-15), 12);
    expect(back.camberRad).toBeCloseTo(rad(-4), 12);
    expect(back.corridor).toMatchObject({ leftM: 1.5, leftBound: 'drop', rightM: 2 });
    expect(back.features[0]).toMatchObject({ centreYM: -1.55 / 2, depthM: 0.4 });
  });

  it('at its worst is steeper, deeper, narrower and slipperier, by how each value was got', () => {
    const entered = groundOf(climb, 'as recorded', null, AS_ENTERED)!;
    const worst = groundOf(climb, 'as recorded', null, AT_WORST)!;
    expect(worst.slopeRad).toBeCloseTo(entered.slopeRad + rad(1), 12);
    expect((worst.features[0] as Rut).depthM).toBeCloseTo(0.42, 12);
    expect(worst.corridor.leftM).toBeLessThan(entered.corridor.leftM);
    expect(worst.peakAdhesion).toBe(gripOf(climb.surface).peak.low);
    const byEye = groundOf({ ...climb, hows: {} }, 'as recorded', null, AT_WORST)!;
    expect(byEye.features[0]).toMatchObject({ depthM: 0.5 });
  });
});

describe('presets', () => {
  it.each(PRESETS.map((preset) => [preset.name, preset] as const))(
    '%s asks six numbers at most',
    (_, preset) => {
      expect(preset.questions.length).toBeLessThanOrEqual(6);
      expect(stretchFrom(preset).plane.slopeRad).toBeNull();
    },
  );
});

describe('surfaces', () => {
  it('every one carries ordered ranges and its source', () => {
    for (const material of MATERIALS)
      for (const condition of CONDITIONS) {
        const grip = gripOf({ material, condition });
        for (const range of [grip.peak, grip.sliding, grip.rolling]) {
          expect(range.low).toBeGreaterThan(0);
          expect(range.low).toBeLessThanOrEqual(range.usual);
          expect(range.usual).toBeLessThanOrEqual(range.high);
        }
        expect(grip.sliding.usual).toBeLessThanOrEqual(grip.peak.usual);
        expect(grip.source).not.toBe('');
      }
  });
});
