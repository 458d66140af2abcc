/** One vehicle at one place whose verdict hung on traction: what adhesion it needed, and whether it had it. */
export interface Trial {
  /** Peak adhesion at which its traction margin is nought. */
  readonly needed: number;
  /** It went at a crawl; else it was pulled or turned back. */
  readonly went: boolean;
}

/** What the trials on one surface say of its peak adhesion. */
export interface AdhesionEstimate {
  readonly trials: number;
  readonly went: number;
  /** Most likely value; null where all went or none did, as then there is no end to one side. */
  readonly likely: number | null;
  /** Ends of the 95 % interval; null where nothing holds that end. */
  readonly low: number | null;
  readonly high: number | null;
}

/**
 * How far the adhesion of one try strays from that of its surface, as a standard deviation: the printed ranges of loose
 * ground are some 0.05 to 0.17 either way, and the needed adhesion is only known as well as slope and sizes were read.
 * Common practice, no source.
 */
export const ADHESION_SPREAD = 0.08;

/** Fewer tries than this say nothing: by luck alone they could all fall to one side. Common practice, no source. */
export const LEAST_TRIALS = 8;

/** Half of the 95 % point of χ² with one degree of freedom: how far the log of the likelihood may drop. */
const DROP_95 = 3.841458820694124 / 2;

/** Adhesion is sought between these; a dimensionless ratio. */
const LOWEST = 0;
const HIGHEST = 1.5;
/** Halvings of that range: to less than a millionth. */
const HALVINGS = 21;

/**
 * The peak adhesion that tries suggest. A try that needs x on ground of adhesion θ goes with probability Φ((θ − x) / s),
 * the probit model of a dose and its response (Finney, Probit Analysis, 1947) with its spread s given. The log of its
 * likelihood is concave, so one greatest value is found by halving; the interval is where it lies within 1.92 of that.
 * Null below `LEAST_TRIALS`.
 */
export function adhesionFrom(
  trials: readonly Trial[],
  spread: number = ADHESION_SPREAD,
  least: number = LEAST_TRIALS,
): AdhesionEstimate | null {
  if (trials.length < Math.max(1, least)) return null;
  const went = trials.filter((trial) => trial.went).length;
  const log = (theta: number) => logLikelihood(trials, theta, spread);
  const step = (HIGHEST - LOWEST) / 2 ** HALVINGS;
  const top = edge(LOWEST, HIGHEST, (theta) => log(theta + step) > log(theta));
  const floor = log(top) - DROP_95;
  const mixed = went > 0 && went < trials.length;
  return {
    trials: trials.length,
    went,
    likely: mixed ? top : null,
    low: went > 0 ? edge(LOWEST, top, (theta) => log(theta) < floor) : null,
    high: went < trials.length ? edge(top, HIGHEST, (theta) => log(theta) >= floor) : null,
  };
}

/** Where between two values what holds at the lower ones holds no longer. */
function edge(from: number, to: number, holds: (value: number) => boolean): number {
  let [low, high] = [from, to];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (holds(middle)) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Log of the probability of all that was seen, were the adhesion `theta`. */
export function logLikelihood(trials: readonly Trial[], theta: number, spread: number): number {
  return trials.reduce((sum, { needed, went }) => {
    const z = (theta - needed) / spread;
    return sum + logNormal(went ? z : -z);
  }, 0);
}

/** Beyond this the normal distribution is taken from its tail. */
const TAIL = 5;

/** Log of the standard normal distribution function. */
export function logNormal(z: number): number {
  if (z > TAIL) return Math.log1p(-Math.exp(logNormal(-z)));
  if (z >= -TAIL) return Math.log(normal(z));
  const zz = z * z;
  return -zz / 2 - Math.log(-z * Math.sqrt(2 * Math.PI)) + Math.log1p(-1 / zz + 3 / zz ** 2 - 15 / zz ** 3);
}

/**
 * Standard normal distribution function near the middle, by the series Φ(z) = ½ + φ(z) Σ z^(2k+1) / (1·3·…·(2k+1)):
 * Abramowitz and Stegun, Handbook of Mathematical Functions, 1964, 26.2.11.
 */
function normal(z: number): number {
  let term = z;
  let sum = z;
  for (let k = 1; Math.abs(term) > 1e-17; k++) {
    term *= (z * z) / (2 * k + 1);
    sum += term;
  }
  return 0.5 + (Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI)) * sum;
}
