import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { G_MPS2 } from '../../../src/traverse/gravity.ts';
import { TIP_RESERVE_RAD } from '../../../src/traverse/limits.ts';
import { quantile, settled, solved } from '../against.ts';
import { startEngine } from '../engine.ts';
import { randomScene } from '../scenes.ts';

/**
 * Source: an independent rigid-body engine, npm @dimforge/rapier3d-compat 0.21.0, that settles the same vehicle on the
 * same ground and weighs its wheels (`../engine.ts`). `engine-loads.txt` keeps what it weighed, written by
 * `tests/bench/engine.ts`; some scenes are settled again here, so that the file cannot drift from the engine.
 */
const kept = readFileSync(new URL('engine-loads.txt', import.meta.url), 'utf8')
  .trim()
  .split('\n')
  .map((line) => {
    const [seed, tipped, ...numbers] = line.split(' ').map(Number);
    const wheelM = [0, 1, 2, 3].map((i) => ({ x: numbers[4 + 2 * i], y: numbers[5 + 2 * i], z: NaN }));
    return { seed, tipped: tipped === 1, loadN: numbers.slice(0, 4), wheelM };
  });

describe('wheel loads against a rigid-body engine', () => {
  const both = kept.map((engine) => ({ engine, model: solved(randomScene(engine.seed), engine) }));
  const standing = both.filter(({ engine, model }) => !engine.tipped && model.standing === 0);
  const errors = standing.flatMap(({ model }) => model.errors);

  it('1,000 scenes were weighed', () => {
    expect(kept.length).toBe(1000);
    expect(standing.length).toBeGreaterThan(850);
  });

  it('differ by at most 3 % of static load in the middle, and 8 % at the 95th percentile', () => {
    expect(quantile(errors, 0.5)).toBeLessThan(0.03);
    expect(quantile(errors, 0.95)).toBeLessThan(0.08);
  });

  it('agree which vehicles stand: at least 97 %', () => {
    const agree = both.filter(({ engine, model }) => engine.tipped === (model.standing !== 0));
    expect(agree.length / both.length).toBeGreaterThanOrEqual(0.97);
  });

  it('hardly ever let a vehicle tip that was said to stand with the tilt in hand that a verdict asks: at most 0.5 %', () => {
    const unsafe = both.filter(({ engine, model }) => engine.tipped && model.tiltLeftRad >= TIP_RESERVE_RAD);
    expect(unsafe.length / both.length).toBeLessThanOrEqual(0.005);
  });
});

describe('the engine still weighs what was kept', () => {
  beforeAll(startEngine);

  for (const { seed, tipped, loadN } of kept.slice(0, 4))
    it(`scene ${seed}`, () => {
      const scene = randomScene(seed);
      const again = settled(scene);
      expect(again.tipped).toBe(tipped);
      const quarterN = (scene.values.massKg * G_MPS2) / 4;
      // Tolerance: 1 % of a quarter of weight, the engine's own unrest when it is read.
      if (!tipped)
        for (let i = 0; i < 4; i++) expect(Math.abs(again.loadN[i] - loadN[i]) / quarterN).toBeLessThan(0.01);
    });
});
