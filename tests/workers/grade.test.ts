import { expect, it } from 'vitest';
import { gradeObstacle } from '../../src/grade/rating.ts';
import { requirementOf } from '../../src/grade/requirement.ts';
import type { GradeTask } from '../../src/workers/gradeTask.ts';
import { answerGrade } from '../../src/workers/gradeTask.ts';
import { rad } from '../../src/units.ts';
import { ground, placeOf } from '../grade/pinned.ts';

const place = placeOf(ground('ditch', { depthM: 0.25, slopeRad: rad(3) }));
const asked = { place, direction: 'reversed', season: 'wet' } as const;

it.each([
  [
    { kind: 'grade', classification: 'south africa' },
    gradeObstacle(place, 'reversed', 'wet', 'south africa'),
  ],
  [{ kind: 'requirement' }, requirementOf(place.obstacle, null, 'reversed', 'wet')],
] as const)('a worker is asked for %j, and question and answer can be sent', (asks, answer) => {
  const task: GradeTask = structuredClone({ ...asked, asks });
  expect(structuredClone(answerGrade(task))).toEqual(answer);
});
