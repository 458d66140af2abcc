import type { Place } from '../convoy/matrix.ts';
import type { ClassificationId, Season } from '../grade/classification.ts';
import type { ObstacleGrade } from '../grade/rating.ts';
import { gradeObstacle } from '../grade/rating.ts';
import type { Requirement } from '../grade/requirement.ts';
import { requirementOf } from '../grade/requirement.ts';
import type { Direction } from '../terrain/obstacle.ts';
import { lettingGo } from '../traverse/relief.ts';

/** One obstacle in one direction and season: its grade, or what a vehicle must have for it. */
export interface GradeTask {
  readonly place: Place;
  readonly direction: Direction;
  readonly season: Season;
  readonly asks:
    { readonly kind: 'grade'; readonly classification: ClassificationId } | { readonly kind: 'requirement' };
}

export type GradeAnswer = ObstacleGrade | Requirement;

export function answerGrade({ place, direction, season, asks }: GradeTask): GradeAnswer {
  return lettingGo(() =>
    asks.kind === 'grade'
      ? gradeObstacle(place, direction, season, asks.classification)
      : requirementOf(place.obstacle, place.trackSlope, direction, season),
  );
}
