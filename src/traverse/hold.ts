import { LEAST_BITE } from './limits.ts';

/**
 * Sideways force that an axle can still bear, over its share of weight, less what gravity asks of it; towards the side
 * where that is least. A wheel whose tread stands on ground that slopes by β across bears, with μ' left of its friction
 * after drive (μ'² = μ² (1 − q²), q the used part of its drive bound),
 *
 *     up the slope  V tan(λ − β) = V (μ' − t) / (1 + μ' t),   down it  V tan(λ + β),     tan λ = μ',  t = tan β
 *
 * and the axle must bear its share m g u_y of the camber's pull. A wheel on a rut's shoulder has t of its own, so that it
 * slides in when this is negative. `sign` is +1 for holding against a slide to the right (force to the left), −1 for left.
 */
export function sideHoldN(
  loadN: ArrayLike<number>,
  crossTan: ArrayLike<number>,
  left: number,
  sign: 1 | -1,
  muLeft: number,
  muRight: number,
): number {
  let sum = 0;
  for (let i = left; i < left + 2; i++) {
    const mu = i === left ? muLeft : muRight;
    const t = sign * crossTan[i];
    sum += (loadN[i] * (mu - t)) / Math.max(LEAST_BITE, 1 + mu * t);
  }
  return sum;
}
