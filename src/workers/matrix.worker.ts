import { cellOf } from '../convoy/matrix.ts';
import type { CellTask } from './matrix.ts';

self.onmessage = ({ data }: MessageEvent<CellTask>) => {
  self.postMessage(cellOf(data.place, data.vehicle, data.direction));
};
