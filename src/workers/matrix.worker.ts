import type { MatrixTask } from './matrixTask.ts';
import { answerTask } from './matrixTask.ts';

self.onmessage = ({ data }: MessageEvent<MatrixTask>) => {
  self.postMessage(answerTask(data));
};
