import { describe, expect, it } from 'vitest';
import type { Feature } from '../../../src/terrain/feature.ts';
import { Relief } from '../../../src/traverse/relief.ts';

import { wheelPath } from '../../../src/traverse/wheel.ts';
import type { Driveline } from '../../../src/vehicle/driveline.ts';
import { driven, DRIVES } from '../rigid.ts';

const step = (riseM: number): Feature => ({ kind: 'ledge', xM: 0, riseM, faceRad: 1.4835, skewRad: 0 });

/** A wheel rolled up to and over a step, sampled every millimetre. */
function upStep(radiusM: number, riseM: number) {
  return wheelPath(new Relief([step(riseM)], -9, 9, 0.001, 0.05), -radiusM - 0.05, 0.001, 500, 0, {
    radiusM,
    sectionM: 0.1,
  });
}

describe('a wheel at a step', () => {
  it.each([
    // Towed wheel over a step: F = W √(2 r h − h²) / (r − h), Fundamentals of Physics 10e ch. 12 Q25.
    ['r 0.34 m, W 25 N, h 0.12 m needs 29.46 N', 0.34, 0.12, 25, 29.46],
    ['h = 3R/4 needs √15 W (database-physics-solutions 10069)', 0.4, 0.3, 1, Math.sqrt(15)],
  ])('%s (tolerance 1 %%)', (_, radiusM, riseM, weightN, pullN) => {
    // The pull at the hub of a free wheel is V tan α, greatest as the wheel leaves the ground for the edge.
    const edgeM = riseM / Math.tan(1.4835);
    const leavesM = edgeM - Math.sqrt(2 * radiusM * riseM - riseM * riseM) + 4.5e-4;
    const relief = new Relief([step(riseM)], -9, 9, 0.0005, 0.05);
    const steepest = wheelPath(relief, leavesM, 0.001, 1, 0, { radiusM, sectionM: 0.1 }).climbTan[0];
    expect(Math.abs((weightN * steepest) / pullN - 1)).toBeLessThan(0.01);
  });

  it('driven alone climbs from μ = tan φ on, cos φ = 1 − h / r (derived from friction on the edge; tolerance 1 %)', () => {
    const steepest = Math.max(...upStep(0.4, 0.12).climbTan);
    const needed = Math.tan(Math.acos(1 - 0.12 / 0.4));
    const pushes = (mu: number) =>
      driven(DRIVES.front, [5000, 5000, 0, 0], [steepest, steepest, 0, 0], mu, mu).alongN;
    expect(pushes(needed * 1.01)).toBeGreaterThan(0);
    expect(pushes(needed * 0.99)).toBeLessThan(0);
  });

  // Derived from the friction cone at each wheel, no published example: with as much load before as behind, the contact may
  // be turned by twice the angle of friction, μ = tan(φ / 2). Tolerance 1 %.
  it.each([
    [0.2, 0.333],
    [0.3, 0.42],
    [0.5, 0.577],
  ])('pushed by a driven rear axle climbs %d of its radius from μ = %d on', (share, mu) => {
    const steepest = Math.tan(Math.acos(1 - share));
    const pushes = (at: number) =>
      driven(DRIVES.four, [5000, 5000, 5000, 5000], [steepest, steepest, 0, 0], at, at).alongN;
    expect(pushes(mu * 1.01)).toBeGreaterThan(0);
    expect(pushes(mu * 0.99)).toBeLessThan(0);
  });

  it('follows the exact rigid wheel: centre over the edge on a circle of its radius (tolerance 1 mm)', () => {
    const path = upStep(0.4, 0.12);
    for (let n = 0; n < 500; n++) {
      const x = -0.45 + n * 0.001;
      const faceM = 0.12 / Math.tan(1.4835);
      const u = faceM - x;
      const exact = u <= 0 ? 0.12 : Math.abs(u) < 0.4 ? Math.max(0, 0.12 + Math.sqrt(0.16 - u * u) - 0.4) : 0;
      expect(Math.abs(path.bottomM[n] - exact)).toBeLessThan(0.001);
    }
  });
});

describe('drive shared between wheels', () => {
  const push = (line: Driveline, loadN: readonly number[], mu: number) =>
    driven(line, loadN, [0, 0, 0, 0], mu, mu);
  const rear = (bias: number): Driveline => ({ ...DRIVES.rear, rear: bias });

  it('2000 kg on four wheels, μ 0.5, rear drive: 2453 N a wheel, 4905 N both (Engineering ToolBox, tractive effort; 1 N)', () => {
    const each = (2000 * 9.81) / 4;
    const { driveN, alongN } = push(rear(1), [each, each, each, each], 0.5);
    expect(Math.abs(driveN[2] - 2453)).toBeLessThan(1);
    expect(Math.abs(alongN - 4905)).toBeLessThan(1);
  });

  it('dump truck, 153 t with 67 % on the driven axle, μ 0.35: 35,879 kg of pull (brainmass 352633, worked out; 1 kg)', () => {
    const onRear = (0.67 * 153000) / 2;
    const onFront = (0.33 * 153000) / 2;
    expect(Math.abs(push(rear(1), [onFront, onFront, onRear, onRear], 0.35).alongN - 35879)).toBeLessThan(1);
  });

  it('open: both sides get what the slipping one can react (liquisearch "loss of traction"); in the air, nothing', () => {
    expect(push(rear(1), [0, 0, 1000, 5000], 0.5).alongN).toBeCloseTo(2 * 500, 9);
    expect(push(rear(1), [0, 0, 0, 5000], 0.5).alongN).toBe(0);
  });

  it('torque bias 3:1 puts 75 % on the better wheel (askvity "torque bias ratio"); with a wheel in the air, nothing', () => {
    const { driveN } = push(rear(3), [0, 0, 1000, 5000], 0.5);
    expect(driveN[3] / (driveN[2] + driveN[3])).toBeCloseTo(0.75, 9);
    expect(push(rear(3), [0, 0, 0, 5000], 0.5).alongN).toBe(0);
  });

  it('locked: each wheel gives what it can hold (from the same laws)', () => {
    expect(push(rear(Infinity), [0, 0, 0, 5000], 0.5).alongN).toBeCloseTo(2500, 9);
  });
});
