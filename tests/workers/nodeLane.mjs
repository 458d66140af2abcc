import { parentPort, workerData } from 'node:worker_threads';
import { register } from 'tsx/esm/api';

/** Where what was built lies; undefined for the source. */
const built = /** @type {unknown} */ (workerData);
if (typeof built !== 'string') register();
const source = '../../src/workers/matrixTask.ts';
const loaded = /** @type {unknown} */ (await import(typeof built === 'string' ? built : source));
const { answerTask } = /** @type {typeof import('../../src/workers/matrixTask.ts')} */ (loaded);
const answer = (/** @type {import('../../src/workers/matrixTask.ts').MatrixTask} */ task) =>
  parentPort.postMessage(answerTask(task));
parentPort.on('message', answer);
