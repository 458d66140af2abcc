import { rowOf } from '../convoy/matrix.ts';
import type { RowTask } from './matrix.ts';

self.onmessage = ({ data }: MessageEvent<RowTask>) => {
  self.postMessage(rowOf(data.place, data.vehicles, data.direction));
};
