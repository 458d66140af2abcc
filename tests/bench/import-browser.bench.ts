import { createWriteStream, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pipeline } from 'node:stream/promises';
import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import { chromium } from 'playwright-core';
import { build, preview } from 'vite';
import { CHROMIUM_ARGS, chromiumPath } from '../e2e/chromium.ts';
import type { Table } from './bench.ts';
import { median } from './median.ts';
import type { BenchPage, Taken } from './page/page.ts';
import { recordingText } from './recording.ts';

const RUNS = 3;
const ROOT = fileURLToPath(new URL('./page/', import.meta.url));
const GPXPARSER = fileURLToPath(
  new URL('../../node_modules/gpxparser/dist/GPXParser.min.js', import.meta.url),
);

/** A file as the page holds it to the recording of it: our worker, and gpxparser on the page, each in a new page. */
export async function* importBrowserBench(): AsyncGenerator<Table> {
  const outDir = mkdtempSync(join(tmpdir(), 'rutline-bench-'));
  const quiet = {
    root: ROOT,
    base: './',
    configFile: false,
    logLevel: 'error',
    worker: { format: 'es' },
  } as const;
  await build({ ...quiet, build: { outDir, emptyOutDir: true, target: 'es2022' } });
  for (const points of [100_000, 1_000_000]) {
    await pipeline(recordingText(points, false), createWriteStream(join(outDir, `${points}.gpx`)));
  }
  const server = await preview({ ...quiet, build: { outDir }, preview: { port: 4197, host: '127.0.0.1' } });
  const browser = await chromium.launch({ executablePath: chromiumPath(), args: CHROMIUM_ARGS });
  try {
    const rows: string[][] = [];
    for (const [reader, points] of [
      ['ours', 100_000],
      ['gpxparser', 100_000],
      ['ours', 1_000_000],
    ] as const) {
      const runs: Taken[] = [];
      for (let run = 0; run < RUNS; run++) {
        const page = await browser.newPage();
        await page.goto('http://127.0.0.1:4197/');
        await page.addScriptTag({ path: GPXPARSER });
        const taken = await read(page, reader, `./${points}.gpx`);
        if (taken.points !== points) throw new Error(`${reader} read ${taken.points} of ${points} points`);
        runs.push(taken);
        await page.close();
      }
      const longest = Math.max(...runs.map((run) => run.longestTaskMs));
      rows.push([
        reader === 'ours' ? 'importGpx, in its worker' : 'gpxparser, on the page',
        points.toLocaleString('en'),
        median(runs.map((run) => run.ms)).toFixed(0),
        longest > 0 ? longest.toFixed(0) : 'none over 50',
      ]);
    }
    yield {
      title: `Import in Chromium ${browser.version()}`,
      columns: ['reader', 'points', 'ms', 'longest task of the page, ms'],
      rows,
      notes: [`Median time and longest task of ${RUNS}, each in a new page, headless.`],
    };
  } finally {
    await browser.close();
    await server.close();
    rmSync(outDir, { recursive: true });
  }
}

function read(page: Page, reader: keyof BenchPage, url: string): Promise<Taken> {
  return page.evaluate(
    ([name, file]) => (globalThis as unknown as { benchPage: BenchPage }).benchPage[name](file),
    [reader, url] as const,
  );
}
