import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Chassis } from '../../src/traverse/chassis.ts';
import { chassisOf } from '../../src/traverse/chassis.ts';
import { Equilibrium } from '../../src/traverse/equilibrium.ts';
import { G_MPS2 } from '../../src/traverse/gravity.ts';
import type { Up } from '../../src/traverse/up.ts';
import { randomScene } from './scenes.ts';

const NOTHING = { airedDown: false, barsDisconnected: false };
const LEVEL: Up = { x: 0, y: 0, z: 1 };
const SEED = { seed: 20260101, numRuns: 300 };

const upward = fc
  .tuple(fc.double({ min: -0.5, max: 0.5, noNaN: true }), fc.double({ min: -0.4, max: 0.4, noNaN: true }))
  .map(([x, y]): Up => ({ x, y, z: Math.sqrt(1 - x * x - y * y) }));
const four = (most: number) =>
  fc.array(fc.double({ min: -most, max: most, noNaN: true }), { minLength: 4, maxLength: 4 });
const chassis = fc.nat(100_000).map((seed) => chassisOf(randomScene(seed).values, NOTHING));

const axleOf = (c: Chassis, i: number) => (i < 2 ? c.front : c.rear);
const xOf = (c: Chassis, i: number) => ((i < 2 ? 1 : -1) * c.wheelbaseM) / 2;
const yOf = (c: Chassis, i: number) => ((i % 2 === 0 ? 1 : -1) * axleOf(c, i).trackWidthM) / 2;
const swapped = (a: readonly number[]) => [a[1], a[0], a[3], a[2]];

describe('a vehicle that stands', () => {
  it('is in balance: forces and moments sum to zero within a millionth of weight', () => {
    fc.assert(
      fc.property(chassis, upward, four(0.3), four(0.8), (c, up, ground, climb) => {
        const body = new Equilibrium(c, up);
        fc.pre(body.solve(ground, climb) === 0);
        const V = [...body.loadN];
        const sum = (of: (i: number) => number) => [0, 1, 2, 3].reduce((total, i) => total + of(i), 0);
        const W = c.massKg * G_MPS2;
        const onFront = 0.5 + c.sprungXM / c.wheelbaseM;
        const share = (i: number) => (i < 2 ? onFront : 1 - onFront);
        const mean = (of: (i: number) => number) => share(0) * of(0) + share(2) * of(2);
        const hub = mean((i) => axleOf(c, i).hubHeightM);
        const rollCentre = mean((i) => axleOf(c, i).rollCentreM);
        const lean = mean(
          (i) => (axleOf(c, i).rollCentreM * (body.hubM[i] - body.hubM[i + 1])) / axleOf(c, i).trackWidthM,
        );
        const sprungW = c.sprungKg * G_MPS2 * up.z;

        expect(Math.abs(sum((i) => V[i]) - W * up.z) / W).toBeLessThan(1e-6);

        const ahead = (i: number) => (c.tyre.radiusM * climb[i]) / Math.hypot(1, climb[i]);
        const pitch = sum((i) => (xOf(c, i) + ahead(i)) * V[i]);
        const unsprung = sum((i) => axleOf(c, i).unsprungKg * G_MPS2 * up.z * xOf(c, i));
        const gravityPitch =
          sprungW * (c.sprungXM + (c.sprungHeightM - hub) * body.pitch) + unsprung - W * up.x * c.massHeightM;
        expect(Math.abs(pitch - gravityPitch) / (W * c.wheelbaseM)).toBeLessThan(1e-6);

        const roll = sum((i) => yOf(c, i) * V[i]);
        const gravityRoll =
          -sprungW * ((c.sprungHeightM - rollCentre) * body.roll + lean) - W * up.y * c.massHeightM;
        expect(Math.abs(roll - gravityRoll) / W).toBeLessThan(1e-6);
      }),
      SEED,
    );
  });

  it('bears its static loads on flat level ground', () => {
    fc.assert(
      fc.property(chassis, (c) => {
        const body = new Equilibrium(c, LEVEL);
        expect(body.solve([0, 0, 0, 0])).toBe(0);
        for (let i = 0; i < 4; i++) expect(body.loadN[i] / (axleOf(c, i).wheelKg * G_MPS2)).toBeCloseTo(1, 9);
        expect(body.roll).toBeCloseTo(0, 9);
        expect(body.pitch).toBeCloseTo(0, 9);
      }),
      SEED,
    );
  });

  it('swaps left and right with the ground', () => {
    fc.assert(
      fc.property(chassis, upward, four(0.3), four(0.8), (c, up, ground, climb) => {
        const here = new Equilibrium(c, up);
        const there = new Equilibrium(c, { ...up, y: -up.y });
        const stands = here.solve(ground, climb) === 0;
        expect(there.solve(swapped(ground), swapped(climb)) === 0).toBe(stands);
        fc.pre(stands);
        const V = swapped([...here.loadN]);
        for (let i = 0; i < 4; i++) expect(Math.abs(there.loadN[i] - V[i])).toBeLessThan(0.01);
        expect(there.roll).toBeCloseTo(-here.roll, 7);
      }),
      SEED,
    );
  });

  it('gives the same answer wherever the search starts, but for a wheel in the air that could be either of two', () => {
    fc.assert(
      fc.property(chassis, upward, four(0.25), four(0.25), (c, up, ground, other) => {
        const fresh = new Equilibrium(c, up);
        const warm = new Equilibrium(c, up);
        warm.solve(other);
        const stands = fresh.solve(ground) === 0;
        expect(warm.solve(ground) === 0).toBe(stands);
        fc.pre(stands);
        const apart = Math.max(...[0, 1, 2, 3].map((i) => Math.abs(fresh.loadN[i] - warm.loadN[i])));
        // Rocking on one diagonal, it may come to rest on either of the other two wheels.
        const rocks = Math.min(...fresh.loadN) === 0 && Math.min(...warm.loadN) === 0;
        if (!rocks) expect(apart).toBeLessThan(0.01);
      }),
      SEED,
    );
  });
});

it('always ends, with finite loads that are never negative, on any ground', () => {
  fc.assert(
    fc.property(chassis, upward, four(3), four(20), (c, up, ground, climb) => {
      const body = new Equilibrium(c, up);
      expect([0, 1, 2, 3, 4]).toContain(body.solve(ground, climb));
      for (const all of [body.loadN, body.hubM, body.travelM, [body.heaveM, body.pitch, body.roll]])
        for (const value of all) expect(Number.isFinite(value)).toBe(true);
      for (const V of body.loadN) expect(V).toBeGreaterThanOrEqual(0);
    }),
    { ...SEED, numRuns: 2000 },
  );
});
