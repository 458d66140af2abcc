import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { chromium } from 'playwright-core';
import { build, preview } from 'vite';
import { CHROMIUM_ARGS, chromiumPath } from '../e2e/chromium.ts';
import type { ArchivePage, Measured } from './archivePage/page.ts';
import type { Table } from './bench.ts';
import { median } from './median.ts';

/** `npm run bench archive 500` takes as many instead. */
const TRACKS = Number(process.argv[3] ?? 5_000);
const MERGED = TRACKS / 10;
/** Tracks that go from one browser to the other at a time. */
const AT_ONCE = 10;
/** From one file to the next, as a hand takes at least: browsers need a moment to clear a worker away that has ended. */
const BETWEEN_MS = 2000;
const AREAS = 200;
const JUDGED = 40;
const ROOT = fileURLToPath(new URL('./archivePage/', import.meta.url));
const PORT = 4195;

/** What runs inside the page. */
declare const page: ArchivePage;

/** A club's archive of invented tracks in the real browser, each row beside a plain way to the same. */
export async function* archiveBench(): AsyncGenerator<Table> {
  const outDir = mkdtempSync(join(tmpdir(), 'rutline-bench-'));
  const quiet = {
    root: ROOT,
    base: './',
    configFile: false,
    logLevel: 'error',
    worker: { format: 'es' },
  } as const;
  await build({ ...quiet, build: { outDir, emptyOutDir: true, target: 'es2022' } });
  const server = await preview({ ...quiet, build: { outDir }, preview: { port: PORT, host: '127.0.0.1' } });
  const browser = await chromium.launch({ executablePath: chromiumPath(), args: CHROMIUM_ARGS });
  try {
    yield await measured(browser);
  } finally {
    await browser.close();
    await server.close();
    rmSync(outDir, { recursive: true });
  }
}

async function measured(browser: Browser): Promise<Table> {
  const home = await browser.newContext();
  const elsewhere = await browser.newContext();
  const at = async (context: typeof home): Promise<Page> => {
    const window = await context.newPage();
    window.setDefaultTimeout(0);
    await window.goto(`http://127.0.0.1:${PORT}/`);
    await window.waitForFunction(() => 'page' in globalThis);
    return window;
  };

  const filling = await at(home);
  const filledFrom = performance.now();
  const jsonBytes = await filling.evaluate((count) => page.fill(0, count), TRACKS);
  const fillMs = performance.now() - filledFrom;
  await filling.close();

  const memory = watchedMemory();
  const ours = await at(home);
  const opened = await ours.evaluate(() => page.open());
  const areas = await ours.evaluate((count) => page.areas(count), AREAS);
  const goes = await ours.evaluate((count) => page.goes(count), JUDGED);
  const regraded = await ours.evaluate(() => page.regrade());

  const theirs = await at(elsewhere);
  const [door, theirDoor] = [await at(home), await at(elsewhere)];
  const here: Place = { page: ours, door };
  const there: Place = { page: theirs, door: theirDoor };
  await carried(here, there);
  await theirs.evaluate((count) => page.edit(count, 'theirs', 'visit'), MERGED);
  await ours.evaluate((count) => page.edit(count, 'ours', 'track'), MERGED);
  const merged = await carried(there, here);
  await Promise.all([door.close(), theirDoor.close()]);
  await theirs.close();

  const disk = await ours.evaluate(() => page.usage());
  const peak = memory.mostMb;
  await sleep(BETWEEN_MS);
  const out = await ours.evaluate((count) => page.out(count, 'GeoPackage'), TRACKS);
  await sleep(BETWEEN_MS);
  const back = await ours.evaluate(() => page.back());
  await sleep(BETWEEN_MS);
  const zipOut = await ours.evaluate((count) => page.out(count, 'zip'), TRACKS);
  await sleep(BETWEEN_MS);
  const zipBack = await ours.evaluate(() => page.back());
  await sleep(BETWEEN_MS);
  const jsonOut = await ours.evaluate((count) => page.out(count, 'GeoJSON'), TRACKS);
  await sleep(BETWEEN_MS);
  const jsonBack = await ours.evaluate(() => page.back());
  const peakAfter = memory.mostMb;
  memory.stop();
  await ours.close();

  const besideMemory = watchedMemory();
  const beside = await at(home);
  const plain = await beside.evaluate(
    ([areaCount, judged, some, count]) => page.plainly(areaCount, judged, some, count),
    [AREAS, JUDGED, MERGED, TRACKS],
  );
  const peakBeside = besideMemory.mostMb;
  besideMemory.stop();
  await beside.close();
  if (plain.areas.found.some((count, i) => count !== areas.found[i]))
    throw new Error('The archive found other tracks than a plain look.');

  const ms = (value: number) => (value < 100 ? `${value.toFixed(1)} ms` : `${(value / 1000).toFixed(2)} s`);
  const mb = (bytes: number) => `${(bytes / 2 ** 20).toFixed(1)} MB`;
  const asText = `${mb(jsonBytes)} as JSON text`;
  const allHeld = `${peakBeside.toFixed(0)} MB, all records held`;
  const row = (
    what: string,
    { ms: took, count }: Measured,
    plainMs: number,
    by: string,
    bar = '',
  ): string[] => [what, String(count), ms(took), `${ms(plainMs)}, ${by}`, bar];
  return {
    title: `A club's archive: ${TRACKS} tracks with ${10 * TRACKS} obstacles, Chromium ${browser.version()}`,
    columns: ['what', 'of', 'measured', 'plainly', 'bar'],
    rows: [
      row(
        'taken in, each with a history from then on',
        { ms: fillMs, count: TRACKS },
        plain.fillMs,
        'JSON texts put into a database',
      ),
      row(
        'open: worker, database, all rows, index',
        opened,
        plain.openMs,
        'all rows read, nothing else',
        '1 s',
      ),
      row(
        'find by area, median',
        { ms: median(areas.ms), count: AREAS },
        median(plain.areas.ms),
        'a look at every row in memory',
        '20 ms',
      ),
      row(
        'find by convoy: first answer',
        goes.first,
        plain.firstMs,
        'the first track judged on the page',
        '0.5 s',
      ),
      row('find by convoy: first tracks', goes.all, plain.allMs, 'on the page'),
      row('regrade all by sizes, into their rows', regraded, plain.gradedMs, 'graded only'),
      row('merge edits made apart; both kept', merged, plain.mergeMs, 'records overwritten in a database'),
      row('export as GeoPackage', out, plain.textMs, 'as JSON text'),
      row('read it', back, plain.parsedMs, 'JSON parsed'),
      row('export as zip', zipOut, plain.textMs, 'as JSON text'),
      row('read it', zipBack, plain.parsedMs, 'JSON parsed'),
      row('export as GeoJSON', jsonOut, plain.textMs, 'as JSON text'),
      row('read it, feature by feature', jsonBack, plain.parsedMs, 'JSON parsed'),
      ['size on disk', String(TRACKS), mb(disk), asText, ''],
      ['size of the GeoPackage', String(TRACKS), mb(out.bytes), asText, ''],
      ['size of the zip', String(TRACKS), mb(zipOut.bytes), asText, ''],
      ['size of the GeoJSON', String(TRACKS), mb(jsonOut.bytes), asText, ''],
      ['memory of the page at its peak, before the export', '', `${peak.toFixed(0)} MB`, allHeld, '400 MB'],
      ['and with all tracks out and read again', '', `${peakAfter.toFixed(0)} MB`, allHeld, '400 MB'],
    ],
    notes: [
      `One run. The convoy has one vehicle of each class. Memory is the whole process of the page with its workers (VmHWM), as the system counts it; the plain ways ran in a page of their own.`,
    ],
  };
}

/** A page that is measured, and one beside it through which things come and go as text, of which it holds several copies. */
interface Place {
  readonly page: Page;
  readonly door: Page;
}

/** Takes the first tracks with their history from one browser to the other, which merges them. */
async function carried(from: Place, to: Place): Promise<Measured> {
  let [ms, count] = [0, 0];
  for (let i = 0; i < MERGED; i += AT_ONCE) {
    await from.page.evaluate(([at, some]) => page.copies(at, some), [i, Math.min(AT_ONCE, MERGED - i)]);
    const text = await from.door.evaluate(() => page.carriedOut());
    await to.door.evaluate((one) => page.carriedIn(one), text);
    const merged = await to.page.evaluate(() => page.merge());
    ms += merged.ms;
    count += merged.count;
  }
  return { ms, count };
}

/** How often the system is asked what pages hold: the browser sets the system's own count of the most back at times. */
const LOOK_MS = 200;

/** The most that any page of this process's browser held since, megabytes; NaN where that cannot be read. */
function watchedMemory(): { readonly mostMb: number; stop: () => void } {
  let mostMb = heldMb();
  const timer = setInterval(() => (mostMb = Math.max(mostMb, heldMb())), LOOK_MS);
  return {
    get mostMb() {
      return (mostMb = Math.max(mostMb, heldMb()));
    },
    stop: () => clearInterval(timer),
  };
}

/** The most that a page of a browser that this process started held, by the system's own count. */
function heldMb(): number {
  if (process.platform !== 'linux') return NaN;
  const statuses = new Map<string, string>();
  for (const pid of readdirSync('/proc'))
    if (/^\d+$/.test(pid) && existsSync(`/proc/${pid}/status`)) statuses.set(pid, readOf(pid, 'status'));
  const isOurs = (pid: string): boolean => {
    const parent = /PPid:\s+(\d+)/.exec(statuses.get(pid) ?? '')?.[1];
    return parent !== undefined && (parent === String(process.pid) || isOurs(parent));
  };
  const pages = [...statuses].filter(
    ([pid]) => isOurs(pid) && readOf(pid, 'cmdline').includes('--type=renderer'),
  );
  return Math.max(...pages.map(([, status]) => Number(/VmHWM:\s+(\d+)/.exec(status)?.[1] ?? 0) / 1024));
}

/** What the system says of a process; empty where it has ended meanwhile. */
function readOf(pid: string, what: 'status' | 'cmdline'): string {
  try {
    return readFileSync(`/proc/${pid}/${what}`, 'utf8');
  } catch {
    return '';
  }
}
