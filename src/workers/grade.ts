import type { Place } from '../convoy/matrix.ts';
import type { ClassificationId, Season } from '../grade/classification.ts';
import type { ObstacleGrade } from '../grade/rating.ts';
import type { Requirement } from '../grade/requirement.ts';
import type { Direction, Stretch } from '../terrain/obstacle.ts';
import type { GradeAnswer, GradeTask } from './gradeTask.ts';
import { matrixLanes } from './matrix.ts';
import type { Lane } from './pool.ts';
import { answerAll } from './pool.ts';

/** Answers by ground and question. Records are never edited, so the same ground means the same answer. */
const answered = new WeakMap<Stretch, Map<string, GradeAnswer>>();

function keyOf({ place: { obstacle, trackSlope }, direction, season, asks }: GradeTask): string {
  return JSON.stringify([obstacle.id, trackSlope, direction, season, asks]);
}

function recall(task: GradeTask): GradeAnswer | null {
  return answered.get(task.place.obstacle.stretch)?.get(keyOf(task)) ?? null;
}

/** Answers in the order of the tasks, off the page; `onDone` is told how many there are. Null when cancelled. */
async function answersTo(
  tasks: readonly GradeTask[],
  onDone: (done: number) => void,
  signal?: AbortSignal,
): Promise<GradeAnswer[] | null> {
  const asked = tasks.filter((task) => recall(task) === null);
  let done = tasks.length - asked.length;
  onDone(done);
  const came = await answerAll(
    asked,
    matrixLanes() as unknown as readonly Lane<GradeTask, GradeAnswer>[],
    (answer, i) => {
      const { stretch } = asked[i].place.obstacle;
      answered.set(
        stretch,
        (answered.get(stretch) ?? new Map<string, GradeAnswer>()).set(keyOf(asked[i]), answer),
      );
      onDone(++done);
    },
    signal,
  );
  return came === null ? null : tasks.map((task) => recall(task) as GradeAnswer);
}

/** The grade of each place, worked out in the workers of the matrix; null when cancelled. */
export async function gradesInWorkers(
  places: readonly Place[],
  direction: Direction,
  season: Season,
  classification: ClassificationId,
  signal?: AbortSignal,
): Promise<ObstacleGrade[] | null> {
  const tasks = places.map((place) => gradeTask(place, direction, season, classification));
  return (await answersTo(tasks, () => undefined, signal)) as ObstacleGrade[] | null;
}

/** The same as far as it was worked out before; null where one is missing. */
export function gradesKnown(
  places: readonly Place[],
  direction: Direction,
  season: Season,
  classification: ClassificationId,
): ObstacleGrade[] | null {
  const known = places.map((place) => recall(gradeTask(place, direction, season, classification)));
  return known.includes(null) ? null : (known as ObstacleGrade[]);
}

function gradeTask(
  place: Place,
  direction: Direction,
  season: Season,
  classification: ClassificationId,
): GradeTask {
  return { place, direction, season, asks: { kind: 'grade', classification } };
}

/** What a vehicle must have for each place; `onDone` is told how many are known. Null when cancelled. */
export async function requirementsInWorkers(
  places: readonly Place[],
  direction: Direction,
  season: Season,
  onDone: (done: number) => void,
  signal?: AbortSignal,
): Promise<Requirement[] | null> {
  const tasks = places.map((place) => requirementTask(place, direction, season));
  return (await answersTo(tasks, onDone, signal)) as Requirement[] | null;
}

/** The same as far as it was worked out before; null where one is missing. */
export function requirementsKnown(
  places: readonly Place[],
  direction: Direction,
  season: Season,
): Requirement[] | null {
  const known = places.map(
    (place) => recall(requirementTask(place, direction, season)) as Requirement | null,
  );
  return known.includes(null) ? null : (known as Requirement[]);
}

function requirementTask(place: Place, direction: Direction, season: Season): GradeTask {
  return { place, direction, season, asks: { kind: 'requirement' } };
}
