import { describe, expect, test } from 'vitest';
import type { Sample } from '../../src/terrain/inclinometer.ts';
import {
  howOf,
  inclinationOf,
  isStill,
  onItsBack,
  recent,
  restOf,
  upwardOf,
  zeroOf,
} from '../../src/terrain/inclinometer.ts';
import { degrees, rad } from '../../src/units.ts';

/** A phone whose top edge rises by `betaDeg` from each moment on. */
function told(...moments: readonly (readonly [atMs: number, betaDeg: number])[]): Sample[] {
  return moments.map(([atMs, betaDeg]) => ({ atMs, up: upwardOf(rad(betaDeg), 0), turnRad: NaN }));
}

describe('a phone lies still', () => {
  test('when it has said the same for a second, though it said it but once', () => {
    const samples = told([0, 12]);
    expect(restOf(samples, 999)).toBeNull();
    const rest = restOf(samples, 1000);
    expect(isStill(rest)).toBe(true);
    expect(degrees(inclinationOf(rest!, null).slopeRad)).toBeCloseTo(12, 9);
  });

  test('not while it moves, and again a second after it came to rest', () => {
    const samples = told([0, 12], [1500, 15], [1600, 12.5]);
    expect(isStill(restOf(samples, 1400))).toBe(true);
    expect(isStill(restOf(samples, 1700))).toBe(false);
    expect(isStill(restOf(samples, 2500))).toBe(false);
    expect(isStill(restOf(samples, 2600))).toBe(true);
  });

  test('within a trembling of a tenth of a degree, of which the mean is taken', () => {
    const samples = told(...Array.from({ length: 40 }, (_, i) => [i * 50, i % 2 ? 8.1 : 7.9] as const));
    const rest = restOf(samples, 2000)!;
    expect(isStill(rest)).toBe(true);
    expect(degrees(rest.spreadRad)).toBeCloseTo(0.1, 3);
    expect(degrees(inclinationOf(rest, null).slopeRad)).toBeCloseTo(8, 3);
  });

  test('each sample weighed by how long it held', () => {
    const rest = restOf(told([0, 10], [750, 14]), 1000)!;
    expect(degrees(inclinationOf(rest, null).slopeRad)).toBeCloseTo(11, 1);
    expect(isStill(rest)).toBe(false);
  });

  test('and old samples are dropped but for the one that still holds', () => {
    const samples = told([0, 1], [100, 2], [5000, 3]);
    expect(recent(samples, 5500)).toEqual(samples.slice(1));
    expect(restOf(recent(samples, 5500), 5500)).toEqual(restOf(samples, 5500));
  });
});

test('a phone on its face or standing does not lie on its back', () => {
  expect([0, 40, 90, 180].map((beta) => onItsBack(upwardOf(rad(beta), 0)))).toEqual([
    true,
    true,
    false,
    false,
  ]);
});

test('a reading counts as what its ± allows: taped once zeroed, paced before', () => {
  const rest = restOf(told([0, 20]), 1000)!;
  const level = [restOf(told([0, 1]), 1000)!, restOf(told([0, -1]), 1000)!] as const;
  const zero = zeroOf(...level);
  if (typeof zero === 'string') throw new Error(zero);
  expect(howOf(inclinationOf(rest, zero))).toBe('taped');
  expect(howOf(inclinationOf(rest, null))).toBe('paced');
  expect(howOf(inclinationOf({ ...rest, spreadRad: rad(4) }, zero))).toBe('by eye');
});

test('a zero is not taken of a phone that moves', () => {
  const rest = restOf(told([0, 1]), 1000)!;
  expect(zeroOf({ ...rest, spreadRad: rad(1) }, rest)).toBe('moving');
});
