import './language.ts';
import type { ElevationGrid } from '../route/elevation.ts';
import type { Reading } from '../problem.ts';
import type { FormatsAsk, FormatsSaid } from './formatsWork.ts';
import { FORMATS } from './formatsWork.ts';

/** Share of the whole between two reports. */
const REPORT = 0.01;

self.onmessage = ({ data: { name, given } }: MessageEvent<FormatsAsk>) => {
  const work = FORMATS[name] as (given: unknown, onProgress: (share: number) => void) => Promise<unknown>;
  let reported = 0;
  const onProgress = (share: number) => {
    if (share - reported < REPORT) return;
    reported = share;
    self.postMessage({ share } satisfies FormatsSaid);
  };
  work(given, onProgress).then(
    (answer) => self.postMessage({ answer } satisfies FormatsSaid, { transfer: buffersOf(name, answer) }),
    (error: unknown) =>
      self.postMessage({
        failed: error instanceof Error ? error.message : String(error),
      } satisfies FormatsSaid),
  );
};

function buffersOf(name: FormatsAsk['name'], answer: unknown): Transferable[] {
  if (name !== 'elevation') return [];
  const { value } = answer as Reading<ElevationGrid>;
  return value === null ? [] : [value.elevationM.buffer as ArrayBuffer];
}
