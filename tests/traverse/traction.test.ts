import { describe, expect, it } from 'vitest';
import type { Driveline } from '../../src/vehicle/driveline.ts';
import { driven, DRIVES } from './rigid.ts';

const OPEN: Driveline = { ...DRIVES.four, front: 1, rear: 1, centre: 1 };
const LEVEL = [0, 0, 0, 0];

function push(line: Driveline, loadN: readonly number[]): number {
  return driven(line, loadN, LEVEL, 0.6, 0.5).alongN;
}

describe('one wheel in the air', () => {
  const loadN = [4000, 0, 3000, 3000];

  it('leaves no push at all through three open differentials, rather than an unknown one', () => {
    expect(push(OPEN, loadN)).toBe(0);
  });

  it('leaves the other axle its push once the centre is locked', () => {
    expect(push({ ...OPEN, centre: Infinity }, loadN)).toBeCloseTo(0.5 * 6000, 9);
  });

  it('leaves brake traction control its share', () => {
    expect(push({ ...OPEN, brakeShare: 0.5 }, loadN)).toBeGreaterThan(0);
  });
});
