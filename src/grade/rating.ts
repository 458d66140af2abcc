import type { TrackSlope } from '../terrain/ground.ts';
import type { Direction, Obstacle, Stretch } from '../terrain/obstacle.ts';
import type { Condition, Material } from '../terrain/surface.ts';
import type { CheckName } from '../traverse/assess.ts';
import type { ClassificationId, Season, Trial } from './classification.ts';
import type { Measure } from './criteria.ts';
import { CRITERIA, levelAt } from './criteria.ts';
import { groundsIn, rainHides } from './season.ts';
import { levelBySizes } from './sizes.ts';
import { levelByTrials } from './trials.ts';
import type { VerdictWord } from './verdict.ts';

/** Why a level is not one lower. */
export type Reason =
  /** A size, at the hard end of its range, beyond the last value that the level below allows; SI. */
  | { readonly kind: 'size'; readonly measure: Measure; readonly value: number; readonly limit: number }
  /** Ground that the classification's words name. */
  | { readonly kind: 'ground'; readonly material: Material; readonly condition: Condition }
  | { readonly kind: 'soft ground' }
  /** A vehicle that the level below is for does not do here what its words promise. */
  | {
      readonly kind: 'vehicle';
      readonly trial: Trial;
      readonly word: VerdictWord;
      /** What limits it; null where that is not known. */
      readonly check: CheckName | null;
      readonly cause: string;
    };

/** Why a grade may be harder than it says. */
export type Open =
  | 'slope'
  | 'camber'
  | 'size'
  | 'contradiction'
  /** The reference vehicles were not taken over it. */
  | 'vehicles'
  /** What rain makes of it cannot be reckoned. */
  | 'water'
  | 'soft ground'
  /** Elevations between the obstacles: none, or too rough to tell the level. */
  | 'track slope'
  | 'rough track slope';

/** A level, what sets it, and why it may be more than that. */
export interface Graded {
  /** From 1, the easiest; where `open` is not empty it is at least this. */
  readonly level: number;
  /** Null at the easiest level. */
  readonly reason: Reason | null;
  readonly open: readonly Open[];
  /** Not even the vehicle that the hardest level is for goes here by itself. */
  readonly beyond: boolean;
}

/** The grade of one obstacle, of its main line. */
export interface ObstacleGrade extends Graded {
  readonly obstacleId: string;
}

/** The grade of a track in one direction. */
export interface TrackGrade extends Graded {
  /** The obstacle that sets the level; null where the track's own slope does, or nothing. */
  readonly setBy: string | null;
  /** In the order of the recorded track. */
  readonly perObstacle: readonly ObstacleGrade[];
}

/** An obstacle with what the track's elevations say of the slope there. */
export interface GradedPlace {
  readonly obstacle: Obstacle;
  readonly trackSlope: TrackSlope | null;
}

/** A stretch of track of like slope, between obstacles too; all NaN where not known. */
export interface TrackSegment extends TrackSlope {
  readonly fromM: number;
  readonly toM: number;
}

/**
 * The level by sizes alone: microseconds, so that an archive can be graded anew as a whole. The reference vehicles can only
 * make it harder, hence it is a level "at least" until `gradeObstacle` has taken them over it.
 */
export function gradeBySizes(
  place: GradedPlace,
  season: Season,
  classification: ClassificationId,
): ObstacleGrade {
  const { obstacle, trackSlope } = place;
  const all = groundsIn(season, obstacle.stretch).map((stretch): Graded => {
    const { level, reason, open } = levelBySizes(stretch, trackSlope, classification);
    return { level, reason, open: [...open, 'vehicles'], beyond: false };
  });
  return { obstacleId: obstacle.id, ...hardest(all, hidden(season, obstacle.stretch)) };
}

/** The harder of the level by sizes and that by the reference vehicles, taken along the main line by the traverse. */
export function gradeObstacle(
  place: GradedPlace,
  direction: Direction,
  season: Season,
  classification: ClassificationId,
): ObstacleGrade {
  const { obstacle, trackSlope } = place;
  const all = groundsIn(season, obstacle.stretch).map((stretch): Graded => {
    const bySizes = levelBySizes(stretch, trackSlope, classification);
    const byTrials = levelByTrials(stretch, direction, trackSlope, classification, bySizes.level);
    if (byTrials === null) return { ...bySizes, open: [...bySizes.open, 'vehicles'], beyond: false };
    const { level, beyond } = byTrials;
    return { level, reason: byTrials.reason ?? bySizes.reason, open: bySizes.open, beyond };
  });
  return { obstacleId: obstacle.id, ...hardest(all, hidden(season, obstacle.stretch)) };
}

function hidden(season: Season, stretch: Stretch): Open[] {
  return season === 'wet' ? rainHides(stretch) : [];
}

/** The hardest of some grades, the first of equals; open is what is open of any, and more. */
function hardest(all: readonly Graded[], more: readonly Open[] = []): Graded {
  const worst = all.reduce((most, next) => (isHarder(next, most) ? next : most));
  const open = [...new Set([...all.flatMap((one) => one.open), ...more])];
  return { ...worst, open };
}

function isHarder(a: Graded, b: Graded): boolean {
  return a.level === b.level ? a.beyond && !b.beyond : a.level > b.level;
}

/** The grade of a track with some obstacles; `segments` null where its elevations tell nothing. */
export function gradeOfTrack(
  perObstacle: readonly ObstacleGrade[],
  segments: readonly TrackSegment[] | null,
  classification: ClassificationId,
): TrackGrade {
  const { obstacleId, ...worst }: Graded & { obstacleId: string | null } = [
    ...perObstacle,
    { ...slopeGrade(segments, classification), obstacleId: null },
  ].reduce((most, next) => (isHarder(next, most) ? next : most));
  const open = [...perObstacle, slopeGrade(segments, classification)].flatMap((one) => one.open);
  return { ...worst, open: [...new Set(open)], setBy: obstacleId, perObstacle };
}

/** All in one: each obstacle in a direction, and the track's own slopes. `bySizes` alone leaves the vehicles out. */
export function gradeOf(
  places: readonly GradedPlace[],
  direction: Direction,
  season: Season,
  classification: ClassificationId,
  segments: readonly TrackSegment[] | null,
  bySizes = false,
): TrackGrade {
  const perObstacle = places.map((place) =>
    bySizes
      ? gradeBySizes(place, season, classification)
      : gradeObstacle(place, direction, season, classification),
  );
  return gradeOfTrack(perObstacle, segments, classification);
}

/**
 * The track's own slope, read off its elevations. What they say counts; where the hard end of their range would be a harder
 * level, or a stretch is not known, that is told.
 */
function slopeGrade(segments: readonly TrackSegment[] | null, classification: ClassificationId): Graded {
  const known = segments?.filter(({ slopeRad }) => !Number.isNaN(slopeRad)) ?? [];
  const values = known.map(({ slopeRad }) => Math.abs(slopeRad));
  const value = Math.max(0, ...values);
  const hard = Math.max(0, ...known.map(({ plusMinusRad }, i) => values[i] + plusMinusRad));
  const level = levelAt('slope', classification, value);
  const open: Open[] = [];
  if (segments === null || known.length < segments.length) open.push('track slope');
  if (levelAt('slope', classification, hard) > level) open.push('rough track slope');
  const limit = CRITERIA.slope.limits[classification][level - 2];
  const reason: Reason | null = level === 1 ? null : { kind: 'size', measure: 'slope', value, limit };
  return { level, reason, open, beyond: false };
}
