import { sameDay } from './dateOnly.ts';
import { same } from './same.ts';
import type { Author } from './replica.ts';
import type { GradedTrack, Outcome, Surveyed, Visit } from './gradedTrack.ts';
import type { Trip } from './trip.ts';
import type { Obstacle } from '../terrain/obstacle.ts';

/** A trip with the newest ground of a graded track on it. */
export function tripOf(
  graded: GradedTrack,
  { id, vehicles, direction }: Pick<Trip, 'id' | 'vehicles' | 'direction'>,
): Trip {
  const { name, track, waypoints, surveyed } = graded;
  const obstacles = surveyed.map(({ obstacle }) => obstacle);
  return {
    id,
    name,
    note: '',
    radioChannel: '',
    direction,
    track,
    waypoints,
    obstacles,
    heldGrips: [],
    vehicles,
  };
}

/** Who files, when, and what new visits are to be called. */
export interface Filing extends Author {
  readonly newId: () => string;
  /** Whether every obstacle of the trip was measured again: what was found the same is a visit, too. */
  readonly allMeasured?: boolean;
}

/** A trip as a graded track that nobody knew before: every obstacle with its first visit. */
export function gradedAnew(trip: Trip, id: string, filing: Filing): GradedTrack {
  const { name, track, waypoints, obstacles } = trip;
  const surveyed = obstacles.map((obstacle) => surveyedAnew(obstacle, filing));
  return { id, name, area: '', note: '', track, waypoints, surveyed };
}

function surveyedAnew(obstacle: Obstacle, filing: Filing): Surveyed {
  return { obstacle, visits: [visitOf(obstacle, filing)], outcomes: [] };
}

function visitOf({ stretch }: Obstacle, { atMs, by, newId }: Filing): Visit {
  return { id: newId(), atMs, by, stretch, note: '' };
}

/** Apart enough that a later visit of the same day reads as later. */
const JUST_AFTER_MS = 60_000;

/** The filing of an obstacle that has `visits` already: what is filed later was measured later, too, where both say one day. */
function afterVisits(filing: Filing, visits: readonly Visit[] = []): Filing {
  const last = visits
    .filter(({ atMs }) => sameDay(atMs, filing.atMs))
    .reduce((most, { atMs }) => Math.max(most, atMs), -Infinity);
  return last < filing.atMs ? filing : { ...filing, atMs: last + JUST_AFTER_MS };
}

function visitsAt({ surveyed }: GradedTrack, id: string): readonly Visit[] | undefined {
  return surveyed.find(({ obstacle }) => obstacle.id === id)?.visits;
}

/** Whether a trip found other ground than that of today, and than that which was known of the day that is filed. */
function isFoundAnew({ obstacle, visits }: Surveyed, { stretch }: Obstacle, { atMs }: Filing): boolean {
  if (same(stretch, obstacle.stretch)) return false;
  const before = visits.filter((visit) => visit.atMs <= atMs).at(-1);
  return before === undefined || !same(stretch, before.stretch);
}

/**
 * A trip filed back into the graded track that it was taken out of, `base`: as that stood then; `now` is how it stands. Ground
 * that is not what it was gets a visit. The track keeps its own name, and obstacles that the trip passed over; outcomes stay.
 */
export function graded(trip: Trip, base: GradedTrack, filing: Filing, now: GradedTrack = base): GradedTrack {
  const met = new Map(trip.obstacles.map((obstacle) => [obstacle.id, obstacle]));
  const known = new Set(base.surveyed.map(({ obstacle }) => obstacle.id));
  const kept = base.surveyed.map((one): Surveyed => {
    const obstacle = met.get(one.obstacle.id);
    if (!obstacle) return one;
    const filed = afterVisits(filing, visitsAt(now, obstacle.id));
    const isNew =
      isFoundAnew(one, obstacle, filed) || (filing.allMeasured && !isVisited(one, obstacle, filing));
    return { ...one, obstacle, visits: isNew ? [...one.visits, visitOf(obstacle, filed)] : one.visits };
  });
  const added = trip.obstacles
    .filter(({ id }) => !known.has(id))
    .map((one) => surveyedAnew(one, afterVisits(filing, visitsAt(now, one.id))));
  return {
    ...base,
    track: trip.track ?? base.track,
    waypoints: trip.waypoints,
    surveyed: inOrder([...kept, ...added]),
  };
}

/** Whether an obstacle has a visit that found the ground of `obstacle`; on the very day that is filed, where all was measured. */
function isVisited({ visits }: Surveyed, { stretch }: Obstacle, { atMs, allMeasured }: Filing): boolean {
  return visits.some((visit) => same(visit.stretch, stretch) && (!allMeasured || sameDay(visit.atMs, atMs)));
}

/**
 * A trip filed into a graded track of which nobody knows how it stood when the trip began. What the trip has more than the
 * archive is added; of everything else the archive's own stays.
 */
export function gradedBeside(trip: Trip, now: GradedTrack, filing: Filing): GradedTrack {
  const theirs = gradedAnew(trip, now.id, filing);
  const unheard = theirs.surveyed.map((one) => {
    const own = now.surveyed.find(({ obstacle }) => obstacle.id === one.obstacle.id);
    if (own === undefined) return one;
    if (isVisited(own, one.obstacle, filing)) return { ...one, visits: [] };
    return surveyedAnew(one.obstacle, afterVisits(filing, own.visits));
  });
  return joined(now, { ...theirs, surveyed: unheard });
}

/** Everything of two records of one track by its id; where both have something, that of `own`. */
export function joined(own: GradedTrack, other: GradedTrack): GradedTrack {
  const surveyed = other.surveyed.map((theirs): Surveyed => {
    const ours = own.surveyed.find(({ obstacle }) => obstacle.id === theirs.obstacle.id);
    if (!ours) return theirs;
    const obstacle = {
      ...ours.obstacle,
      lines: both(ours.obstacle.lines, theirs.obstacle.lines),
      photos: both(ours.obstacle.photos, theirs.obstacle.photos),
    };
    const visits = oldestFirst(both(ours.visits, theirs.visits));
    return { obstacle, visits, outcomes: oldestFirst(both(ours.outcomes, theirs.outcomes)) };
  });
  const left = own.surveyed.filter((ours) =>
    surveyed.every(({ obstacle }) => obstacle.id !== ours.obstacle.id),
  );
  return {
    ...own,
    track: own.track ?? other.track,
    waypoints: own.waypoints.length > 0 ? own.waypoints : other.waypoints,
    surveyed: inOrder([...left, ...surveyed]),
  };
}

function both<T extends { readonly id: string }>(ours: readonly T[], theirs: readonly T[]): T[] {
  return [...ours, ...theirs.filter(({ id }) => ours.every((one) => one.id !== id))];
}

/** A track with what a vehicle really did at one of its obstacles. */
export function withOutcome(track: GradedTrack, obstacleId: string, outcome: Outcome): GradedTrack {
  const surveyed = track.surveyed.map((one) =>
    one.obstacle.id === obstacleId ? { ...one, outcomes: oldestFirst([...one.outcomes, outcome]) } : one,
  );
  return { ...track, surveyed };
}

function oldestFirst<T extends { readonly atMs: number }>(list: readonly T[]): T[] {
  return [...list].sort((a, b) => a.atMs - b.atMs);
}

function inOrder(surveyed: readonly Surveyed[]): Surveyed[] {
  return [...surveyed].sort((a, b) => a.obstacle.stationM - b.obstacle.stationM);
}
