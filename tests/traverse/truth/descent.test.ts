import { describe, expect, it } from 'vitest';
import { traverseAssess } from '../../../src/traverse/traverse.ts';
import { rad } from '../../../src/units.ts';
import { ladder } from '../../../src/vehicle/aids.ts';
import { DRIVELINE_EFFICIENCY, OVERRUN_EFFICIENCY, OVERRUN_SHARE } from '../../../src/vehicle/assumptions.ts';
import { classValues } from '../../../src/vehicle/classes.ts';
import { drivelineOf, overrunOf } from '../../../src/vehicle/driveline.ts';
import type { VehicleValues } from '../../../src/vehicle/specs.ts';
import { axleLoadsN } from '../rigid.ts';
import type { Book } from '../rigid.ts';
import { flatGround } from '../scenes.ts';

const wagon = classValues('mid-size wagon');
const LOW = { ...ladder(wagon)[0].aids, lowRange: true };
const IN = 0.0254;
const LB = 0.45359237;
const LBF_IN = LB * 9.80665 * IN;

/** Force at the treads that a torque gives through a gearing, without losses. */
const geared = (torqueNm: number, ratio: number, radiusM: number): [VehicleValues, number] => [
  {
    ...wagon,
    engineTorqueNm: torqueNm / OVERRUN_SHARE,
    crawlRatio: ratio,
    tyreDiameterM: 2 * radiusM,
  },
  (torqueNm * ratio) / radiusM,
];

describe('force through gearing, F = T i / r, losses apart', () => {
  // calculatoratoz "Tractive effort in multi-geared vehicle", printed: 270 N·m, 2.55 × 2, efficiency 0.83, 0.55 m give
  // 2078.018 N. Here a tenth of the torque through ten times the ratio, so that a walk turns the engine.
  it('2078.018 N with an efficiency of 0.83 (tolerance 0.001 N)', () => {
    const [values, plainN] = geared(27, 51, 0.55);
    expect(Math.abs(plainN * 0.83 - 2078.01818)).toBeLessThan(0.001);
    expect(Math.abs(overrunOf(values, LOW).forceN * OVERRUN_EFFICIENCY * 0.83 - 2078.01818)).toBeLessThan(
      0.001,
    );
    const driven = drivelineOf({ ...values, engineTorqueNm: 27 }, LOW);
    expect(Math.abs((driven.forceN / DRIVELINE_EFFICIENCY) * 0.83 - 2078.01818)).toBeLessThan(0.001);
  });

  // webtec "Tractive effort": 1000 lb·in through 10 on a radius of 15 in; inputs and method printed, 666.67 lb worked out.
  it('666.67 lb from 1000 lb·in (tolerance 0.01 lb)', () => {
    const [values] = geared((1000 * LBF_IN) / 10, 100, 15 * IN);
    const lb = (overrunOf(values, LOW).forceN * OVERRUN_EFFICIENCY) / (LB * 9.80665);
    expect(Math.abs(lb - 666.67)).toBeLessThan(0.01);
  });
});

describe('share of its greatest torque that drags an engine on the overrun is on the low side', () => {
  /** Motored, throttle open: Barnes-Moss, Heywood 1988 eq. 13.6, bar, thousands of turns a minute (from memory). */
  const motoredBar = (n: number) => 0.97 + 0.15 * n + 0.05 * n * n;

  // Greatest brake mean effective pressures: diracdelta "Brake mean effective pressure", printed table, bar.
  it.each([
    ['diesel, not boosted', 9],
    ['petrol, not boosted', 10.5],
    ['petrol, boosted', 17],
    ['diesel, boosted', 19],
  ])('%s', (_, greatestBar) => {
    expect(OVERRUN_SHARE).toBeLessThanOrEqual(motoredBar(1.2) / greatestBar);
  });

  // x-engineer "Mean effective pressure", printed example: 250 N·m indicated, 230 N·m at the shaft, 20 N·m of friction.
  it('friction alone of a printed example is more: 20 N·m of 230', () => {
    expect(OVERRUN_SHARE).toBeLessThan(20 / 230);
  });
});

describe('what braked wheels hold on a slope', () => {
  const values = { ...wagon, roofLoadKg: 0 };
  const braking = (slopeRad: number, adhesion: number) => {
    const ground = { ...flatGround, slopeRad, peakAdhesion: adhesion, slidingAdhesion: adhesion };
    const found = traverseAssess(values, ground, 0, LOW);
    if (!found.known) throw new Error(found.cause);
    return found.checks.find(({ name }) => name === 'braking')!;
  };

  // what-when-how, "Stability of a vehicle on a slope", Ex. 31.6: with adhesion 0.35 it slides at atan 0.35 = 19.29°,
  // whichever way it faces. Tolerance 0.0005 of weight.
  it.each([-19.29, 19.29])('ends at %s° with adhesion 0.35', (deg) => {
    expect(Math.abs(braking(rad(deg), 0.35).margin)).toBeLessThan(0.0005);
  });

  // Levinson, CE3201 L3: d = (v₁² − v₂²) / (2 g (f cosθ − sinθ)) downhill, none where f cosθ ≤ sinθ. What is left of the
  // weight to brake with is v² / (2 g d).
  it.each([
    [0.35, 5],
    [0.5, 10],
    [0.6, 20],
    [0.3, 18],
  ])('leaves f cosθ − sinθ to stop with: f %s on %s° down', (f, deg) => {
    const left = f * Math.cos(rad(deg)) - Math.sin(rad(deg));
    expect(braking(rad(-deg), f).margin).toBeCloseTo(left, 6);
  });

  // Ideal brake force split, Mannering & Washburn eq. 2.30 at f = 0 (from memory): front over rear (l_r + h μ) / (l_f − h μ)
  // with all tyres at their limit. Standing on atan μ loads the axles as braking at μ g on the level does.
  it.each([
    [0.2, { massKg: 3000 * LB, wheelbaseM: 120 * IN, behindFrontM: 50 * IN, heightM: 20 * IN }],
    [0.6, { massKg: 1500, wheelbaseM: 2.75, behindFrontM: 1.15, heightM: 0.85 }],
  ] as [number, Book][])('splits between the axles as in the books: μ %s', (mu, book) => {
    const { front, rear } = axleLoadsN(book, -Math.atan(mu));
    const { wheelbaseM: L, behindFrontM: lf, heightM: h } = book;
    expect(front / rear).toBeCloseTo((L - lf + h * mu) / (lf - h * mu), 4);
  });
});

describe('facts of the trade (common practice, no source)', () => {
  const engine = (deg: number, aids = LOW, values: VehicleValues = wagon) => {
    const found = traverseAssess(values, { ...flatGround, slopeRad: rad(-deg) }, 0, aids);
    return found.known ? found.checks.find(({ name }) => name === 'braking')!.engine! : null;
  };

  it('first low holds a wagon on a gentle descent, and not on a steep one', () => {
    expect(engine(6)!.margin).toBeGreaterThan(0);
    expect(engine(25)!.margin).toBeLessThan(0);
  });

  it('in high range the engine of a wagon turns too slowly at a walk to hold it', () => {
    const high = { ...LOW, lowRange: false };
    expect(engine(6, high)!.margin).toBeLessThan(0);
    expect(engine(6, high)!.have).toBeLessThan(rad(2));
  });

  it('deep gearing holds where common gearing does not', () => {
    expect(engine(15, LOW, { ...wagon, crawlRatio: 100 })!.margin).toBeGreaterThan(0);
    expect(engine(15)!.margin).toBeLessThan(0);
  });
});
