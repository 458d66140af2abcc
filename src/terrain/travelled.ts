import type { Direction, Stretch } from './obstacle.ts';
import { reversedCorridor, reversedFeature } from './reverse.ts';

/** A stretch as the convoy meets it: x along its travel, y to its left. What was entered is as recorded. */
export function asTravelled(stretch: Stretch, direction: Direction): Stretch {
  if (direction === 'as recorded') return stretch;
  const turned = (value: number | null) => (value === null ? null : 0 - value);
  return {
    ...stretch,
    plane: { slopeRad: turned(stretch.plane.slopeRad), camberRad: turned(stretch.plane.camberRad) },
    corridor: reversedCorridor(stretch.corridor),
    features: stretch.features.map(reversedFeature),
  };
}
