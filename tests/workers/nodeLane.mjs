import { parentPort, workerData } from 'node:worker_threads';
import { register } from 'tsx/esm/api';

/** Where what was built lies; undefined for the source. */
const built = /** @type {unknown} */ (workerData);
if (typeof built !== 'string') register();
const { answerTask } = /** @type {typeof import('../../src/workers/matrixTask.ts')} */ (
  await import(typeof built === 'string' ? built : '../../src/workers/matrixTask.ts')
);
const answer = (/** @type {import('../../src/workers/matrixTask.ts').MatrixTask} */ task) =>
  parentPort.postMessage(answerTask(task));
parentPort.on('message', answer);
