import type { Track, Waypoint } from '../route/track.ts';
import type { Direction, Obstacle, Stretch } from '../terrain/obstacle.ts';
import type { OutcomeWord } from '../grade/outcome.ts';
import type { VerdictWord } from '../grade/verdict.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';

export type { OutcomeWord } from '../grade/outcome.ts';
export { OUTCOME_WORDS } from '../grade/outcome.ts';

/** A dated measurement of an obstacle: the ground as it was found then. Never changed by a later one. */
export interface Visit {
  readonly id: string;
  /** When it was measured, milliseconds since 1970-01-01T00:00:00Z. */
  readonly atMs: number;
  /** Who measured it, as they want to be named; may be empty. */
  readonly by: string;
  readonly stretch: Stretch;
  readonly note: string;
}

/** What one vehicle really did at an obstacle, against what was said of it. */
export interface Outcome {
  readonly id: string;
  readonly atMs: number;
  readonly by: string;
  /** As it was that day, with no driver's name. */
  readonly vehicle: Vehicle;
  readonly lineId: string;
  readonly direction: Direction;
  /** Name of the rung of aids that was engaged. */
  readonly rung: string;
  /** What was said before; null where nothing was. */
  readonly said: VerdictWord | null;
  readonly did: OutcomeWord;
  readonly note: string;
}

/** An obstacle through the years. Its ground today is that of its newest visit. */
export interface Surveyed {
  readonly obstacle: Obstacle;
  /** Oldest first; at least one. */
  readonly visits: readonly Visit[];
  /** Oldest first. */
  readonly outcomes: readonly Outcome[];
}

/** A track as the club keeps it: what is known of it, through the years. */
export interface GradedTrack {
  readonly id: string;
  readonly name: string;
  /** Where it lies, in words. */
  readonly area: string;
  /** Closures, permits, whom to ask; free text. */
  readonly note: string;
  readonly track: Track | null;
  readonly waypoints: readonly Waypoint[];
  /** In the order of the recorded track. */
  readonly surveyed: readonly Surveyed[];
}
