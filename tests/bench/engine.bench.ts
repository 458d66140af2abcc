import { Equilibrium } from '../../src/traverse/equilibrium.ts';
import type { Comparison } from '../traverse/against.ts';
import {
  agree,
  askedOf,
  bothStand,
  compared,
  quantile,
  settled,
  turnRad,
  wronglyStands,
} from '../traverse/against.ts';
import { startEngine, STEP_S } from '../traverse/engine.ts';
import { isSteep } from '../traverse/scenes.ts';
import type { Table } from './bench.ts';

const SCENES = 1000;

/** Degrees that the body is turned from the plane, in classes. */
const TURNS_DEG = [0, 3, 6, 9, 11, 17, 90] as const;

const percent = (share: number): string => `${(100 * share).toFixed(1)} %`;

/** Processor time of some work, milliseconds: what it needs whoever else is at work. */
function processorMs(work: () => void): number {
  const from = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(from);
  return (user + system) / 1000;
}

function row(name: string, scenes: readonly Comparison[]): string[] {
  if (scenes.length === 0) return [name, '0', '', '', '', ''];
  const errors = scenes.filter(bothStand).flatMap((each) => each.errors);
  return [
    name,
    String(scenes.length),
    ...(errors.length === 0 ? ['', ''] : [percent(quantile(errors, 0.5)), percent(quantile(errors, 0.95))]),
    percent(scenes.filter(agree).length / scenes.length),
    String(scenes.filter(wronglyStands).length),
  ];
}

function byTurn(all: readonly Comparison[]): string[][] {
  const rows = TURNS_DEG.slice(1).map((to, i) => {
    const within = (each: Comparison) => {
      const deg = (turnRad(each) * 180) / Math.PI;
      return !isSteep(each.seed) && !each.engine.tipped && deg >= TURNS_DEG[i] && deg < to;
    };
    return row(`${TURNS_DEG[i]}° to ${to}°`, all.filter(within));
  });
  const tipped = all.filter(({ seed, engine }) => !isSteep(seed) && engine.tipped);
  if (tipped.length > 0) rows.push(row('tipped there', tipped));
  rows.push(
    row(
      'on cambers of 29° to 49°',
      all.filter(({ seed }) => isSteep(seed)),
    ),
    row('all', all),
  );
  return rows;
}

/** The model against a rigid-body engine: wheel loads, standing, and time for the same cases. */
export async function* engineBench(): AsyncIterable<Table> {
  await startEngine();
  const all: Comparison[] = [];
  const engineMs = processorMs(() => {
    for (let seed = 1; seed <= SCENES; seed++) all.push(compared(seed));
  });
  const wrong = all.filter(wronglyStands);
  yield {
    title: 'Against a rigid-body engine',
    columns: ['body turned from the plane', 'scenes', 'median', '95th percentile', 'agree', 'wrong stands'],
    rows: byTurn(all),
    notes: [
      'Differences of wheel loads over static load, where both stand. Bars: median 3 %, 95th percentile 8 %, agreement 97 %.',
      `Wrong: tips there though more than 5° of tilt are left here; bar ${percent(0.005)}. Tilt left in those: ${
        wrong
          .map(({ seed, tiltLeftRad }) => `scene ${seed} ${((tiltLeftRad * 180) / Math.PI).toFixed(1)}°`)
          .join(', ') || 'none'
      }.`,
    ],
  };

  const asked = all.map(({ scene, engine }) => askedOf(scene, engine));
  const rounds = 20;
  const modelMs =
    processorMs(() => {
      for (let round = 0; round < rounds; round++)
        for (const { chassis, up, bottomM, climbTan } of asked)
          new Equilibrium(chassis, up).solve(bottomM, climbTan);
    }) / rounds;
  yield {
    title: 'Processor time for the same cases',
    columns: ['what', 'each'],
    rows: [
      ['settled in the engine', `${(engineMs / SCENES).toFixed(0)} ms`],
      ['solved as an equilibrium', `${((1000 * modelMs) / SCENES).toFixed(1)} µs`],
      ['ratio', Math.round(engineMs / modelMs).toLocaleString('en')],
    ],
    notes: [`${SCENES} scenes; the equilibrium from a cold start, the ground under its wheels known.`],
  };

  const moved = all.slice(0, 100).map(({ seed, scene, engine }) => {
    const finer = settled(scene, STEP_S / 2);
    const weightN = engine.loadN.reduce((sum, load) => sum + load, 0);
    const differences = engine.loadN.map((load, i) => (4 * Math.abs(load - finer.loadN[i])) / weightN);
    return { seed, differences, tipped: engine.tipped, changed: engine.tipped !== finer.tipped };
  });
  const standing = moved.filter(({ tipped, changed }) => !tipped && !changed);
  const differences = standing.flatMap((each) => each.differences);
  yield {
    title: 'The engine against itself, with half the time step',
    columns: ['scenes', 'median', '95th percentile', 'standing changed'],
    rows: [
      [
        String(moved.length),
        `${(100 * quantile(differences, 0.5)).toFixed(2)} %`,
        percent(quantile(differences, 0.95)),
        String(moved.filter(({ changed }) => changed).length),
      ],
    ],
    notes: ['Differences of wheel loads over a quarter of weight: what the engine knows of its own answer.'],
  };
}
