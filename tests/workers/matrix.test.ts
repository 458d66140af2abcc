import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { readTrip } from '../../src/archive/share.ts';
import type { Cell } from '../../src/convoy/matrix.ts';
import { advisedBy, aheadOf } from '../../src/convoy/matrix.ts';
import { placesOn } from '../../src/convoy/places.ts';
import type { MatrixTask } from '../../src/workers/matrixTask.ts';
import type { Lane } from '../../src/workers/pool.ts';
import { answerAll } from '../../src/workers/pool.ts';
import { nodeLane, ownLane } from './nodeLane.ts';

const trip = readTrip(readFileSync('public/demo/outing.json', 'utf8')).value!;
const places = placesOn(trip.track, trip.obstacles).slice(0, 4);

/** Cells, how sure they are, and where else they go, from any lanes. */
async function answers(lanes: readonly Lane<MatrixTask, Partial<Cell>[]>[]): Promise<Cell[][]> {
  const asked = async (asks: MatrixTask['asks'], rows: readonly (readonly Cell[])[]) => {
    const parts = await answerAll(
      places.map((place, i): MatrixTask => ({
        place,
        vehicles: trip.vehicles,
        ahead: aheadOf(trip.vehicles),
        direction: 'as recorded',
        asks,
        advised: (rows[i] ?? []).map(advisedBy),
      })),
      lanes,
    );
    return parts!.map((row, i) => row.map((part, k) => ({ ...rows[i]?.[k], ...part })));
  };
  return asked('bands', await asked('sureness', await asked('verdicts', [])));
}

it('the same answers from no worker, from one and from three', async () => {
  const one = [nodeLane()];
  const three = [nodeLane(), nodeLane(), nodeLane()];
  try {
    const own = await answers([ownLane]);
    expect(own.flat().some((cell) => typeof cell.goesIn === 'number' && cell.goesIn > 0)).toBe(true);
    expect(own.flat().some((cell) => cell.bands && cell.bands.length > 0)).toBe(true);
    expect(await answers(one)).toEqual(own);
    expect(await answers(three)).toEqual(own);
  } finally {
    await Promise.all([...one, ...three].map((lane) => lane.close()));
  }
}, 120_000);
