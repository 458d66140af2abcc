import { describe, expect, it } from 'vitest';
import type { Feature } from '../../src/terrain/feature.ts';
import { heightM } from '../../src/terrain/feature.ts';

const rut: Feature = {
  kind: 'rut',
  centreYM: 0.8,
  widthM: 0.4,
  depthM: 0.3,
  fromM: -5,
  toM: 5,
  runM: 1,
  section: 'U',
};

describe('the height of the ground', () => {
  it('is level where nothing was entered', () => {
    expect(heightM([], 3, -2)).toBe(0);
  });

  it('a U rut is flat over the middle half of its width and fades over its run-in', () => {
    expect(heightM([rut], 0, 0.8)).toBeCloseTo(-0.3, 12);
    expect(heightM([rut], 0, 0.89)).toBeCloseTo(-0.3, 12);
    expect(heightM([rut], 0, 0.95)).toBeCloseTo(-0.15, 12);
    expect(heightM([rut], 0, 1.01)).toBe(0);
    expect(heightM([rut], -4.5, 0.8)).toBeCloseTo(-0.15, 12);
    expect(heightM([{ ...rut, section: 'V' }], 0, 0.9)).toBeCloseTo(-0.15, 12);
  });

  it('the deepest of two cuts counts, a rock in it stands on its floor', () => {
    const hole: Feature = { kind: 'hole', xM: 0, yM: 0.8, lengthM: 2, widthM: 1, depthM: 0.5 };
    const rock: Feature = { kind: 'rock', xM: 0, yM: 0.8, lengthM: 0.5, widthM: 0.5, heightM: 0.2 };
    expect(heightM([rut, hole], 0, 0.8)).toBeCloseTo(-0.5, 12);
    expect(heightM([rut, hole, rock], 0, 0.8)).toBeCloseTo(-0.3, 12);
  });

  it('a ledge starts at its foot and rises along its face; turned, its left end lies further ahead', () => {
    const ledge: Feature = { kind: 'ledge', xM: 1, riseM: 0.4, faceRad: Math.PI / 4, skewRad: 0 };
    expect(heightM([ledge], 1, 0)).toBe(0);
    expect(heightM([ledge], 1.2, 0)).toBeCloseTo(0.2, 12);
    expect(heightM([ledge], 1.5, 0)).toBe(0.4);
    const skewed: Feature = { ...ledge, skewRad: 0.5 };
    expect(heightM([skewed], 1.2, 1)).toBe(0);
    expect(heightM([skewed], 1.2, -1)).toBe(0.4);
  });

  it('a log is as high as it is thick, between its ends', () => {
    const log: Feature = { kind: 'log', xM: 0, diameterM: 0.3, skewRad: 0, fromYM: -1, toYM: 2 };
    expect(heightM([log], 0, 0)).toBeCloseTo(0.3, 12);
    expect(heightM([log], 0, -1.1)).toBe(0);
    expect(heightM([log], 0.2, 0)).toBe(0);
  });

  it('a bank rises and a drop falls beyond its distance, to its height', () => {
    const bank: Feature = { kind: 'bank', side: 'left', distanceM: 2, angleRad: Math.PI / 4, heightM: 1 };
    expect(heightM([bank], 0, 1.9)).toBe(0);
    expect(heightM([bank], 0, 2.5)).toBeCloseTo(0.5, 12);
    expect(heightM([bank], 0, 9)).toBe(1);
    expect(heightM([{ ...bank, side: 'right', heightM: -3 }], 0, -3)).toBeCloseTo(-1, 12);
  });

  it('water and soft patches leave the bed as it is', () => {
    const water: Feature = { kind: 'water', fromM: -2, toM: 2, depthM: 0.5, flowMps: 1 };
    expect(heightM([water, rut], 0, 0.8)).toBeCloseTo(-0.3, 12);
  });
});
