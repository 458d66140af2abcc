import type { Bias, Driveline } from '../vehicle/driveline.ts';
import { LEAST_BITE } from './limits.ts';

/** The drive forces of one station at their greatest. Filled anew by each call of `greatestDrive`. */
export interface Drive {
  /** Tangential force T of each wheel, newtons. */
  readonly driveN: Float64Array;
  /** The bound that friction sets each wheel, gripping. */
  readonly boundN: Float64Array;
  /** Greatest Σ X along the plane, climb of the wheels' own contacts taken off, newtons. */
  alongN: number;
  /** Whether gearing and engine hold it down rather than grip. */
  engineLimits: boolean;
}

export function noDrive(): Drive {
  return { driveN: new Float64Array(4), boundN: new Float64Array(4), alongN: 0, engineLimits: false };
}

/**
 * A wheel that carries V normal to the plane on ground that climbs at α gives X = T / cos α − V tan α along it. Its
 * drive force T is at most μ N, and N = (V − T sin α) / cos α, so
 *
 *     0 ≤ T ≤ V μ / (cos α + μ sin α) = V μ √(1 + t²) / (1 + μ t),     t = tan α
 */
function boundN(V: number, t: number, mu: number): number {
  return (V * mu * Math.sqrt(1 + t * t)) / Math.max(LEAST_BITE, 1 + mu * t);
}

/**
 * Greatest push of all wheels. An axle whose weaker wheel spins has sliding grip s there; the other wheel gets s times
 * the bias, at most its own gripping bound b, and brake traction control adds its share of what is left, b − that. A
 * locked axle spins only as a whole, so both wheels have their gripping bound. Two axles are joined in the same way.
 *
 * The engine turns a braked wheel too: to add b it spends 2 b. With E what it can give and p the push without brakes, the
 * brakes add no more than (E − p) / 2. E counts along the plane, which asks a little much of it where wheels climb.
 */
export function greatestDrive(
  line: Driveline,
  loadN: ArrayLike<number>,
  climbTan: ArrayLike<number>,
  peak: number,
  sliding: number,
  out: Drive,
): void {
  const T = out.driveN;
  const front = driveAxle(0, line.front, line.brakeShare, loadN, climbTan, peak, sliding, out);
  const rear = driveAxle(2, line.rear, line.brakeShare, loadN, climbTan, peak, sliding, out);
  T[2] *= line.rearReach;
  T[3] *= line.rearReach;
  const joined = joinAxles(T, line.centre, line.brakeShare);

  let pushN = 0;
  let climbN = 0;
  for (let i = 0; i < 4; i++) {
    pushN += T[i] * Math.sqrt(1 + climbTan[i] * climbTan[i]);
    climbN += loadN[i] * climbTan[i];
  }
  const gripN = pushN * line.engineLeaves;
  const braked = Math.min(1, Math.max(front, rear) + joined);
  const plainN = gripN * (1 - braked);
  const givenN = line.forceN < plainN ? line.forceN : Math.min(gripN, (line.forceN + plainN) / 2);
  out.engineLimits = givenN < gripN;
  const part = pushN > 0 ? givenN / pushN : 0;
  for (let i = 0; i < 4; i++) T[i] *= part;
  out.alongN = givenN - climbN;
}

/** Fills in the drive and the bounds of an axle's wheels; answers the part of its drive that brakes bought. */
function driveAxle(
  i: number,
  bias: Bias,
  brakeShare: number,
  loadN: ArrayLike<number>,
  climbTan: ArrayLike<number>,
  peak: number,
  sliding: number,
  out: Drive,
): number {
  const bound = out.boundN;
  const T = out.driveN;
  bound[i] = boundN(loadN[i], climbTan[i], peak);
  bound[i + 1] = boundN(loadN[i + 1], climbTan[i + 1], peak);
  if (bias === Infinity) {
    T[i] = bound[i];
    T[i + 1] = bound[i + 1];
    return 0;
  }
  if (bias === 0) {
    T[i] = 0;
    T[i + 1] = 0;
    return 0;
  }
  const left = boundN(loadN[i], climbTan[i], sliding);
  const right = boundN(loadN[i + 1], climbTan[i + 1], sliding);
  const weak = left <= right ? i : i + 1;
  const strong = weak === i ? i + 1 : i;
  const s = Math.min(left, right);
  const biased = Math.min(bound[strong], s * bias);
  T[weak] = s;
  T[strong] = biased + brakeShare * (bound[strong] - biased);
  const sum = T[weak] + T[strong];
  return sum > 0 ? (T[strong] - biased) / sum : 0;
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
