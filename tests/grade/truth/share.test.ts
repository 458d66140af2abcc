import { describe, expect, it } from 'vitest';
import { shareOf } from '../../../src/grade/share.ts';

/**
 * Newcombe, "Two-sided confidence intervals for the single proportion: comparison of seven methods", Statistics in
 * Medicine 17 (1998), 857–872, Table I, score method without continuity correction, 95 %. Values from memory.
 */
const NEWCOMBE: readonly [count: number, of: number, low: number, high: number][] = [
  [81, 263, 0.2553, 0.3662],
  [15, 148, 0.0624, 0.1605],
  [0, 20, 0, 0.1611],
  [1, 29, 0.0061, 0.1718],
];

/** Examples in the read-me of wilson-score-interval, an independent library in the npm registry (msn0, MIT). */
const LIBRARY: readonly [count: number, of: number, low: number, high: number][] = [
  [430, 474, 0.8776750858, 0.930123984],
  [392, 436, 0.8672311847, 0.923962736],
  [10, 14, 0.4535045883, 0.8827881209],
];

describe('the interval of a share', () => {
  it.each(NEWCOMBE)('is that of Newcombe for %i of %i', (count, of, low, high) => {
    const share = shareOf(count, of);
    expect(Math.abs(share.low - low)).toBeLessThan(0.00005);
    expect(Math.abs(share.high - high)).toBeLessThan(0.00005);
  });

  it.each(LIBRARY)('is that of another library for %i of %i', (count, of, low, high) => {
    const share = shareOf(count, of);
    expect(Math.abs(share.low - low)).toBeLessThan(2e-5);
    expect(Math.abs(share.high - high)).toBeLessThan(2e-5);
  });
});
