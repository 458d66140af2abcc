import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Rest, Upward } from '../../src/terrain/inclinometer.ts';
import { inclinationOf, upwardOf, zeroOf } from '../../src/terrain/inclinometer.ts';
import { rad } from '../../src/units.ts';

const SEED = 1125;
const RUNS = { seed: SEED, numRuns: 2000 };

const angle = (most: number) => fc.double({ min: -rad(most), max: rad(most), noNaN: true });
/** The true vertical over ground of any slope and camber that is driven, in the phone's axes. */
const anyGround = () =>
  fc.tuple(angle(40), angle(30)).map(([slopeRad, camberRad]) => vertical(slopeRad, camberRad));
/** The axis of an error, which lies in the phone's plane, and its size. */
const anyTilt = () => fc.tuple(angle(180), angle(4.5));

function vertical(slopeRad: number, camberRad: number): Upward {
  const y = Math.sin(slopeRad);
  const x = -Math.sin(camberRad);
  return { x, y, z: Math.sqrt(1 - x * x - y * y) };
}

function rest(up: Upward, turnRad = NaN): Rest {
  return { up, spreadRad: 0, turnRad };
}

/** The phone turned end for end. */
function turned({ x, y, z }: Upward): Upward {
  return { x: -x, y: -y, z };
}

/** A vector turned about an axis, by the formula of Rodrigues. */
function about(v: Upward, axis: Upward, byRad: number): Upward {
  const [c, s] = [Math.cos(byRad), Math.sin(byRad)];
  const dot = (v.x * axis.x + v.y * axis.y + v.z * axis.z) * (1 - c);
  return {
    x: v.x * c + (axis.y * v.z - axis.z * v.y) * s + axis.x * dot,
    y: v.y * c + (axis.z * v.x - axis.x * v.z) * s + axis.y * dot,
    z: v.z * c + (axis.x * v.y - axis.y * v.x) * s + axis.z * dot,
  };
}

/** What a phone with a constant error says. */
function said(up: Upward, [towards, byRad]: readonly [number, number], yawRad = 0): Upward {
  const tilted = about(up, { x: Math.cos(towards), y: Math.sin(towards), z: 0 }, byRad);
  return about(tilted, { x: 0, y: 0, z: 1 }, yawRad);
}

describe('turning the phone', () => {
  test('end for end swaps both signs', () => {
    fc.assert(
      fc.property(anyGround(), (ground) => {
        const one = inclinationOf(rest(ground), null);
        const other = inclinationOf(rest(turned(ground)), null);
        expect(other.slopeRad).toBeCloseTo(-one.slopeRad, 12);
        expect(other.camberRad).toBeCloseTo(-one.camberRad, 12);
        expect(other.plusMinusRad).toBeCloseTo(one.plusMinusRad, 12);
      }),
      RUNS,
    );
  });

  test('a quarter to the left makes the camber what the slope was, and the slope what the camber was to the right', () => {
    fc.assert(
      fc.property(anyGround(), (ground) => {
        const before = inclinationOf(rest(ground), null);
        const after = inclinationOf(rest({ x: ground.y, y: -ground.x, z: ground.z }), null);
        expect(after.slopeRad).toBeCloseTo(before.camberRad, 12);
        expect(after.camberRad).toBeCloseTo(-before.slopeRad, 12);
      }),
      RUNS,
    );
  });
});

describe('zeroing', () => {
  test('takes off any constant tilt, on whatever ground it was zeroed', () => {
    fc.assert(
      fc.property(anyGround(), anyGround(), anyTilt(), (spot, ground, tilt) => {
        const zero = zeroOf(rest(said(spot, tilt)), rest(said(turned(spot), tilt)));
        if (typeof zero === 'string') throw new Error(zero);
        const true_ = inclinationOf(rest(ground), null);
        const read = inclinationOf(rest(said(ground, tilt)), zero);
        expect(read.slopeRad).toBeCloseTo(true_.slopeRad, 9);
        expect(read.camberRad).toBeCloseTo(true_.camberRad, 9);
      }),
      RUNS,
    );
  });

  test('leaves the whole inclination right where the sensor is also turned in its case, which no reversal can find', () => {
    fc.assert(
      fc.property(anyGround(), anyGround(), anyTilt(), angle(2), (spot, ground, tilt, yawRad) => {
        const zero = zeroOf(rest(said(spot, tilt, yawRad)), rest(said(turned(spot), tilt, yawRad)));
        if (typeof zero === 'string') throw new Error(zero);
        const { slopeRad, camberRad } = inclinationOf(rest(said(ground, tilt, yawRad)), zero);
        const across = Math.hypot(Math.sin(slopeRad), Math.sin(camberRad));
        expect(across).toBeCloseTo(Math.hypot(ground.x, ground.y), 9);
      }),
      RUNS,
    );
  });

  test('errs by no more than its ± where the hand turned by half a turn within five degrees', () => {
    fc.assert(
      fc.property(anyGround(), anyTilt(), angle(5), (spot, tilt, slackRad) => {
        const again = about(turned(spot), { x: 0, y: 0, z: 1 }, slackRad);
        const zero = zeroOf(rest(said(spot, tilt), 0), rest(said(again, tilt), Math.PI + slackRad));
        if (typeof zero === 'string') {
          expect(zero).toBe('too far off');
          return;
        }
        const { slopeRad, camberRad } = inclinationOf(rest(said({ x: 0, y: 0, z: 1 }, tilt)), zero);
        expect(Math.hypot(slopeRad, camberRad)).toBeLessThanOrEqual(zero.plusMinusRad);
      }),
      RUNS,
    );
  });

  test('refuses what was not turned, by the turn where the phone tells it', () => {
    fc.assert(
      fc.property(anyGround(), angle(155), angle(180), (spot, byRad, fromRad) => {
        expect(zeroOf(rest(spot, fromRad), rest(spot, fromRad + byRad))).toBe('not turned');
      }),
      RUNS,
    );
  });

  test('refuses what was not turned by its size where the phone does not tell, unless the spot was level', () => {
    fc.assert(
      fc.property(anyGround(), (spot) => {
        const level = spot.z > Math.cos(rad(5));
        expect(typeof zeroOf(rest(spot), rest(spot)) === 'string').toBe(!level);
      }),
      RUNS,
    );
  });
});

test('the angles of an event give a unit vector', () => {
  fc.assert(
    fc.property(angle(180), angle(90), (betaRad, gammaRad) => {
      const { x, y, z } = upwardOf(betaRad, gammaRad);
      expect(Math.hypot(x, y, z)).toBeCloseTo(1, 12);
    }),
    RUNS,
  );
});
