import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, CDPSession, Page } from 'playwright-core';
import { chromium } from 'playwright-core';
import { build, preview } from 'vite';
import { CHROMIUM_ARGS, chromiumPath } from '../e2e/chromium.ts';
import type { Table } from './bench.ts';

const MOVES = 120;
/** Between one move and the next, drawn from a seed: at one distance all of them would meet the screen's frames in step. */
const APART_MS = { from: 8, to: 24 };
/** As long as a hand takes to find what it will drag; the program makes its code fast meanwhile. */
const FINDING_MS = 4000;
const VIEWPORT = { width: 1440, height: 900 };

/** Obstacles of the demonstration, and the handle that is dragged on each. */
const DRAGS = [
  { obstacle: /Hobnail ruts/, handle: /^Depth of rut/ },
  { obstacle: /Anvil step/, handle: /^Rise of ledge/ },
] as const;

/** What the page calls a redraw of all drawings with the sweep. */
const MEASURE = 'workbench: redrawn';

/** Milliseconds from a move of the hand to the picture, as the page itself notes them. */
interface Drag {
  readonly first: readonly number[];
  /** The same dragged once more without letting go. */
  readonly again: readonly number[];
  /** Processor time of each thread, milliseconds. */
  readonly threads: ReadonlyMap<string, number>;
}

/** Sizes of the workbench dragged by mouse in the built program: time until all is redrawn, and who used the processor. */
export async function* dragBench(): AsyncGenerator<Table> {
  const outDir = mkdtempSync(join(tmpdir(), 'rutline-bench-'));
  const quiet = { logLevel: 'error' } as const;
  await build({ ...quiet, mode: 'production', build: { outDir, emptyOutDir: true } });
  const server = await preview({ ...quiet, build: { outDir }, preview: { port: 4198, host: '127.0.0.1' } });
  const browser = await chromium.launch({ executablePath: chromiumPath(), args: CHROMIUM_ARGS });
  try {
    const drags: (readonly [string, Drag])[] = [];
    for (const { obstacle, handle } of DRAGS) {
      const page = await browser.newPage({ viewport: VIEWPORT });
      await page.goto('http://127.0.0.1:4198/');
      await page.getByRole('link', { name: /^Obstacles/ }).click();
      await page.getByRole('link', { name: obstacle }).click();
      await page.getByRole('link', { name: 'Open the workbench' }).click();
      await page.getByText(/^(Goes:|No band)/).waitFor();
      await page.waitForTimeout(FINDING_MS);
      const name = `${handle.source.slice(1)}, ${obstacle.source}`;
      drags.push([name, await drag(browser, page, handle)]);
      await page.close();
    }
    yield times(drags, browser.version());
    for (const [name, { threads }] of drags) yield shares(name, threads);
  } finally {
    await browser.close();
    await server.close();
    rmSync(outDir, { recursive: true });
  }
}

async function drag(browser: Browser, page: Page, handle: RegExp): Promise<Drag> {
  const slider = page.getByRole('slider', { name: handle }).first();
  const box = await slider.locator('.grip').boundingBox();
  if (box === null) throw new Error('The handle is not on screen.');
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  // MINSTD (Park, Miller and Stockmeyer, 1993): the same distances in every drag.
  let seed = 1;
  const apart = () => {
    seed = (48_271 * seed) % 2_147_483_647;
    return APART_MS.from + ((APART_MS.to - APART_MS.from) * seed) / 2_147_483_647;
  };
  const moves = async () => {
    for (let i = 0; i < MOVES; i++) {
      await page.mouse.move(x, y + 12 * Math.sin(i / 12));
      await page.waitForTimeout(apart());
    }
  };
  const measured = () =>
    page.evaluate((name) => {
      const all = performance.getEntriesByName(name).map(({ duration }) => duration);
      performance.clearMeasures(name);
      return all;
    }, MEASURE);
  await measured();
  await moves();
  const first = await measured();
  await moves();
  const again = await measured();
  // Moved once more for the trace, which takes time of its own.
  const threads = processorTimes(await traced(await browser.newBrowserCDPSession(), moves));
  await page.mouse.up();
  return { first, again, threads };
}

/** One event of the browser's own trace; `tdur` is processor time of its thread, microseconds. */
interface TraceEvent {
  readonly name: string;
  readonly ph: string;
  readonly pid: number;
  readonly tid: number;
  readonly tdur?: number;
  readonly ts: number;
  readonly dur?: number;
  readonly args: { readonly name?: string };
}

async function traced(session: CDPSession, work: () => Promise<void>): Promise<TraceEvent[]> {
  const events: TraceEvent[] = [];
  session.on('Tracing.dataCollected', ({ value }) => events.push(...(value as unknown as TraceEvent[])));
  const complete = new Promise((resolve) => session.once('Tracing.tracingComplete', resolve));
  await session.send('Tracing.start', {
    traceConfig: { includedCategories: ['toplevel', 'devtools.timeline', '__metadata'] },
    transferMode: 'ReportEvents',
  });
  await work();
  await session.send('Tracing.end');
  await complete;
  return events;
}

/** What of the page's main thread is told apart; each is counted whole, and none lies within another. */
const PAGE_WORK: Readonly<Record<string, string>> = {
  FunctionCall: 'page: script, with writing the SVG',
  EventDispatch: 'page: script, with writing the SVG',
  FireAnimationFrame: 'page: script, with writing the SVG',
  TimerFire: 'page: script, with writing the SVG',
  RunMicrotasks: 'page: script, with writing the SVG',
  ParseHTML: 'page: parsing the SVG',
  UpdateLayoutTree: 'page: style',
  Layout: 'page: layout',
  PrePaint: 'page: paint, before and itself',
  Paint: 'page: paint, before and itself',
  Layerize: 'page: paint, before and itself',
  Commit: 'page: paint, before and itself',
};

/** Processor time by thread, that of the page's main thread by what it does. */
function processorTimes(events: readonly TraceEvent[]): Map<string, number> {
  const thread = new Map<string, string>();
  for (const { name, pid, tid, args } of events)
    if (name === 'thread_name' && args.name) thread.set(`${pid}/${tid}`, args.name);
  const times = new Map<string, number>();
  const add = (key: string, us: number) => times.set(key, (times.get(key) ?? 0) + us / 1000);
  const ends = new Map<string, number>();
  const ordered = events
    .filter(({ ph, tdur }) => ph === 'X' && tdur !== undefined)
    .toSorted((a, b) => a.ts - b.ts || (b.dur ?? 0) - (a.dur ?? 0));
  /** Time of events within an event that is counted whole is taken off it, so that the sum is right. */
  const open = new Map<string, { key: string; end: number }[]>();
  for (const { name, pid, tid, ts, dur, tdur } of ordered) {
    const id = `${pid}/${tid}`;
    const on = (thread.get(id) ?? 'unnamed').replace(/\d+$/, '').replace(/\/$/, '');
    const main = on === 'CrRendererMain';
    const key = main ? (PAGE_WORK[name] ?? (name.endsWith('RunTask') ? 'page: else' : null)) : on;
    if (key === null) continue;
    const stack = open.get(id) ?? [];
    while (stack.length > 0 && ts >= stack[stack.length - 1].end) stack.pop();
    const around = stack.at(-1);
    if (around !== undefined) {
      if (!main) continue;
      add(around.key, -tdur!);
    } else if (!main && (ends.get(id) ?? 0) > ts) continue;
    add(key, tdur!);
    stack.push({ key, end: ts + (dur ?? 0) });
    open.set(id, stack);
    ends.set(id, ts + (dur ?? 0));
  }
  return times;
}

function times(drags: readonly (readonly [string, Drag])[], version: string): Table {
  return {
    title: `Sizes dragged on the workbench, Chromium ${version}, drawn in software`,
    columns: ['dragged', 'when', 'redrawn', 'median, ms', '95th percentile, ms'],
    rows: [
      ...drags.flatMap(([name, { first, again }]) => [row(name, 'first', first), row(name, 'again', again)]),
      row(
        'all of them',
        '',
        drags.flatMap(([, { first, again }]) => [...first, ...again]),
      ),
    ],
    notes: [
      `${MOVES} moves, ${APART_MS.from} to ${APART_MS.to} ms and what the browser takes apart, ${VIEWPORT.width}×${VIEWPORT.height}, begun ${FINDING_MS / 1000} s after the workbench stood. From the first move that a picture answers until the page has painted all drawings and the sweep. Bar: 50 ms at the 95th percentile.`,
    ],
  };
}

function row(name: string, when: string, all: readonly number[]): string[] {
  const ms = (share: number) => (all.length === 0 ? '' : quantile(all, share).toFixed(0));
  return [name, when, String(all.length), ms(0.5), ms(0.95)];
}

function quantile(values: readonly number[], share: number): number {
  const sorted = values.toSorted((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))];
}

function shares(name: string, threads: ReadonlyMap<string, number>): Table {
  const all = [...threads.values()].reduce((sum, ms) => sum + ms, 0);
  const rows = [...threads]
    .filter(([, ms]) => ms >= all / 100)
    .toSorted((a, b) => b[1] - a[1])
    .map(([thread, ms]) => [thread, (ms / MOVES).toFixed(1), `${((100 * ms) / all).toFixed(0)} %`]);
  return {
    title: `Who used the processor: ${name}`,
    columns: ['thread', 'ms a move', 'share'],
    rows,
    notes: ['Processor time, not time on the clock; below 1 % left out.'],
  };
}
