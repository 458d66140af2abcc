import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import type { Cell, Place } from '../../src/convoy/matrix.ts';
import { advisedBy, aheadOf, inOrderOfTravel } from '../../src/convoy/matrix.ts';
import { PRESETS, stretchFrom } from '../../src/terrain/preset.ts';
import type { Direction, Line } from '../../src/terrain/obstacle.ts';
import { rad } from '../../src/units.ts';
import { classValues } from '../../src/vehicle/classes.ts';
import type { Vehicle } from '../../src/vehicle/vehicle.ts';
import { VEHICLE_CLASSES } from '../../src/vehicle/vehicle.ts';
import type { MatrixTask } from '../../src/workers/matrixTask.ts';
import type { Lane } from '../../src/workers/pool.ts';
import { answerAll } from '../../src/workers/pool.ts';
import { nodeLane } from '../workers/nodeLane.ts';
import type { Table } from './bench.ts';

const LANES = 2;
const TASK = fileURLToPath(new URL('../../src/workers/matrixTask.ts', import.meta.url));
const DIRECTIONS: readonly Direction[] = ['as recorded', 'reversed'];

/** A day's trip of invented obstacles: each preset in turn, a little harder each time round. */
function places(count: number): Place[] {
  return Array.from({ length: count }, (_, i) => {
    const preset = PRESETS[i % PRESETS.length];
    const round = Math.floor(i / PRESETS.length);
    const lines: Line[] = [
      { id: 'main', kind: 'main', name: 'main line', offsetM: 0 },
      { id: 'left', kind: 'offset', name: 'left', offsetM: 0.4 },
      { id: 'right', kind: 'offset', name: 'right', offsetM: -0.4 },
    ];
    return {
      obstacle: {
        id: `o${i}`,
        name: preset.name,
        preset: preset.name,
        lng: 0,
        lat: 0,
        stationM: 100 * i,
        stretch: stretchFrom(preset, { slopeRad: rad(4 + 3 * round) }),
        lines: i % 2 === 0 ? lines : lines.slice(0, 1),
        note: '',
        photos: [],
      },
      trackSlope: null,
    };
  });
}

function convoy(count: number): Vehicle[] {
  return Array.from({ length: count }, (_, i) => {
    const vehicleClass = VEHICLE_CLASSES[i % VEHICLE_CLASSES.length];
    const lockers =
      i >= VEHICLE_CLASSES.length
        ? ({ rearDifferential: 'locker', frontDifferential: 'locker' } as const)
        : {};
    const values = { ...classValues(vehicleClass), ...lockers, roofLoadKg: 10 * i };
    return { id: `v${i}`, name: `v${i}`, driver: '', vehicleClass, values, estimated: [] };
  });
}

/** What is asked of rows that are known: how sure they are, or where else they go. */
function closer(
  asks: 'sureness' | 'bands',
  tasks: readonly MatrixTask[],
  rows: readonly (readonly Cell[])[],
): MatrixTask[] {
  const advised = (cells: readonly Cell[]) => (asks === 'sureness' ? cells.map(advisedBy) : []);
  return rows.map((cells, i) => ({ ...tasks[i], asks, advised: advised(cells) }));
}

/** Since the first was asked for: the first row, all rows, how sure each cell is, and where else each vehicle goes. */
interface Day {
  readonly firstMs: number;
  readonly verdictsMs: number;
  readonly sureMs: number;
  readonly allMs: number;
}

async function dayOn(
  lanes: readonly Lane<MatrixTask, Partial<Cell>[]>[],
  tasks: readonly MatrixTask[],
): Promise<Day> {
  const from = performance.now();
  const since = () => performance.now() - from;
  let firstMs = NaN;
  const rows = (await answerAll(tasks, lanes, () => {
    if (Number.isNaN(firstMs)) firstMs = since();
  })) as Cell[][];
  const verdictsMs = since();
  await answerAll(closer('sureness', tasks, rows), lanes);
  const sureMs = since();
  await answerAll(closer('bands', tasks, rows), lanes);
  return { firstMs, verdictsMs, sureMs, allMs: since() };
}

/** 25 obstacles, 12 vehicles, both ways, every line and rung, 128 draws of each cell that is in doubt, and the offset search. */
export async function* dayBench(): AsyncIterable<Table> {
  const trip = places(25);
  const vehicles = convoy(12);
  const outDir = mkdtempSync(join(tmpdir(), 'rutline-bench-'));
  // In a process of its own, so that its memory is not counted.
  const config = {
    configFile: false,
    logLevel: 'error',
    build: {
      ssr: TASK,
      outDir,
      emptyOutDir: true,
      rollupOptions: { output: { entryFileNames: '[name].mjs' } },
    },
  };
  const script = `import { build } from 'vite'; await build(${JSON.stringify(config)});`;
  execFileSync(process.execPath, ['--input-type=module', '-e', script]);
  const lanes = Array.from({ length: LANES }, () => nodeLane(pathToFileURL(join(outDir, 'matrixTask.mjs'))));
  const tasks = DIRECTIONS.flatMap((direction) =>
    inOrderOfTravel(trip, direction).map((place): MatrixTask => ({
      place,
      vehicles,
      ahead: aheadOf(vehicles),
      direction,
      asks: 'verdicts',
      advised: [],
    })),
  );
  // Threads start and code warms up before the clock does.
  const warm = (await answerAll(tasks.slice(0, 4), lanes)) as Cell[][];
  for (const asks of ['sureness', 'bands'] as const) await answerAll(closer(asks, tasks, warm), lanes);

  const first = await dayOn(lanes, tasks);
  const again = await dayOn(lanes, tasks);
  await Promise.all(lanes.map((lane) => lane.close()));
  rmSync(outDir, { recursive: true });
  const peakMb = process.resourceUsage().maxRSS / 1024;
  const seconds = (of: (day: Day) => number) =>
    [first, again].map((day) => `${(of(day) / 1000).toFixed(2)} s`);
  yield {
    title: "A day's trip: 25 obstacles, 12 vehicles, both ways",
    columns: ['what', 'first time', 'once more', 'bar'],
    rows: [
      ['first row of verdicts', ...seconds(({ firstMs }) => firstMs), '0.5 s'],
      ['all verdicts, every line and rung', ...seconds(({ verdictsMs }) => verdictsMs), ''],
      ['and how sure each is, 128 draws', ...seconds(({ sureMs }) => sureMs), ''],
      ['and where else each goes, every 0.05 m across', ...seconds(({ allMs }) => allMs), '5 s'],
      ['peak memory, all threads', '', `${peakMb.toFixed(0)} MB`, ''],
    ],
    notes: [
      `${LANES} threads, on what the build delivers, warmed up on four places. Code for the rest is compiled during the first time; nothing that was found out is kept for the second.`,
    ],
  };
}
