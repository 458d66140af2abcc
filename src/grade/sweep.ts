import type { Ground } from '../terrain/ground.ts';
import { worstAlong } from '../traverse/along.ts';
import { fitChecks } from '../traverse/bounds/fit.ts';
import { ladder } from '../vehicle/aids.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import type { Band, Range } from './bands.ts';
import { bandsOf, offsetsAcross, tracksOpenTo } from './bands.ts';
import type { Grounds } from './verdict.ts';

/** A band with the track widths to which its best offset is open, of such a vehicle with wider or narrower axles. */
export interface OpenBand extends Band {
  readonly tracks: Range | null;
}

/** One vehicle with one rung moved sideways over the corridor. */
export interface Sweep {
  /** Rising, from the right edge to the left one. */
  readonly offsetM: Float64Array;
  readonly stationM: Float64Array;
  /** Margin nearest to its limit in its own tolerances, `stationM.length` to an offset; values as entered. */
  readonly ease: Float64Array;
  /** Null where only the picture was asked for. */
  readonly bands: readonly OpenBand[] | null;
}

/** How closely a sweep looks. Coarse is for while a size is being dragged. */
export interface Grain {
  readonly acrossM: number;
  readonly alongM: number;
  /** Whether bands are sought as well, at the hard end of every range too. */
  readonly judged: boolean;
}

export const COARSE: Grain = { acrossM: 0.2, alongM: 0.25, judged: false };
export const FINE: Grain = { acrossM: 0.1, alongM: 0.1, judged: true };

/** Shown beyond where the vehicle's sides stay within the corridor, so that the edge shows, metres. */
const BEYOND_M = 0.4;

/** Room beside the vehicle at one offset, in its tolerances; it counts at every station. */
function roomEase({ values }: Vehicle, ground: Ground, offsetM: number): number {
  const room = fitChecks(values, ground, offsetM).find(({ name }) => name === 'width');
  return room === undefined ? Infinity : room.margin / room.tolerance;
}

/** Null where ground or vehicle are not known well enough to say anything. */
export function sweepOf(vehicle: Vehicle, grounds: Grounds, rungIndex: number, grain: Grain): Sweep | null {
  const { entered } = grounds;
  if (entered === null) return null;
  const { values } = vehicle;
  const rungs = ladder(values);
  const { aids } = rungs[Math.min(rungIndex, rungs.length - 1)];
  const offsetM = offsetsAcross(values, entered, grain.acrossM, BEYOND_M);
  const rows = Array.from(offsetM, (offset) =>
    worstAlong(values, entered, offset, aids, grain.alongM),
  ).filter((row) => row !== null);
  if (rows.length === 0) return null;
  const { stationM } = rows[0];
  const ease = new Float64Array(rows.length * stationM.length);
  rows.forEach((row, i) => {
    const room = roomEase(vehicle, entered, offsetM[i]);
    ease.set(
      row.ease.map((along) => Math.min(along, room)),
      i * stationM.length,
    );
  });
  const found = grain.judged ? bandsOf(values, grounds, [aids]) : null;
  const bands =
    found?.map((band) => ({ ...band, tracks: tracksOpenTo(values, grounds, band.bestM, aids) })) ?? null;
  return { offsetM, stationM, ease, bands };
}
