import './language.ts';
import type { BenchWork } from './bench.ts';
import { BENCH } from './bench.ts';

self.onmessage = ({ data }: MessageEvent<{ kind: keyof BenchWork; task: never }>) => {
  self.postMessage(BENCH[data.kind](data.task));
};
