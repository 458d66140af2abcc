import type { Bias, Driveline } from '../vehicle/driveline.ts';
import { LEAST_BITE } from './limits.ts';
import { Shelf } from './shelf.ts';

/** The drive forces of one station at their greatest. Filled anew by each call of `greatestDrive`. */
export interface Drive {
  /** Tangential force T of each wheel, newtons. */
  readonly driveN: Float64Array;
  /** Greatest Σ X along the plane, climb of the wheels' own contacts taken off, newtons. */
  alongN: number;
  /** Whether gearing and engine hold it down rather than grip. */
  engineLimits: boolean;
}

export function noDrive(): Drive {
  return { driveN: new Float64Array(4), alongN: 0, engineLimits: false };
}

/** What friction lets each wheel of each station drive with, whatever turns it: four entries a station. */
export interface Bounds {
  /** Greatest drive of a wheel that grips, newtons. */
  readonly grippingN: Float64Array;
  /** The same of one that spins. */
  readonly spinningN: Float64Array;
  /** √(1 + tan² α), from along the plane to along the contact. */
  readonly secant: Float64Array;
  /** Σ V tan α, one a station, newtons. */
  readonly climbN: Float64Array;
}

/** Bytes that the bounds of one station take. */
const STATION_BYTES = 104;

export function noBounds(stations: number, shelf = new Shelf(STATION_BYTES * stations)): Bounds {
  return {
    grippingN: shelf.numbers(4 * stations),
    spinningN: shelf.numbers(4 * stations),
    secant: shelf.numbers(4 * stations),
    climbN: shelf.numbers(stations),
  };
}

/**
 * A wheel that carries V normal to the plane on ground that climbs at α gives X = T / cos α − V tan α along it. Its
 * drive force T is at most μ N, and N = (V − T sin α) / cos α, so
 *
 *     0 ≤ T ≤ V μ / (cos α + μ sin α) = V μ √(1 + t²) / (1 + μ t),     t = tan α
 *
 * Fills in the bounds of station `n`, whose loads and climbs are those from `4 n` on.
 */
export function boundWheels(
  loadN: ArrayLike<number>,
  climbTan: ArrayLike<number>,
  peak: number,
  sliding: number,
  n: number,
  { grippingN, spinningN, secant, climbN }: Bounds,
): void {
  climbN[n] = 0;
  for (let i = 4 * n; i < 4 * n + 4; i++) {
    const t = climbTan[i];
    secant[i] = Math.sqrt(1 + t * t);
    const V = loadN[i] * secant[i];
    grippingN[i] = (V * peak) / Math.max(LEAST_BITE, 1 + peak * t);
    spinningN[i] = (V * sliding) / Math.max(LEAST_BITE, 1 + sliding * t);
    climbN[n] += loadN[i] * t;
  }
}

/**
 * Greatest push of all wheels. An axle whose weaker wheel spins has sliding grip s there; the other wheel gets s times
 * the bias, at most its own gripping bound b, and brake traction control adds its share of what is left, b − that. A
 * locked axle spins only as a whole, so both wheels have their gripping bound. Two axles are joined in the same way.
 *
 * The engine turns a braked wheel too: to add b it spends 2 b. With E what it can give and p the push without brakes, the
 * brakes add no more than (E − p) / 2. E counts along the plane, which asks a little much of it where wheels climb.
 */
export function greatestDrive(line: Driveline, bounds: Bounds, n: number, out: Drive): void {
  const { secant } = bounds;
  const T = out.driveN;
  const front = driveAxle(4 * n, T, 0, line.front, line.brakeShare, bounds);
  const rear = driveAxle(4 * n + 2, T, 2, line.rear, line.brakeShare, bounds);
  T[2] *= line.rearReach;
  T[3] *= line.rearReach;
  const joined = joinAxles(T, line.centre, line.brakeShare);

  let pushN = 0;
  for (let i = 0; i < 4; i++) pushN += T[i] * secant[4 * n + i];
  const gripN = pushN * line.engineLeaves;
  const braked = Math.min(1, Math.max(front, rear) + joined);
  const plainN = gripN * (1 - braked);
  const givenN = line.forceN < plainN ? line.forceN : Math.min(gripN, (line.forceN + plainN) / 2);
  out.engineLimits = givenN < gripN;
  const part = pushN > 0 ? givenN / pushN : 0;
  for (let i = 0; i < 4; i++) T[i] *= part;
  out.alongN = givenN - bounds.climbN[n];
}

/** Fills in the drive of an axle's wheels; answers the part of it that brakes bought. */
function driveAxle(
  at: number,
  T: Float64Array,
  i: number,
  bias: Bias,
  brakeShare: number,
  { grippingN, spinningN }: Bounds,
): number {
  if (bias === Infinity) {
    T[i] = grippingN[at];
    T[i + 1] = grippingN[at + 1];
    return 0;
  }
  if (bias === 0) {
    T[i] = 0;
    T[i + 1] = 0;
    return 0;
  }
  const weakIsRight = spinningN[at] > spinningN[at + 1] ? 1 : 0;
  const s = spinningN[at + weakIsRight];
  const strongN = grippingN[at + 1 - weakIsRight];
  const biased = Math.min(strongN, s * bias);
  const strong = biased + brakeShare * (strongN - biased);
  T[i + weakIsRight] = s;
  T[i + 1 - weakIsRight] = strong;
  const sum = s + strong;
  return sum > 0 ? (strong - biased) / sum : 0;
}

/** Holds the stronger axle to what the centre lets it have; answers the part of the whole drive that brakes bought. */
function joinAxles(T: Float64Array, centre: Bias, brakeShare: number): number {
  if (centre === Infinity) return 0;
  const front = T[0] + T[1];
  const rear = T[2] + T[3];
  const strong = front >= rear ? 0 : 2;
  const most = Math.max(front, rear);
  if (most <= 0) return 0;
  const least = Math.min(front, rear);
  const biased = Math.min(most, least * centre);
  const held = biased + brakeShare * (most - biased);
  T[strong] *= held / most;
  T[strong + 1] *= held / most;
  return held > 0 ? (held - biased) / (held + least) : 0;
}
