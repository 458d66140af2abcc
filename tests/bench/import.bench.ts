import { spawn } from 'node:child_process';
import { createWriteStream, mkdtempSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { pipeline } from 'node:stream/promises';
import type { Table } from './bench.ts';
import { median } from './median.ts';
import { recordingText } from './recording.ts';

const RUNS = 3;
const TIMEOUT_MS = 120_000;
const CHILD = fileURLToPath(new URL('./import.child.ts', import.meta.url));

/** Each way of reading, and the most points it is asked for: the document models need minutes or more than 4 GB. */
const READERS: readonly (readonly [name: string, title: string, most: number])[] = [
  ['saxes', 'bare saxes pass', Infinity],
  ['ours', 'readGpx', Infinity],
  ['scan', 'byte scan (the limit)', Infinity],
  ['fast-xml-parser', 'fast-xml-parser', Infinity],
  ['togeojson', '@tmcw/togeojson with jsdom', 10_000],
];

interface Measured {
  readonly points: number;
  readonly ms: number;
  readonly cpuMs: number;
  readonly aboveMB: number;
}

/** Bytes in memory to points, in a process of its own each time: time, and memory above that of the bytes. */
export async function* importBench(): AsyncGenerator<Table> {
  const folder = mkdtempSync(join(tmpdir(), 'rutline-bench-'));
  try {
    for (const extensions of [false, true]) {
      for (const points of [10_000, 100_000, 1_000_000]) {
        const file = join(folder, `${points}-${extensions}.gpx`);
        await pipeline(recordingText(points, extensions), createWriteStream(file));
        yield await compare(file, points, extensions);
      }
    }
  } finally {
    rmSync(folder, { recursive: true });
  }
}

async function compare(file: string, points: number, extensions: boolean): Promise<Table> {
  const readers = READERS.filter(([, , most]) => points <= most);
  const runs = new Map<string, Measured[]>(readers.map(([name]) => [name, []]));
  // In turns, so that what else the machine does falls on all alike.
  for (let run = 0; run < RUNS; run++) {
    for (const [name, title] of readers) {
      const measured = await inChild(name, file);
      if (measured === null) continue;
      if (measured.points !== points) throw new Error(`${title} read ${measured.points} of ${points} points`);
      runs.get(name)!.push(measured);
    }
  }
  const cpuMs = (name: string) => median(runs.get(name)!.map((run) => run.cpuMs));
  return {
    title: `${points.toLocaleString('en')} points${extensions ? ' with extensions' : ''}, ${megabytes(file)} MB`,
    columns: ['reader', 'ms', 'processor ms', 'times bare saxes', 'peak MB above the file'],
    rows: readers.map(([name, title]) => {
      const done = runs.get(name)!;
      if (done.length < RUNS) return [title, 'failed, or took over two minutes', '', '', ''];
      const ms = median(done.map((run) => run.ms));
      const times = cpuMs(name) / cpuMs('saxes');
      const aboveMB = median(done.map((run) => run.aboveMB));
      return [title, ms.toFixed(0), cpuMs(name).toFixed(0), times.toFixed(2), aboveMB.toFixed(0)];
    }),
    notes: [
      `Median of ${RUNS}, each in a new process; the file is in memory before the clock starts.`,
      'Ratios are of processor time, which other work on the machine disturbs least.',
    ],
  };
}

function megabytes(file: string): string {
  return (statSync(file).size / 1e6).toFixed(1);
}

function inChild(reader: string, file: string): Promise<Measured | null> {
  return new Promise((resolve) => {
    const child = spawn(process.execPath, ['--expose-gc', '--import', 'tsx', CHILD, reader, file], {
      stdio: ['ignore', 'pipe', 'ignore'],
      timeout: TIMEOUT_MS,
    });
    let out = '';
    child.stdout.on('data', (data: Buffer) => (out += data.toString()));
    child.on('close', (code) => resolve(code === 0 ? (JSON.parse(out) as Measured) : null));
  });
}
