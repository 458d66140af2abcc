import { parentPort, workerData } from 'node:worker_threads';
import { register } from 'tsx/esm/api';

if (workerData === undefined) register();
const { answerTask } = await import(workerData ?? '../../src/workers/matrixTask.ts');
const answer = (/** @type {import('../../src/workers/matrixTask.ts').MatrixTask} */ task) =>
  parentPort.postMessage(answerTask(task));
parentPort.on('message', answer);
