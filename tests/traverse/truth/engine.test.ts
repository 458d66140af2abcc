import { setImmediate } from 'node:timers/promises';
import { beforeAll, describe, expect, it } from 'vitest';
import { chassisOf } from '../../../src/traverse/chassis.ts';
import { G_MPS2 } from '../../../src/traverse/gravity.ts';
import { agree, bothStand, compared, quantile, turnRad, wronglyStands } from '../against.ts';
import type { Comparison } from '../against.ts';
import { settle, startEngine } from '../engine.ts';
import { isSteep, randomScene } from '../scenes.ts';

/**
 * Source: an independent rigid-body engine, npm @dimforge/rapier3d-compat 0.21.0, that settles the same vehicle on the
 * same ground and weighs its wheels (`../engine.ts`). `npm run bench engine` does the same with 1,000 scenes.
 */
const SCENES = 200;

describe('wheel loads against a rigid-body engine', () => {
  const all: Comparison[] = [];
  beforeAll(async () => {
    await startEngine();
    for (let seed = 1; seed <= SCENES; seed++) {
      all.push(compared(seed));
      await setImmediate();
    }
  }, 600_000);

  const errors = () => all.filter(bothStand).flatMap((each) => each.errors);

  it('are compared on mild and rough ground, and on cambers near to tipping', () => {
    const standing = all.filter(bothStand);
    expect(standing.length).toBeGreaterThan(0.85 * SCENES);
    expect(standing.filter(({ seed }) => isSteep(seed)).length).toBeGreaterThanOrEqual(5);
    expect(all.filter(({ engine }) => engine.tipped).length).toBeGreaterThanOrEqual(5);
    // Body turned to 3°, to 6°, to 9°, and beyond.
    const counts = [0, 0, 0, 0];
    for (const each of standing) counts[Math.min(3, Math.floor(turnRad(each) / (Math.PI / 60)))]++;
    expect(Math.min(...counts)).toBeGreaterThanOrEqual(5);
  });

  it('differ by at most 3 % of static load in the middle, and 8 % at the 95th percentile', () => {
    expect(quantile(errors(), 0.5)).toBeLessThan(0.03);
    expect(quantile(errors(), 0.95)).toBeLessThan(0.08);
  });

  it('agree which vehicles stand: at least 97 %', () => {
    expect(all.filter(agree).length / SCENES).toBeGreaterThanOrEqual(0.97);
  });

  it('hardly ever let a vehicle tip that was said to stand with the tilt in hand that a verdict asks: at most 0.5 %', () => {
    expect(all.filter(wronglyStands).length / SCENES).toBeLessThanOrEqual(0.005);
  });
});

/** Source: statics. On level ground an axle bears the share of weight that its place gives it, half of it on either wheel. */
describe('what the engine itself weighs on level ground', () => {
  beforeAll(startEngine);

  for (let seed = 1; seed <= 8; seed++)
    it(`vehicle ${seed}`, () => {
      const { values } = randomScene(seed);
      const chassis = chassisOf(values, { airedDown: false, barsDisconnected: false });
      const { loadN, tipped } = settle(chassis, [], { x: 0, y: 0, z: 1 }, 0);
      expect(tipped).toBe(false);
      for (let i = 0; i < 4; i++) {
        const staticN = (values.massKg * G_MPS2 * (i < 2 ? values.frontShare : 1 - values.frontShare)) / 2;
        // Tolerance: 1.5 %, from the flat of the tread, on which a load may stand 1 cm to either side of half a track.
        expect(Math.abs(loadN[i] - staticN) / staticN).toBeLessThan(0.015);
      }
    });
});
