import { importGpx } from '../../../src/workers/import.ts';

/** What the benchmark asks of the page. */
export interface BenchPage {
  /** Reads a file of the server in our worker. */
  ours(url: string): Promise<Taken>;
  /** Reads it with gpxparser, on the page itself, as it is meant to be used. */
  gpxparser(url: string): Promise<Taken>;
}

export interface Taken {
  readonly points: number;
  readonly ms: number;
  /** The longest time that the page could not answer; 0 where no task took over 50 ms, the least that is observed. */
  readonly longestTaskMs: number;
}

/** The class that the script of gpxparser leaves behind. */
declare const gpxParser: new () => { parse(text: string): void; tracks: { points: unknown[] }[] };

const page: BenchPage = {
  ours: (url) =>
    timed(url, async (file) => {
      const { value } = await importGpx(file);
      return value?.tracks[0]?.length ?? 0;
    }),
  gpxparser: (url) =>
    timed(url, async (file) => {
      const parser = new gpxParser();
      parser.parse(await file.text());
      return parser.tracks[0].points.length;
    }),
};

async function timed(url: string, read: (file: Blob) => Promise<number>): Promise<Taken> {
  const file = await (await fetch(url)).blob();
  let longestTaskMs = 0;
  const observer = new PerformanceObserver((list) => {
    for (const { duration } of list.getEntries()) longestTaskMs = Math.max(longestTaskMs, duration);
  });
  observer.observe({ type: 'longtask' });
  await pause(200);
  longestTaskMs = 0;
  const start = performance.now();
  const points = await read(file);
  const ms = performance.now() - start;
  await pause(200);
  observer.disconnect();
  return { points, ms, longestTaskMs };
}

function pause(ms: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, ms));
}

Object.assign(globalThis, { benchPage: page });
