import type { Feature } from './feature.ts';
import type { Corridor } from './obstacle.ts';

/**
 * What one vehicle drives over in its own direction of travel: every value decided, no ranges left. The frame is the
 * obstacle's: origin at the pin, x forward, y left, z normal to the reference plane; gravity is turned instead.
 */
export interface Ground {
  readonly lengthM: number;
  /** Climbing positive; NaN when nobody knows it. */
  readonly slopeRad: number;
  /** Left side high positive. */
  readonly camberRad: number;
  readonly peakAdhesion: number;
  readonly slidingAdhesion: number;
  readonly rollingResistance: number;
  readonly corridor: Corridor;
  readonly features: readonly Feature[];
}
