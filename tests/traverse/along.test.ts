import { describe, expect, it } from 'vitest';
import { alongLine, nearestStation, worstAlong } from '../../src/traverse/along.ts';
import { limiting } from '../../src/traverse/assess.ts';
import { assessTraverse } from '../../src/traverse/traverse.ts';
import { TOLERANCE } from '../../src/traverse/limits.ts';
import { ladder } from '../../src/vehicle/aids.ts';
import { PARTS } from '../../src/vehicle/body.ts';
import { classValues } from '../../src/vehicle/classes.ts';
import type { Ground } from '../../src/terrain/ground.ts';
import { flatGround } from './scenes.ts';

const values = { ...classValues('mid-size wagon'), rearDifferential: 'locker' } as const;
const aids = ladder(values).map((rung) => rung.aids);

const rough: Ground = {
  ...flatGround,
  slopeRad: 0.15,
  camberRad: 0.06,
  features: [
    { kind: 'hole', xM: 1.4, yM: 0.75, lengthM: 2, widthM: 0.9, depthM: 0.35 },
    { kind: 'hole', xM: -1.4, yM: -0.75, lengthM: 2, widthM: 0.9, depthM: 0.35 },
    { kind: 'rock', xM: 0, yM: 0.1, heightM: 0.22, lengthM: 0.8, widthM: 0.6 },
  ],
};

const along = alongLine(values, rough, 0.1, aids, 1)!;

describe('a traverse kept station by station', () => {
  it('has as its least what the traverse says of traction with every set of aids', () => {
    const said = assessTraverse(values, [rough], 0.1, aids);
    along.traction.forEach((margin, i) => {
      const found = said[i];
      if (!found.known) throw new Error(found.cause);
      const check = found.checks.find(({ name }) => name === 'traction')!;
      expect(Math.min(...margin.filter((one) => !Number.isNaN(one)))).toBeCloseTo(check.margin, 9);
    });
  });

  it('has as its least gaps and tilt what the traverse says', () => {
    const clear = along.limits.filter(({ quantity }) => quantity === 'size');
    const least = Math.min(...clear.map(({ margin }) => margin));
    expect(Math.min(...along.leastGapM)).toBeCloseTo(least, 9);
    const tips = along.limits.filter(({ quantity }) => quantity === 'angle');
    const tip = Math.min(...tips.map(({ margin }) => margin));
    expect(Math.min(...along.tipRad)).toBeLessThanOrEqual(tip + 1e-9);
    expect(Math.min(...along.tipRad)).toBeGreaterThan(tip - TOLERANCE.tipRad);
  });

  it('names at every station the part with the least gap', () => {
    for (let n = 0; n < along.record.length; n += 7) {
      const parts = along.gapM.subarray(PARTS.length * n, PARTS.length * (n + 1));
      expect(parts[along.leastPart[n]]).toBe(along.leastGapM[n]);
      expect(Math.min(...parts)).toBe(along.leastGapM[n]);
    }
  });

  it('the rock under the belly is met where it lies', () => {
    const n = along.leastGapM.indexOf(Math.min(...along.leastGapM));
    const of = PARTS.length * n + along.leastPart[n];
    expect(Math.abs(along.gapXM[of])).toBeLessThan(0.45);
    expect(Math.abs(0.1 + along.gapYM[of] - 0.1)).toBeLessThan(0.35);
  });

  it('is nothing on ground that cannot be', () => {
    expect(alongLine(values, { ...rough, slopeRad: NaN }, 0, aids, 0)).toBeNull();
    expect(worstAlong(values, { ...rough, camberRad: NaN }, 0, aids[0], 0.1)).toBeNull();
  });

  it('finds the station nearest to a place, and the ends beyond it', () => {
    const { record } = along;
    expect(record.stationM[nearestStation(record, 0.52)]).toBeCloseTo(0.5, 1);
    expect(nearestStation(record, -99)).toBe(0);
    expect(nearestStation(record, 99)).toBe(record.length - 1);
  });
});

describe('the worst of every station', () => {
  it('is at its least as near as the nearest of the checks that belong to a place, looked at twice as often', () => {
    const [said] = assessTraverse(values, [rough], 0.1, [aids[1]]);
    if (!said.known) throw new Error(said.cause);
    const placed = said.checks.filter(({ name }) => !['width', 'headroom'].includes(name));
    const nearest = limiting(placed);
    const worst = worstAlong(values, rough, 0.1, aids[1], 0.05)!;
    const least = Math.min(...worst.ease);
    expect(least).toBeLessThanOrEqual(nearest.margin / nearest.tolerance + 1e-9);
    expect(least).toBeGreaterThan(nearest.margin / nearest.tolerance - 0.5);
  });

  it('on plain level ground is the same everywhere', () => {
    const { ease } = worstAlong(values, flatGround, 0, aids[0], 0.1)!;
    expect(Math.min(...ease)).toBeGreaterThan(1);
    expect(Math.max(...ease) - Math.min(...ease)).toBeLessThan(0.5);
  });
});
