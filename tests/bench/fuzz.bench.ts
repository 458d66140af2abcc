import type { ChildProcess } from 'node:child_process';
import { spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { cpus, tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Table } from './bench.ts';

const CHILD = fileURLToPath(new URL('./fuzz.child.ts', import.meta.url));

/** FUZZ=n reads n mutants instead. */
const INPUTS = Number(process.env.FUZZ ?? 300_000);
/** Processor time for one input, beyond which it counts as one that does not end. */
const HANG_S = 1;
/** Memory of a process; each starts with some 200 MB. */
const MOST_MB = 1_200;
const LOOK_MS = 200;
/** Ticks of the kernel's clock a second, as /proc counts processor time (Linux, USER_HZ). */
const TICKS = 100;

interface Found {
  readonly number: number;
  readonly name?: string;
  readonly fault: string;
}

/** Every reader on damaged files, in processes of their own that are watched: crash, endless work, memory. */
export async function* fuzzBench(): AsyncGenerator<Table> {
  const folder = mkdtempSync(join(tmpdir(), 'rutline-fuzz-'));
  const lanes = Math.max(1, cpus().length);
  const started = Date.now();
  try {
    const all = await Promise.all(
      Array.from({ length: lanes }, (_, lane) => runLane(lane, lanes, join(folder, `lane-${lane}`))),
    );
    const found = all.flatMap((lane) => lane.found);
    const slowest = all.map((lane) => lane.slowest).sort((a, b) => b.ms - a.ms)[0];
    yield {
      title: 'Readers on damaged files',
      columns: [
        'inputs',
        'faults',
        'most processor time of one input',
        'peak memory of a process',
        'minutes',
      ],
      rows: [
        [
          String(INPUTS),
          String(found.length),
          `${slowest.ms.toFixed(0)} ms (${slowest.what})`,
          `${Math.max(...all.map(({ peakMB }) => peakMB)).toFixed(0)} MB`,
          ((Date.now() - started) / 60_000).toFixed(1),
        ],
      ],
      notes: found.map(({ number, name, fault }) => `Input ${number} (${name ?? '?'}): ${fault}`),
    };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

interface Lane {
  readonly found: Found[];
  slowest: { ms: number; what: string };
  peakMB: number;
}

/** One process after the other; where one ends before its time, the next goes on behind the input that it stood at. */
async function runLane(lane: number, step: number, file: string): Promise<Lane> {
  const told: Lane = { found: [], slowest: { ms: 0, what: '' }, peakMB: 0 };
  for (let from = lane; from < INPUTS;) {
    const ended = await watch(from, step, file, told);
    if (ended === null) break;
    const number = Number(readFileSync(file, 'utf8'));
    told.found.push({ number, fault: ended });
    process.stderr.write(`${number}: ${ended}\n`);
    from = number + step;
  }
  return told;
}

/** Null where the process came to its end, else why not. */
function watch(from: number, step: number, file: string, told: Lane): Promise<string | null> {
  const child = spawn(
    process.execPath,
    ['--max-old-space-size=512', '--import', 'tsx', CHILD, String(from), String(INPUTS), String(step), file],
    { stdio: ['ignore', 'pipe', 'inherit'] },
  );
  let text = '';
  child.stdout.on('data', (part: Buffer) => {
    text += part.toString();
    // Said at once as well: a run that is stopped has not been in vain.
    process.stderr.write(part);
  });
  let cause: string | null = null;
  let at = { number: '', cpuS: 0 };
  const timer = setInterval(() => {
    const state = stateOf(child, file);
    if (state === null) return;
    told.peakMB = Math.max(told.peakMB, state.memoryMB);
    if (state.memoryMB > MOST_MB) cause = `memory: ${state.memoryMB.toFixed(0)} MB`;
    if (state.number !== at.number) at = state;
    else if (state.number !== '' && state.cpuS - at.cpuS > HANG_S) cause = `no end within ${HANG_S} s`;
    if (cause !== null) child.kill('SIGKILL');
  }, LOOK_MS);
  return new Promise((resolve) => {
    child.on('close', (code, signal) => {
      clearInterval(timer);
      let whole = false;
      for (const line of text.split('\n').filter(Boolean)) {
        const said = JSON.parse(line) as Found | { readonly slowest: Lane['slowest'] };
        if ('fault' in said) told.found.push(said);
        else {
          whole = true;
          if (said.slowest.ms > told.slowest.ms) told.slowest = said.slowest;
        }
      }
      resolve(whole ? null : (cause ?? `the process ended (${code ?? signal})`));
    });
  });
}

function stateOf(
  { pid }: ChildProcess,
  file: string,
): { number: string; cpuS: number; memoryMB: number } | null {
  try {
    const stat = readFileSync(`/proc/${pid}/stat`, 'utf8')
      .replace(/^.*\) /s, '')
      .split(' ');
    const memory = /VmRSS:\s+(\d+) kB/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'));
    return {
      number: readFileSync(file, 'utf8'),
      cpuS: (Number(stat[11]) + Number(stat[12])) / TICKS,
      memoryMB: Number(memory?.[1] ?? 0) / 1024,
    };
  } catch {
    return null;
  }
}
