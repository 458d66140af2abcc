import { describe, expect, it } from 'vitest';
import { degrees } from '../../../src/units.ts';
import { askOnSlope, axleLoadsN, DRIVES, pushOnSlope, steepestRad } from '../rigid.ts';
import type { Book } from '../rigid.ts';

type DriveName = keyof typeof DRIVES;
const LB = 0.45359237;
const IN = 0.0254;

/** Accelerating on the level and standing on a slope load the axles alike: tan(slope) = a / g. */
const accelerationMps2 = (book: Book, drive: DriveName, mu: number) =>
  9.81 * Math.tan(steepestRad(book, DRIVES[drive], mu));

/** Each row: source, vehicle, μ, and for each drive the printed (or, where marked, worked out) answer. */
const STEEPEST: readonly [string, Book, number, readonly (readonly [DriveName, number])[]][] = [
  [
    // Printed: statics textbook problem (physicsforums 339714), W 15 kN; 7/39, 72/233, 0.5.
    'statics textbook, 15 kN, μ 0.5',
    { massKg: 15000 / 9.81, wheelbaseM: 2.675, behindFrontM: 0.875, heightM: 0.475 },
    0.5,
    [
      ['rear', 10.18],
      ['front', 17.17],
      ['four', 26.57],
    ],
  ],
  [
    // Inputs printed (askfilo 3236333533333336), answers worked out with the closed form of the problem above.
    '3200 lb, μ 0.60',
    { massKg: 3200 * LB, wheelbaseM: 107 * IN, behindFrontM: 35 * IN, heightM: 19 * IN },
    0.6,
    [
      ['rear', 12.39],
      ['front', 20.05],
      ['four', 30.96],
    ],
  ],
];

describe('steepest slope by drive, degrees (tolerance 0.01°)', () => {
  for (const [source, book, mu, answers] of STEEPEST)
    for (const [drive, deg] of answers)
      it(`${source}: ${drive} ${deg}`, () => {
        expect(Math.abs(degrees(steepestRad(book, DRIVES[drive], mu)) - deg)).toBeLessThan(0.01);
      });
});

const ACCELERATION: readonly [string, Book, number, readonly (readonly [DriveName, number])[]][] = [
  [
    // what-when-how "Automobile" Ex. 31.7 and §31.10.3: inputs and method printed, answers worked out.
    'Automobile Ex. 31.7, μ 0.6',
    { massKg: 1500, wheelbaseM: 2.75, behindFrontM: 1.15, heightM: 0.85 },
    0.6,
    [
      ['front', 2.889],
      ['rear', 3.022],
      ['four', 5.886],
      ['four, open centre', 4.996],
    ],
  ],
  [
    // Slide set 263385814: inputs and method printed, answers worked out.
    '1800 kg, mid mass, μ 0.7',
    { massKg: 1800, wheelbaseM: 2.6, behindFrontM: 1.3, heightM: 0.7 },
    0.7,
    [
      ['front', 2.889],
      ['rear', 4.231],
      ['four', 6.867],
    ],
  ],
];

describe('greatest acceleration on the level by drive, m/s² (tolerance 0.001)', () => {
  for (const [source, book, mu, answers] of ACCELERATION)
    for (const [drive, a] of answers)
      it(`${source}: ${drive} ${a}`, () => {
        expect(Math.abs(accelerationMps2(book, drive, mu) - a)).toBeLessThan(0.001);
      });

  it('Automobile §31.10.3: with an open centre at its limit the front bears 42.4 % of weight', () => {
    const book = ACCELERATION[0][1];
    const { front, rear } = axleLoadsN(book, steepestRad(book, DRIVES['four, open centre'], 0.6));
    expect(Math.abs(front / (front + rear) - 0.424)).toBeLessThan(0.0005);
  });
});

describe('axle loads on a slope: what-when-how "Automobile" Ex. 31.6, 49,050 N (inputs printed, answers worked out)', () => {
  const book = { massKg: 49050 / 9.80665, wheelbaseM: 2.25, behindFrontM: 1.25, heightM: 1.5 };
  const { front, rear } = axleLoadsN(book, (10 * Math.PI) / 180);
  it('front 15,791 N, rear 32,514 N at 10° (tolerance 1 N)', () => {
    // The book's slope takes weight off the higher axle; the lower one bears 32,514 N.
    expect(Math.abs(rear - 32514)).toBeLessThan(1);
    expect(Math.abs(front - 15791)).toBeLessThan(1);
  });
});

describe('effort limit with rolling resistance: Mannering & Washburn, Ex. 2.5 with eq. 2.15', () => {
  const book = { massKg: 3000 * LB, wheelbaseM: 120 * IN, behindFrontM: 50 * IN, heightM: 20 * IN };
  it('front drive, 3000 lb, μ 0.20, f 0.0110: 339.8 lb (tolerance 0.2 lb)', () => {
    const rad = steepestRad(book, DRIVES.front, 0.2, 0.011);
    // Eq. 2.15 counts forces on the level: on the slope they are smaller by its cosine.
    const effortLb = (pushOnSlope(book, DRIVES.front, 0.2, rad) * 3000) / Math.cos(rad);
    expect(Math.abs(effortLb - 339.8)).toBeLessThan(0.2);
  });
});

describe('geared gradeability: G = 100 T R / (r W) − RR (scribd 250720312), printed 6.5 %', () => {
  const level = { massKg: 4500, wheelbaseM: 3, behindFrontM: 1.5, heightM: 0.8 };
  it.each([
    ['T 1000 lb·in, R 12, r 15 in, 10,000 lb', (1000 * 12) / 15 / 10000],
    ['T 117 N·m, R 12, r 400 mm, 4500 kg', (117 * 12) / 0.4 / (4500 * 9.81)],
  ])('%s', (_, forceOverWeight) => {
    const line = { ...DRIVES.four, forceN: forceOverWeight * level.massKg * 9.80665 };
    const rad = steepestRad(level, line, 0.8, 0.015);
    // Tolerance 0.05 %, the last printed digit.
    expect(Math.abs(100 * Math.tan(rad) - 6.5)).toBeLessThan(0.05);
  });
});

describe('what slope and rolling ask of a vehicle', () => {
  it.each([
    // webtec "grade resistance", printed.
    ['10,000 lb on 5 % asks 500 lb', 10000, 0.05, 0, 500],
    ['4500 kg on 5 % asks 2207.25 N', 4500 * 9.81, 0.05, 0, 2207.25],
    // Civil Engineering Formulas (Hicks): T = (2 % + 1.5 % p + 1 % s) W with penetration p in inches.
    ['2 in of penetration on 6 % asks 0.11 of weight', 1, 0.06, 0.02 + 0.015 * 2, 0.11],
    ['4 in of penetration on 10 % asks 0.18 of weight', 1, 0.1, 0.02 + 0.015 * 4, 0.18],
  ])('%s', (_, weight, grade, f, asked) => {
    const book = { massKg: 4500, wheelbaseM: 3, behindFrontM: 1.5, heightM: 0.8 };
    const asks = weight * askOnSlope(book, Math.atan(grade), f);
    // The books write the grade for its sine and weight for its normal part: 0.5 % at 10 %.
    expect(Math.abs(asks / asked - 1)).toBeLessThan(0.006);
  });
});
