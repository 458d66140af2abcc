import './language.ts';
import type { BenchWork } from './bench.ts';
import { BENCH, buffersOf } from './bench.ts';

self.onmessage = ({ data }: MessageEvent<{ kind: keyof BenchWork; task: never }>) => {
  const answer = BENCH[data.kind](data.task);
  self.postMessage(answer, { transfer: buffersOf(answer) });
};
