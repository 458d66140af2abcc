import './language.ts';
import type { ElevationGrid } from '../route/elevation.ts';
import type { Reading } from '../problem.ts';
import type { TakeTracks } from '../archive/filed.ts';
import type { FormatsAsk, FormatsSaid, FormatsTaken } from './formatsWork.ts';
import { FORMATS } from './formatsWork.ts';

/** Share of the whole between two reports. */
const REPORT = 0.01;

type Work = (given: unknown, onProgress: (share: number) => void, take: TakeTracks) => Promise<unknown>;

/** Goes on once the page has taken the last tracks. */
let goOn = () => {};

self.onmessage = ({ data }: MessageEvent<FormatsAsk | FormatsTaken>) => {
  if ('taken' in data) goOn();
  else begin(data);
};

function begin({ name, given }: FormatsAsk): void {
  const work = FORMATS[name] as Work;
  let reported = 0;
  const onProgress = (share: number) => {
    if (share - reported < REPORT) return;
    reported = share;
    self.postMessage({ share } satisfies FormatsSaid);
  };
  const take: TakeTracks = (tracks) => {
    self.postMessage({ tracks } satisfies FormatsSaid);
    return new Promise((resolve) => (goOn = resolve));
  };
  work(given, onProgress, take).then(
    (answer) => self.postMessage({ answer } satisfies FormatsSaid, { transfer: buffersOf(name, answer) }),
    (error: unknown) =>
      self.postMessage({
        failed: error instanceof Error ? error.message : String(error),
      } satisfies FormatsSaid),
  );
}

function buffersOf(name: FormatsAsk['name'], answer: unknown): Transferable[] {
  if (name !== 'elevation') return [];
  const { value } = answer as Reading<ElevationGrid>;
  return value === null ? [] : [value.elevationM.buffer as ArrayBuffer];
}
