import { describe, expect, test } from 'vitest';
import { spotterFor } from '../../src/brief/spotter.ts';
import { stoppedOn } from '../../src/brief/stopped.ts';
import type { Stretch } from '../../src/terrain/obstacle.ts';
import { rad } from '../../src/units.ts';

const FLAT: Stretch = {
  lengthM: 10,
  plane: { slopeRad: 0, camberRad: 0 },
  surface: { material: 'gravel', condition: 'dry' },
  corridor: { leftM: 4, leftBound: 'open', rightM: 4, rightBound: 'open', headroomM: 5 },
  features: [],
  hows: {},
};

function stretch(camberDeg: number, corridor: Partial<Stretch['corridor']> = {}): Stretch {
  const plane = { slopeRad: 0, camberRad: rad(camberDeg) };
  return { ...FLAT, plane, corridor: { ...FLAT.corridor, ...corridor } };
}

const WATER = { kind: 'water', fromM: -2, toM: 2, depthM: 0.4, flowMps: 1 } as const;

describe('the spotter', () => {
  test('stands on the high side', () => {
    expect(spotterFor(stretch(6), 0, 0, 2).side).toBe('left');
    expect(spotterFor(stretch(-6), 0, 0, 2).side).toBe('right');
    expect(spotterFor(stretch(6), 0, 0, 2).text).toContain('left, the high side');
  });

  test('never stands on the low side, whatever the room there', () => {
    for (const bound of ['open', 'bank', 'trees', 'rock', 'drop'] as const)
      for (const leftM of [0.5, 1.5, 4, 20]) {
        const { side } = spotterFor(stretch(-6, { leftM, leftBound: bound, rightM: 1.2 }), 0.2, 0, 2);
        expect(side).not.toBe('left');
      }
  });

  test('never stands between a vehicle and a drop', () => {
    expect(spotterFor(stretch(0, { rightBound: 'drop', rightM: 20 }), 0, 0, 2).side).toBe('left');
    const none = spotterFor(stretch(6, { leftBound: 'drop' }), 0.2, 0, 2);
    expect(none.side).toBeNull();
    expect(none.text).toContain('no safe side');
  });

  test('stands above: ahead on a climb, behind on a descent', () => {
    expect(spotterFor(FLAT, rad(12), 0, 2).text).toContain('ahead and above');
    expect(spotterFor(FLAT, rad(-12), 0, 2).text).toContain('behind and above');
    expect(spotterFor(FLAT, rad(1), 0, 2).text).toContain('well ahead');
  });

  test('takes the side with more room where it lies level, counted from the line', () => {
    const walls = { leftM: 3, leftBound: 'rock', rightM: 3, rightBound: 'rock' } as const;
    expect(spotterFor(stretch(0, walls), 0, 0.8, 2).side).toBe('right');
    expect(spotterFor(stretch(0, walls), 0, -0.8, 2).side).toBe('left');
  });

  test('goes past the end where there is no room abreast', () => {
    const narrow = { leftM: 1.5, leftBound: 'bank', rightM: 1.5, rightBound: 'bank' } as const;
    expect(spotterFor(stretch(0, narrow), 0.2, 0, 1.9)).toMatchObject({ abreast: false });
    expect(spotterFor(FLAT, 0.2, 0, 1.9)).toMatchObject({ abreast: true });
  });

  test('stays out of the water', () => {
    expect(spotterFor({ ...FLAT, features: [WATER] }, 0, 0, 2).text).toContain('out of the water');
  });
});

describe('what to do if it stops', () => {
  test('follows the ground', () => {
    expect(stoppedOn(FLAT, 0)).toEqual(['level ground']);
    expect(stoppedOn(FLAT, rad(10))).toEqual(['uphill']);
    expect(stoppedOn(FLAT, rad(-10))).toEqual(['downhill']);
    expect(stoppedOn(stretch(-8), rad(10))).toEqual(['side slope', 'uphill']);
    expect(stoppedOn({ ...FLAT, features: [WATER] }, 0)).toEqual(['water']);
  });

  test('takes what nobody knows for both ways', () => {
    expect(stoppedOn(FLAT, null)).toEqual(['uphill', 'downhill']);
    expect(stoppedOn({ ...FLAT, plane: { slopeRad: 0, camberRad: null } }, 0)).toEqual(['side slope']);
  });
});
