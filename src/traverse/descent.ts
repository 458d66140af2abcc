import type { Ground } from '../terrain/ground.ts';
import type { Driveline } from '../vehicle/driveline.ts';
import type { Grip } from './grip.ts';
import { DESCENT_FROM, HANGS, ROLLING_HELPS } from './limits.ts';
import type { TraverseRecord } from './record.ts';
import { boundWheels, greatestDrive, noBounds, noDrive } from './traction.ts';
import type { Up } from './up.ts';

/** What holds a vehicle back on its way down, station by station: forces along the ground under it, over its weight. */
export interface Descent {
  /** What the ground under the wheels asks: sine of its fall, mean over a wheelbase; 0 where it does not fall. */
  readonly ask: Float64Array;
  /** What braked wheels can hold of that, mean over a wheelbase. */
  readonly brake: Float64Array;
  /** What engine and rolling resistance hold without brakes, never more than `brake`. */
  readonly engine: Float64Array;
  /** What limits the engine: an index into `ENGINE_LIMITS`, or `HANGING` and a bit for each wheel in the air. */
  readonly limitedBy: Uint8Array;
}

/** Keys of `say.causes`. */
export const ENGINE_LIMITS = ['engine', 'grip'] as const;

/** Added to one bit a wheel: the wheels in the air that take the engine braking away through an open differential. */
export const HANGING = 16;

/**
 * A closed throttle drags wheels back as an open one drives them forward, so it is `greatestDrive` seen from behind: what
 * climbs falls, α → −α, and the bound of a wheel is V μ √(1 + t²) / (1 − μ t), the same as that of a braked one. Grip is
 * sliding throughout. The wheels together drag no more than the engine asks, F; behind an open differential each gets what
 * the lesser one bears, so that one in the air, which the engine stops or turns backwards, leaves nothing for the other.
 *
 * The engine's part is told at each station and not as a mean: where it is gone, it is gone at once. Rolling resistance
 * counts as that of hard ground, as softer ground may end, and its printed range is wide.
 *
 * With the mean climb of the contacts c = Σ V t / m g, the ground under the vehicle falls from the plane by α,
 * tan α = −c / u_z, and what the plane counts along itself counts cos α times along the ground: (−u_x − c) cos α is the
 * sine of its fall. Null where that stays under `DESCENT_FROM`; on a plane that does not fall, what falls less is a step
 * and no descent, and nothing is asked there.
 */
export function descentAlong(
  record: TraverseRecord,
  overrun: Driveline,
  { loadN, carried, meanClimb: climb, meanOn: braked }: Grip,
  weightN: number,
  { slidingAdhesion: sliding, rollingResistance }: Ground,
  up: Up,
): Descent | null {
  const { length, standing, climbTan } = record;
  let steepest = 0;
  for (let n = 0; n < length; n++) if (standing[n] === 0) steepest = Math.max(steepest, fallAt(up, climb[n]));
  if (steepest < DESCENT_FROM) return null;

  const ask = new Float64Array(length);
  const brake = new Float64Array(length);
  const engine = new Float64Array(length);
  const limitedBy = new Uint8Array(length);
  const drag = noDrive();
  const bounds = noBounds(1);
  const V = new Float64Array(4);
  const fall = new Float64Array(4);
  const rolling = Math.min(rollingResistance, ROLLING_HELPS);
  let heldN = 0;
  let heldAt = -1;
  for (let n = 0; n < length; n++) {
    const falls = fallAt(up, climb[n]);
    if (standing[n] !== 0 || falls < (up.x < 0 ? 0 : DESCENT_FROM)) continue;
    const cos = alongGround(up, climb[n]);
    ask[n] = falls;
    brake[n] = (braked[n] - climb[n]) * cos;
    if (falls <= 0) continue;
    if (heldAt >= 0 && heldAt === n - 1 && record.repeats[n] === 1 && carried[n] === carried[n - 1]) {
      limitedBy[n] = limitedBy[n - 1];
    } else {
      for (let i = 0; i < 4; i++) {
        V[i] = loadN[4 * n + i];
        fall[i] = -climbTan[4 * n + i];
      }
      const sum = V[0] + V[1] + V[2] + V[3];
      boundWheels(V, fall, sliding, sliding, 0, bounds);
      greatestDrive(overrun, bounds, 0, drag);
      heldN = drag.alongN + bounds.climbN[0] + rolling * sum;
      limitedBy[n] = drag.engineLimits || overrun.forceN === 0 ? 0 : hanging(V, sum, overrun) || 1;
    }
    heldAt = n;
    engine[n] = Math.max(0, Math.min((heldN / weightN) * cos, brake[n]));
  }
  return { ask, brake, engine, limitedBy };
}

/** Cosine of the angle α from the plane to the ground whose mean climb is c. */
function alongGround(up: Up, climb: number): number {
  return up.z / Math.sqrt(up.z * up.z + climb * climb);
}

/** Sine of the fall of the ground under the vehicle. */
function fallAt(up: Up, climb: number): number {
  return (-up.x - climb) * alongGround(up, climb);
}

/** Wheels in the air on a driven axle whose differential is open; 0 where there are none. */
function hanging(V: Float64Array, sum: number, { front, rear }: Driveline): number {
  let wheels = 0;
  for (let i = 0; i < 4; i++) {
    const bias = i < 2 ? front : rear;
    if (bias === 1 && V[i] < (HANGS * sum) / 4) wheels |= 1 << i;
  }
  return wheels === 0 ? 0 : HANGING | wheels;
}
