import type { Stretch } from '../terrain/obstacle.ts';
import { rad } from '../units.ts';

/** From here on a vehicle that stops on a slope needs more than its brake. Common practice, no source. */
const SLOPE_RAD = rad(3);
const SIDE_RAD = rad(5);

export type StoppedOn = 'uphill' | 'downhill' | 'side slope' | 'water' | 'level ground';

/** What a driver does who has stopped where he should not. Common practice, no source; trained people come first. */
export const IF_IT_STOPS: Readonly<Record<StoppedOn, string>> = {
  uphill:
    'foot brake and clutch (automatic: foot brake), hand brake. On the spotter’s sign low reverse, straight back down your own tracks on the engine. No turning on the slope, no neutral, no rolling on the clutch.',
  downhill:
    'foot brake, hand brake, wait for the leader. If it slides: off the brake until the wheels turn, then gently on, straight down. No turning on the slope.',
  'side slope':
    'brakes on, sit still, no turning uphill. Out one at a time, on the high side only. It is tied to the high side before it moves again.',
  water:
    'do not crank a stopped engine, water may be in it. Belts off, windows down. Out when the leader says, or at once if the water rises.',
  'level ground':
    'off the throttle: spinning wheels dig. Low reverse, straight back in your own tracks, once. If that fails, call the leader.',
};

/** What holds at a place as the convoy comes to it; `slopeRad` null where not known, which counts as both ways. */
export function stoppedOn({ plane, features }: Stretch, slopeRad: number | null): StoppedOn[] {
  const on: StoppedOn[] = [];
  if (features.some(({ kind }) => kind === 'water')) on.push('water');
  if (plane.camberRad === null || Math.abs(plane.camberRad) >= SIDE_RAD) on.push('side slope');
  if (slopeRad === null || slopeRad >= SLOPE_RAD) on.push('uphill');
  if (slopeRad === null || slopeRad <= -SLOPE_RAD) on.push('downhill');
  return on.length === 0 ? ['level ground'] : on;
}
