import { describe, expect, test } from 'vitest';
import { upOf } from '../../../src/traverse/up.ts';
import type { Rest } from '../../../src/terrain/inclinometer.ts';
import { inclinationOf, upwardOf, zeroOf } from '../../../src/terrain/inclinometer.ts';
import { degrees, rad } from '../../../src/units.ts';

type Matrix = readonly (readonly [number, number, number])[];

function times(a: Matrix, b: Matrix): Matrix {
  const at = (i: number, j: number) => a[i][0] * b[0][j] + a[i][1] * b[1][j] + a[i][2] * b[2][j];
  return [0, 1, 2].map((i) => [at(i, 0), at(i, 1), at(i, 2)] as const);
}

/**
 * Device Orientation and Motion (W3C), `deviceorientation` event: the device frame is taken to the earth's by rotating
 * about z by alpha, about the new x by beta, about the new y by gamma, each by the right hand; R = Rz Rx Ry.
 */
function toEarth(alphaRad: number, betaRad: number, gammaRad: number): Matrix {
  const [ca, sa, cb, sb] = [Math.cos(alphaRad), Math.sin(alphaRad), Math.cos(betaRad), Math.sin(betaRad)];
  const [cg, sg] = [Math.cos(gammaRad), Math.sin(gammaRad)];
  const z: Matrix = [
    [ca, -sa, 0],
    [sa, ca, 0],
    [0, 0, 1],
  ];
  const x: Matrix = [
    [1, 0, 0],
    [0, cb, -sb],
    [0, sb, cb],
  ];
  const y: Matrix = [
    [cg, 0, sg],
    [0, 1, 0],
    [-sg, 0, cg],
  ];
  return times(times(z, x), y);
}

function lying(betaDeg: number, gammaDeg: number): Rest {
  return { up: upwardOf(rad(betaDeg), rad(gammaDeg)), spreadRad: 0, turnRad: NaN };
}

describe('Device Orientation and Motion, W3C', () => {
  test('the vertical is the third row of the matrix that the specification defines, whatever the heading', () => {
    for (const alpha of [0, 77, 200, 359])
      for (const beta of [-170, -60, -5, 0, 12.5, 89])
        for (const gamma of [-80, -7, 0, 3.3, 45]) {
          const [x, y, z] = toEarth(rad(alpha), rad(beta), rad(gamma))[2];
          const up = upwardOf(rad(beta), rad(gamma));
          expect(up.x).toBeCloseTo(x, 12);
          expect(up.y).toBeCloseTo(y, 12);
          expect(up.z).toBeCloseTo(z, 12);
        }
  });

  // Worked cases of the same document: lying flat, {beta: 0, gamma: 0}; screen upright with its top up, {beta: 90};
  // accelerationIncludingGravity of a device flat with the screen up, {x: 0, y: 0, z: 9.8}.
  test('flat it points out of the screen; upright, to the top edge', () => {
    expect(upwardOf(0, 0)).toMatchObject({ y: 0, z: 1 });
    expect(upwardOf(0, 0).x).toBeCloseTo(0, 12);
    expect(upwardOf(rad(90), 0).y).toBeCloseTo(1, 12);
  });
});

/**
 * The reversal test of a spirit level, as bricklayers' and surveyors' handbooks give it (common practice): read, turn
 * end for end, read again; the true slope is half the difference of the readings, the error half their sum.
 */
describe('the reversal test of a spirit level', () => {
  test.each([
    { first: 3.4, turned: -1.8, slope: 2.6, error: 0.8 },
    { first: 1.5, turned: 1.5, slope: 0, error: 1.5 },
    { first: -0.7, turned: 1.1, slope: -0.9, error: 0.2 },
  ])(
    '$first° and $turned° are a slope of $slope° and an error of $error°',
    ({ first, turned, slope, error }) => {
      const zero = zeroOf(lying(first, 0), lying(turned, 0));
      if (typeof zero === 'string') throw new Error(zero);
      expect(degrees(Math.asin(zero.up.y))).toBeCloseTo(error, 9);
      expect(degrees(inclinationOf(lying(first, 0), zero).slopeRad)).toBeCloseTo(slope, 9);
    },
  );
});

test('slope and camber are those from which the traverse takes gravity (ISO 8855 axes: x forward, y left, z up)', () => {
  for (const [beta, gamma] of [
    [12, 0],
    [0, 9],
    [-20, -14],
    [25, 18],
  ]) {
    const { slopeRad, camberRad } = inclinationOf(lying(beta, gamma), null);
    const up = upOf({ slopeRad, camberRad } as Parameters<typeof upOf>[0])!;
    const phone = upwardOf(rad(beta), rad(gamma));
    expect(up.x).toBeCloseTo(phone.y, 12);
    expect(up.y).toBeCloseTo(-phone.x, 12);
    expect(up.z).toBeCloseTo(phone.z, 12);
  }
  expect(degrees(inclinationOf(lying(12, 0), null).slopeRad)).toBeCloseTo(12, 9);
  // gamma is positive with the left side up, as turning about the top edge by the right hand lifts it.
  expect(degrees(inclinationOf(lying(0, 9), null).camberRad)).toBeCloseTo(9, 9);
});
