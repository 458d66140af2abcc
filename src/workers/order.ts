import type { Place } from '../convoy/matrix.ts';
import type { Order } from '../convoy/order.ts';
import { bare } from '../convoy/places.ts';
import type { Direction } from '../terrain/obstacle.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import { spoken } from '../words/words.ts';

export interface OrderTask {
  readonly places: readonly Place[];
  readonly vehicles: readonly Vehicle[];
  readonly direction: Direction;
}

/** The order in which most go unaided, found in a worker of its own. Cancelling ends the worker and answers null. */
export function orderInWorker(task: OrderTask, signal?: AbortSignal): Promise<Order | null> {
  return new Promise((resolve, reject) => {
    const worker = new Worker(new URL('./order.worker.ts', import.meta.url), {
      type: 'module',
      name: spoken,
    });
    const end = () => {
      signal?.removeEventListener('abort', cancel);
      worker.terminate();
    };
    const cancel = () => {
      end();
      resolve(null);
    };
    signal?.addEventListener('abort', cancel, { once: true });
    worker.onmessage = ({ data }: MessageEvent<Order>) => {
      end();
      resolve(data);
    };
    worker.onerror = (event) => {
      end();
      reject(new Error(event.message));
    };
    worker.postMessage({ ...task, places: task.places.map(bare) });
  });
}
