import type { Ground } from '../terrain/ground.ts';

/** The upward vertical as direction cosines in the plane's frame: x forward, y left, z normal to the plane. */
export interface Up {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

/**
 * An inclinometer on a bar along x reads the slope and on a bar along y the camber, each against the horizontal, so
 * up·x = sin(slope) and up·y = sin(camber). Null where the two contradict each other or either is not known.
 */
export function upOf(ground: Ground): Up | null {
  const x = Math.sin(ground.slopeRad);
  const y = Math.sin(ground.camberRad);
  const rest = 1 - x * x - y * y;
  return rest > 0.01 ? { x, y, z: Math.sqrt(rest) } : null;
}
