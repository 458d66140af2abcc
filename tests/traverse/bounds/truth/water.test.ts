import { describe, expect, it } from 'vitest';
import { depthFlowLimit } from '../../../../src/traverse/bounds/fit.ts';

describe('flowing water', () => {
  // Full-scale tank tests, UNSW Water Research Laboratory, as published by VICSES ("15 to float"): at 1 m/s a 1.05 t car
  // moved in 0.15 m, a 1.5 t car in 0.30 m, a 2.5 t four-wheel drive in 0.45 m. What moved a vehicle must not be allowed.
  it.each([
    [1050, 0.15],
    [1500, 0.3],
    [2500, 0.45],
  ])('%d kg is not let into the %f m²/s that moved one', (massKg, moved) => {
    expect(depthFlowLimit(massKg)).toBeLessThan(moved);
    expect(depthFlowLimit(massKg)).toBeGreaterThan(0);
  });

  // Dam-safety danger table (NS Energy, Table 2): people in passenger cars are in danger above 0.5 m²/s.
  it('no vehicle, however heavy, is let above 0.5 m²/s', () => {
    for (const massKg of [600, 1050, 1300, 2000, 2500, 6000])
      expect(depthFlowLimit(massKg)).toBeLessThan(0.5);
  });
});
