/** Standard normal deviate that leaves 5 % outside, both tails together. */
const Z95 = 1.959963984540054;

/** A share of counted cases with its 95 % interval, each 0 to 1; NaN where nothing was counted. */
export interface Share {
  readonly count: number;
  readonly of: number;
  readonly share: number;
  readonly low: number;
  readonly high: number;
}

/**
 * How many of how many, and between what shares the truth lies: the score interval of Wilson, "Probable inference, the
 * law of succession, and statistical inference", JASA 22 (1927), 209–212. It stays within 0 and 1, and says something
 * sensible of few cases, and of none or all of them.
 */
export function shareOf(count: number, of: number): Share {
  if (of === 0) return { count, of, share: NaN, low: NaN, high: NaN };
  const p = count / of;
  const zz = (Z95 * Z95) / of;
  const middle = (p + zz / 2) / (1 + zz);
  const half = (Z95 / (1 + zz)) * Math.sqrt((p * (1 - p)) / of + zz / (4 * of));
  return {
    count,
    of,
    share: p,
    low: count === 0 ? 0 : middle - half,
    high: count === of ? 1 : middle + half,
  };
}
