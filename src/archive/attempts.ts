import { placesOn } from '../convoy/places.ts';
import type { Attempt } from '../grade/neededAdhesion.ts';
import type { Surface } from '../terrain/surface.ts';
import { stretchOf } from '../terrain/obstacle.ts';
import type { Obstacle } from '../terrain/obstacle.ts';
import type { GradedTrack, Surveyed } from './gradedTrack.ts';

/** An attempt that was made, the ground that it was made on, and whether it went at a crawl. */
export interface Made {
  readonly attempt: Attempt;
  readonly surface: Surface;
  readonly went: boolean;
}

/**
 * What the outcomes of a track tell of grip: each on the ground of the newest visit before it. Who took a run tells
 * nothing, as a crawl was not tried.
 */
export function attemptsOf({ track, surveyed }: GradedTrack): Made[] {
  return placesOn(
    track,
    surveyed.map(({ obstacle }) => obstacle),
  ).flatMap(({ trackSlope }, i) =>
    surveyed[i].outcomes.flatMap((outcome): Made[] => {
      const { vehicle, lineId, direction, rung, did, atMs } = outcome;
      const obstacle = obstacleAt(surveyed[i], atMs);
      const line = obstacle.lines.find(({ id }) => id === lineId);
      if (line === undefined || did === 'went with a run') return [];
      const attempt = { vehicle, obstacle, lineId, direction, rung, trackSlope };
      return [{ attempt, surface: stretchOf(obstacle, line).surface, went: did === 'went' }];
    }),
  );
}

/** The obstacle as it was last measured before a moment; before the first visit, as that one found it. */
export function obstacleAt({ obstacle, visits }: Surveyed, atMs: number): Obstacle {
  const known = visits.findLast((visit) => visit.atMs <= atMs) ?? visits.at(0);
  return known === undefined ? obstacle : { ...obstacle, stretch: known.stretch };
}
