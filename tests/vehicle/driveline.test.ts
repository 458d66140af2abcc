import { describe, expect, it } from 'vitest';
import { classValues } from '../../src/vehicle/classes.ts';
import { drivelineOf } from '../../src/vehicle/driveline.ts';
import type { VehicleValues } from '../../src/vehicle/specs.ts';
import { NO_AIDS } from '../../src/vehicle/aids.ts';

const base: VehicleValues = {
  ...classValues('mid-size wagon'),
  drive: 'full-time four',
  centre: 'lockable',
  frontDifferential: 'open',
  rearDifferential: 'locker',
  lowRangeRatio: 2.5,
  crawlRatio: 40,
  engineTraction: 'off in low range',
};

describe('what a driver engages', () => {
  it('a locker is open until it is locked', () => {
    expect(drivelineOf(base, NO_AIDS).rear).toBe(1);
    expect(drivelineOf(base, { ...NO_AIDS, rearLocked: true }).rear).toBe(Infinity);
    expect(drivelineOf(base, { ...NO_AIDS, frontLocked: true }).front).toBe(1);
  });

  it('a centre that can be locked is open until it is', () => {
    expect(drivelineOf(base, NO_AIDS).centre).toBe(1);
    expect(drivelineOf(base, { ...NO_AIDS, centreLocked: true }).centre).toBe(Infinity);
  });

  it('low range multiplies what the engine gives, and stands engine traction control down', () => {
    const high = drivelineOf(base, NO_AIDS);
    const low = drivelineOf(base, { ...NO_AIDS, lowRange: true });
    expect(low.forceN / high.forceN).toBeCloseTo(2.5, 9);
    expect(high.engineLeaves).toBeLessThan(1);
    expect(low.engineLeaves).toBe(1);
  });
});

describe('which axles are driven', () => {
  it.each([
    ['front', { front: 1, rear: 0 }],
    ['rear', { front: 0, rear: 1 }],
    ['part-time four', { front: 1, rear: 1, centre: Infinity }],
  ] as const)('%s', (drive, expected) => {
    const values = { ...base, drive, centre: 'none', rearDifferential: 'open' } as const;
    expect(drivelineOf(values, NO_AIDS)).toMatchObject(expected);
  });

  it('on demand, the rear gets a part of its grip until the clutch is locked', () => {
    const values = { ...base, drive: 'on-demand four' } as const;
    expect(drivelineOf(values, NO_AIDS).rearReach).toBeLessThan(1);
    expect(drivelineOf(values, { ...NO_AIDS, centreLocked: true }).rearReach).toBe(1);
  });

  it('a limited slip is never worse than open, whatever bias is entered', () => {
    const values = { ...base, frontDifferential: 'limited slip', frontBias: 0.5 } as const;
    expect(drivelineOf(values, NO_AIDS).front).toBe(1);
  });
});
