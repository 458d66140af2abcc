import './language.ts';
import type { GradeTask } from './gradeTask.ts';
import { answerGrade } from './gradeTask.ts';
import type { MatrixTask } from './matrixTask.ts';
import { answerTask } from './matrixTask.ts';

self.onmessage = ({ data }: MessageEvent<MatrixTask | GradeTask>) => {
  self.postMessage('season' in data ? answerGrade(data) : answerTask(data));
};
