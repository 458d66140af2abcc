import { LEAST_BITE } from './limits.ts';

/**
 * Sideways force that an axle can still bear, over its share of weight, less what gravity asks of it; towards the side
 * where that is least. A wheel that would sink at β if it slid bears, with μ' left of its friction after drive
 * (μ'² = μ² (1 − q²), q the used part of its drive bound), t = tan β and tan λ = μ',
 *
 *     V tan(λ − β) = V (μ' − t) / (1 + μ' t)
 *
 * and the axle must bear its share m g u_y of the camber's pull. A wheel on a rut's shoulder would sink, so that it slides
 * in when this is negative; one at the bottom of a rut would rise, and stays. `left` is the index of the axle's left wheel.
 */
export function sideHoldN(
  loadN: ArrayLike<number>,
  fallTan: ArrayLike<number>,
  left: number,
  muLeft: number,
  muRight: number,
): number {
  let sum = 0;
  for (let i = left; i < left + 2; i++) {
    const mu = i === left ? muLeft : muRight;
    const t = fallTan[i];
    sum += (loadN[i] * (mu - t)) / Math.max(LEAST_BITE, 1 + mu * t);
  }
  return sum;
}
