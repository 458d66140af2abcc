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
 * locked axle spins only as a whole, so both wheels have their gripping bound. Two axles are joined in the same way. The
 * engine turns the braked wheel too, so what is braked away comes off what it can give.
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
  let plain = 0;
  let brakedN = 0;
  for (let i = 0; i < 4; i += 2) {
    const bias = i === 0 ? line.front : line.rear;
    const bL = boundN(loadN[i], climbTan[i], peak);
    const bR = boundN(loadN[i + 1], climbTan[i + 1], peak);
    out.boundN[i] = bL;
    out.boundN[i + 1] = bR;
    if (bias === Infinity) {
      T[i] = bL;
      T[i + 1] = bR;
      continue;
    }
    const sL = boundN(loadN[i], climbTan[i], sliding);
    const sR = boundN(loadN[i + 1], climbTan[i + 1], sliding);
    const weak = sL <= sR ? i : i + 1;
    const s = Math.min(sL, sR);
    const biased = Math.min(weak === i ? bR : bL, s * bias);
    const strong = bias === 0 ? 0 : biased + line.brakeShare * ((weak === i ? bR : bL) - biased);
    T[weak] = bias === 0 ? 0 : s;
    T[weak ^ 1] = strong;
    brakedN += Math.max(0, strong - biased);
  }
  T[2] *= line.rearReach;
  T[3] *= line.rearReach;
  brakedN += joinAxles(T, line.centre, line.brakeShare);

  const total = T[0] + T[1] + T[2] + T[3];
  plain = total - brakedN;
  const gripN = total * line.engineLeaves;
  const engineN = Math.max(line.forceN - brakedN, Math.min(line.forceN, plain * line.engineLeaves));
  out.engineLimits = engineN < gripN;
  const part = total > 0 ? Math.min(engineN, gripN) / total : 0;
  let along = 0;
  for (let i = 0; i < 4; i++) {
    T[i] *= part;
    along += T[i] * Math.sqrt(1 + climbTan[i] * climbTan[i]) - loadN[i] * climbTan[i];
  }
  out.alongN = along;
}

/** Holds the stronger axle to what the centre lets it have; answers what is braked away for it. */
function joinAxles(T: Float64Array, centre: Bias, brakeShare: number): number {
  if (centre === Infinity) return 0;
  const front = T[0] + T[1];
  const rear = T[2] + T[3];
  const strong = front >= rear ? 0 : 2;
  const most = Math.max(front, rear);
  const biased = Math.min(most, Math.min(front, rear) * centre);
  const held = biased + brakeShare * (most - biased);
  if (most <= 0) return 0;
  T[strong] *= held / most;
  T[strong + 1] *= held / most;
  return held - biased;
}
