import { rowOf, surenessOf } from '../convoy/matrix.ts';
import type { MatrixTask } from './matrix.ts';

self.onmessage = ({ data }: MessageEvent<MatrixTask>) => {
  const { place, vehicles, direction, cells } = data;
  const answer =
    cells === null
      ? rowOf(place, vehicles, direction)
      : surenessOf(place, vehicles, cells, direction).map((goesIn, i) => ({ ...cells[i], goesIn }));
  self.postMessage(answer);
};
