import type { Quantity } from '../units.ts';
import { rad } from '../units.ts';

/** How a value was got, from best to worst; it sets the value's ±. */
export const HOWS = ['scanned', 'taped', 'paced', 'by eye'] as const;

export type How = (typeof HOWS)[number];

/** How each named value of a record was got; a name that is absent was judged by eye. */
export type Hows = Readonly<Record<string, How>>;

interface Tolerance {
  readonly shareOfValue: number;
  readonly leastM: number;
  readonly angleRad: number;
}

/**
 * Half-widths of the range that a value is taken to lie in. Common practice, no source: a tape over rough ground
 * repeats to a few centimetres, pacing to a tenth, the eye to a quarter; a hand inclinometer laid on a bar reads to a
 * degree, the eye misjudges a slope by five.
 */
const TOLERANCES: Readonly<Record<How, Tolerance>> = {
  scanned: { shareOfValue: 0.02, leastM: 0.02, angleRad: rad(0.5) },
  taped: { shareOfValue: 0.03, leastM: 0.02, angleRad: rad(1) },
  paced: { shareOfValue: 0.1, leastM: 0.1, angleRad: rad(3) },
  'by eye': { shareOfValue: 0.25, leastM: 0.05, angleRad: rad(5) },
};

/** The ± of a measured value, in its own SI unit. */
export function plusMinus(value: number, quantity: Quantity, how: How | undefined): number {
  const tolerance = TOLERANCES[how ?? 'by eye'];
  if (quantity === 'angle') return tolerance.angleRad;
  const share = Math.abs(value) * tolerance.shareOfValue;
  return quantity === 'size' || quantity === 'length' ? Math.max(share, tolerance.leastM) : share;
}
