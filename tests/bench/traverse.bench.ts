import { chassisOf } from '../../src/traverse/chassis.ts';
import { Equilibrium } from '../../src/traverse/equilibrium.ts';
import { reliefOf } from '../../src/traverse/relief.ts';
import { march } from '../../src/traverse/march.ts';
import { assessTraverse } from '../../src/traverse/traverse.ts';
import { upOf } from '../../src/traverse/up.ts';
import { ladder } from '../../src/vehicle/aids.ts';
import { randomScene } from '../traverse/scenes.ts';
import type { Table } from './bench.ts';

const NOTHING = { airedDown: false, barsDisconnected: false };

/** Seconds that the fastest of five rounds takes: what the code needs when the machine is left alone. */
function seconds(round: () => void): number {
  let best = Infinity;
  for (let n = 0; n < 5; n++) {
    const from = performance.now();
    round();
    best = Math.min(best, performance.now() - from);
  }
  return best / 1000;
}

/** Equilibria a second on ground that changes at every station, and what a line costs. */
export async function* traverseBench(): AsyncIterable<Table> {
  await Promise.resolve();
  const scenes = Array.from({ length: 40 }, (_, n) => randomScene(10 * n + 1));

  const stands = scenes.map(({ values, ground }) => {
    const chassis = chassisOf(values, NOTHING);
    const up = upOf(ground)!;
    return { chassis, up, record: march(chassis, reliefOf(ground), up, ground.lengthM, 0) };
  });
  let solved = 0;
  const solving = seconds(() => {
    solved = 0;
    for (const { chassis, up, record } of stands) {
      const body = new Equilibrium(chassis, up);
      // Over the obstacle only: the level run-in and run-out would be too easy.
      const from = Math.floor(record.length * 0.25);
      const to = Math.ceil(record.length * 0.75);
      for (let again = 0; again < 40; again++)
        for (let n = from; n < to; n++) {
          body.solve(record.bottomM.subarray(4 * n, 4 * n + 4), record.climbTan.subarray(4 * n, 4 * n + 4));
          solved++;
        }
    }
  });
  const marching = seconds(() => {
    for (const { ground } of scenes)
      for (const { chassis, up } of stands.slice(0, 1))
        march(chassis, reliefOf(ground), up, ground.lengthM, 0);
  });
  let sets = 0;
  const assessing = seconds(() => {
    sets = 0;
    for (const { values, ground } of scenes) {
      const aids = ladder(values).map((rung) => rung.aids);
      sets += aids.length;
      assessTraverse(values, [ground], 0, aids);
    }
  });
  const each = (total: number, count: number) => `${((total / count) * 1000).toFixed(2)} ms`;
  yield {
    title: 'Traverse',
    columns: ['what', 'measured', 'bar'],
    rows: [
      ['equilibria a second, one core', Math.round(solved / solving).toLocaleString('en'), '300,000'],
      ['one line marched, ground known', each(marching, scenes.length), ''],
      [
        `one line assessed with all its aids (${(sets / scenes.length).toFixed(1)} sets)`,
        each(assessing, scenes.length),
        '',
      ],
    ],
    notes: [`${scenes.length} random scenes of 10 m; the fastest of five rounds.`],
  };
}
