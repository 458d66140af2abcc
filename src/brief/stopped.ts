import type { Stretch } from '../terrain/obstacle.ts';
import { rad } from '../units.ts';
import { say } from '../words/words.ts';

/** From here on a vehicle that stops on a slope needs more than its brake. Common practice, no source. */
const SLOPE_RAD = rad(3);
const SIDE_RAD = rad(5);

export type StoppedOn = 'uphill' | 'downhill' | 'side slope' | 'water' | 'level ground';

/** What a driver does who has stopped where he should not. Common practice, no source; trained people come first. */
export const IF_IT_STOPS: Readonly<Record<StoppedOn, string>> = say.driving.ifItStops;

/** What holds at a place as the convoy comes to it; `slopeRad` null where not known, which counts as both ways. */
export function stoppedOn({ plane, features }: Stretch, slopeRad: number | null): StoppedOn[] {
  const on: StoppedOn[] = [];
  if (features.some(({ kind }) => kind === 'water')) on.push('water');
  if (plane.camberRad === null || Math.abs(plane.camberRad) >= SIDE_RAD) on.push('side slope');
  if (slopeRad === null || slopeRad >= SLOPE_RAD) on.push('uphill');
  if (slopeRad === null || slopeRad <= -SLOPE_RAD) on.push('downhill');
  return on.length === 0 ? ['level ground'] : on;
}
