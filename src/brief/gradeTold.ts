import type { Place } from '../convoy/matrix.ts';
import { placesOn } from '../convoy/places.ts';
import type { ClassificationId, Season } from '../grade/classification.ts';
import type { ObstacleGrade, TrackGrade } from '../grade/rating.ts';
import { gradeObstacle, gradeOfTrack } from '../grade/rating.ts';
import type { TrackRequirement } from '../grade/requirement.ts';
import { slopeOf } from '../route/slope.ts';
import type { Track } from '../route/track.ts';
import type { Direction, Obstacle } from '../terrain/obstacle.ts';
import type { HeldGrip } from '../terrain/surface.ts';
import type { System } from '../units.ts';
import { say } from '../words/words.ts';
import { gradeLine, openGradeText, reasonText, requirementText } from './gradeText.ts';

/** The grade of a track in one direction, as it is told on paper and in files. */
export interface GradeTold {
  readonly classification: ClassificationId;
  readonly season: Season;
  readonly grade: TrackGrade;
  /** Null where it was not asked for. */
  readonly requirement: TrackRequirement | null;
}

/** What is graded: a trip is one. */
interface Graded {
  readonly track: Track | null;
  readonly obstacles: readonly Obstacle[];
  readonly direction: Direction;
  readonly heldGrips?: readonly HeldGrip[];
}

/** From the grades of all obstacles; null where there is nothing to grade. */
export function gradeTold(
  { track, obstacles }: Graded,
  perObstacle: readonly ObstacleGrade[],
  classification: ClassificationId,
  season: Season,
  requirement: TrackRequirement | null = null,
): GradeTold | null {
  const recorded = track !== null && track.length > 0;
  if (!recorded && obstacles.length === 0) return null;
  const segments = recorded ? slopeOf(track).segments : null;
  return {
    classification,
    season,
    grade: gradeOfTrack(perObstacle, segments, classification),
    requirement,
  };
}

/** The same with everything worked out here and now. */
export function gradeToldOf(
  graded: Graded,
  classification: ClassificationId,
  season: Season,
): GradeTold | null {
  const places: Place[] = placesOn(graded.track, graded.obstacles, graded.heldGrips);
  const perObstacle = places.map((place) => gradeObstacle(place, graded.direction, season, classification));
  return gradeTold(graded, perObstacle, classification, season);
}

/** All of it in a few sentences, its caution last. `nameOf` names an obstacle. */
export function gradeToldText(
  { classification, season, grade, requirement }: GradeTold,
  nameOf: (obstacleId: string) => string,
  system: System,
): string {
  const set =
    grade.level === 1 && grade.reason === null
      ? ''
      : `${grade.setBy === null ? say.grading.setByTrack : say.grading.setBy(nameOf(grade.setBy))}: ${reasonText(grade.reason, classification, system)}`;
  return [
    `${[gradeLine(grade, classification, season), set].filter(Boolean).join(', ')}.`,
    grade.beyond ? `${say.grading.beyond}.` : '',
    openGradeText(grade),
    requirement === null ? say.grading.takesNotAsked : requirementText(requirement, nameOf, system),
    say.grading.caution,
  ]
    .filter(Boolean)
    .join(' ');
}

/** The grade of one obstacle, where it stands by itself; empty where it has none. */
export function obstacleGradeText(told: GradeTold, obstacleId: string): string {
  const graded = told.grade.perObstacle.find((one) => one.obstacleId === obstacleId);
  if (graded === undefined) return '';
  const line = gradeLine(graded, told.classification, told.season);
  return `${say.grading.grade}: ${line}. ${say.grading.caution}`;
}
