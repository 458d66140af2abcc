import { Worker } from 'node:worker_threads';
import type { Cell } from '../../src/convoy/matrix.ts';
import type { MatrixTask } from '../../src/workers/matrixTask.ts';
import { answerTask } from '../../src/workers/matrixTask.ts';
import type { Lane } from '../../src/workers/pool.ts';

/**
 * The matrix worker's work on a thread of Node, so that it can be tried where there is no browser: from its source, or from
 * what was built of it.
 */
export function nodeLane(built?: URL): Lane<MatrixTask, Partial<Cell>[]> & { close(): Promise<number> } {
  const worker = new Worker(new URL('./nodeLane.mjs', import.meta.url), {
    workerData: built?.href,
    ...(built && { execArgv: [] }),
  });
  let before: Promise<unknown> = Promise.resolve();
  return {
    ask: (task) => {
      const asked = before.then(
        () =>
          new Promise<Partial<Cell>[]>((resolve, reject) => {
            worker.removeAllListeners();
            worker.once('message', resolve);
            worker.once('error', reject);
            worker.postMessage(task);
          }),
      );
      before = asked;
      return asked;
    },
    close: () => worker.terminate(),
  };
}

/** The same work on the caller's own thread. */
export const ownLane: Lane<MatrixTask, Partial<Cell>[]> = {
  ask: (task) => Promise.resolve(answerTask(task)),
};
