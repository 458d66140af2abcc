import type { Outcome, Surveyed } from '../archive/gradedTrack.ts';
import type { Cell } from '../convoy/matrix.ts';
import type { OutcomeWord } from '../grade/outcome.ts';
import type { VerdictWord } from '../grade/verdict.ts';
import type { Direction } from '../terrain/obstacle.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';

/** An outcome is of today for so long. */
const DAY_MS = 18 * 3_600_000;

/** What an outcome is made from. */
export interface Noting {
  readonly id: string;
  readonly atMs: number;
  readonly by: string;
  readonly vehicle: Vehicle;
  readonly direction: Direction;
  readonly did: OutcomeWord;
  /** Whether the driver is named with it. */
  readonly named: boolean;
}

/** An outcome on the line and with the aids that were advised; null where nothing is known of the cell. */
export function outcomeOf({ named, vehicle, ...noting }: Noting, cell: Cell): Outcome {
  const { lineId, verdict } = cell.verdicts[cell.best];
  return {
    ...noting,
    vehicle: named ? vehicle : { ...vehicle, driver: '' },
    lineId,
    rung: verdict.rung.name,
    said: verdict.word,
    note: '',
  };
}

/** What was said of one line with one rung of aids; null where nothing was. */
export function saidOf(cell: Cell, lineId: string, rung: string): VerdictWord | null {
  const verdict = cell.verdicts.find((one) => one.lineId === lineId)?.verdict;
  return verdict?.ladder.find((step) => step.rung.name === rung)?.word ?? null;
}

/** The newest outcome of a vehicle of this day, in this direction. */
export function todaysOutcome(
  { outcomes }: Pick<Surveyed, 'outcomes'>,
  vehicleId: string,
  direction: Direction,
  nowMs: number,
): Outcome | undefined {
  return outcomes.findLast(
    (one) =>
      one.vehicle.id === vehicleId && one.direction === direction && Math.abs(nowMs - one.atMs) < DAY_MS,
  );
}
