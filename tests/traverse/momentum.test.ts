import { describe, expect, it } from 'vitest';
import type { Feature } from '../../src/terrain/feature.ts';
import { chassisOf } from '../../src/traverse/chassis.ts';
import { effortAlong } from '../../src/traverse/effort.ts';
import { entrySpeedMps, liftSpeedMps } from '../../src/traverse/momentum.ts';
import { reliefOf } from '../../src/traverse/relief.ts';
import { march } from '../../src/traverse/march.ts';
import { upOf } from '../../src/traverse/up.ts';
import { classValues } from '../../src/vehicle/classes.ts';
import { DRIVES } from './rigid.ts';
import { flatGround } from './scenes.ts';

const values = classValues('mid-size wagon');

function taken(features: readonly Feature[], slopeRad: number, adhesion: number) {
  const ground = { ...flatGround, slopeRad, features, peakAdhesion: adhesion, slidingAdhesion: adhesion };
  const chassis = chassisOf(values, { airedDown: false, barsDisconnected: false });
  const up = upOf(ground)!;
  const record = march(chassis, reliefOf(ground), up, ground.lengthM, 0);
  return { record, up, chassis, effort: effortAlong(record, chassis, DRIVES.four, ground, up) };
}

describe('speed on entry', () => {
  it('none is needed where push suffices', () => {
    const { effort, record, chassis } = taken([], 0.1, 0.6);
    expect(entrySpeedMps(effort, record, chassis.wheelbaseM)).toBe(0);
  });

  it('carries the vehicle up the whole of a slope where push lacks: v² = 2 g ∫ lacking ds', () => {
    const { effort, record, chassis, up } = taken([], 0.3, 0.3);
    const lacking = effort.ask[0] - effort.push[0];
    const lengthM = record.stationM[record.length - 1] - record.stationM[0];
    expect(lacking).toBeGreaterThan(0);
    expect(up.x).toBeGreaterThan(0);
    const v = Math.sqrt(2 * 9.80665 * lacking * lengthM);
    expect(entrySpeedMps(effort, record, chassis.wheelbaseM)).toBeCloseTo(v, 6);
  });

  it('no speed is proposed against a step', () => {
    const ledge: Feature = { kind: 'ledge', xM: 0, riseM: 0.3, faceRad: 1.4, skewRad: 0 };
    const { effort, record, chassis } = taken([ledge], 0, 0.3);
    expect(entrySpeedMps(effort, record, chassis.wheelbaseM)).toBe(Infinity);
  });
});

describe('speed that lifts a wheel', () => {
  it('is beyond any on flat ground, and falls as a hump gets sharper', () => {
    const flat = taken([], 0, 0.6);
    const long = taken([{ kind: 'hump', xM: 0, lengthM: 6, heightM: 0.4, skewRad: 0 }], 0, 0.6);
    const short = taken([{ kind: 'hump', xM: 0, lengthM: 3, heightM: 0.4, skewRad: 0 }], 0, 0.6);
    expect(liftSpeedMps(flat.record, flat.up)).toBeGreaterThan(50);
    expect(liftSpeedMps(short.record, short.up)).toBeLessThan(liftSpeedMps(long.record, long.up));
  });
});
