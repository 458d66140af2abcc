import type { GradedTrack } from './gradedTrack.ts';
import { ARCHIVE_LIMITS } from './limits.ts';

/** How long ago the ground of an obstacle was last measured. */
export interface Age {
  readonly obstacleId: string;
  readonly atMs: number;
  /** Who measured it then. */
  readonly by: string;
  readonly ageMs: number;
  /** Too long ago to be taken for the ground of today. */
  readonly isStale: boolean;
}

/** Obstacle by obstacle. `nowMs` is the time of day; a visit of the future, by a clock that is wrong, is stale too. */
export function agesOf(graded: GradedTrack, nowMs: number): Age[] {
  return graded.surveyed.flatMap(({ obstacle, visits }): Age[] => {
    const newest = visits.at(-1);
    if (!newest) return [];
    const ageMs = nowMs - newest.atMs;
    const isStale = isStaleAt(newest.atMs, nowMs);
    return [{ obstacleId: obstacle.id, atMs: newest.atMs, by: newest.by, ageMs, isStale }];
  });
}

/** Whether ground that was measured at `atMs` is too old; a clock may be a day ahead. */
export function isStaleAt(atMs: number, nowMs: number): boolean {
  return nowMs - atMs > ARCHIVE_LIMITS.staleMs || atMs - nowMs > ARCHIVE_LIMITS.clockMs;
}
