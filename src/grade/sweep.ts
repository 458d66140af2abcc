import type { Ground } from '../terrain/ground.ts';
import { worstAlong } from '../traverse/along.ts';
import type { Assess } from '../traverse/assess.ts';
import { fitChecks } from '../traverse/bounds/fit.ts';
import { DRIVER_ERROR_M } from '../traverse/limits.ts';
import { assessTraverse } from '../traverse/traverse.ts';
import { ladder } from '../vehicle/aids.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import type { Grounds, VerdictWord } from './verdict.ts';
import { verdictOn } from './verdict.ts';

/** Offsets, left of the main line in the direction of travel, between which a line goes; the driver's error is taken off. */
export interface Band {
  readonly fromM: number;
  readonly toM: number;
}

/** One vehicle with one rung moved sideways over the corridor. */
export interface Sweep {
  /** Rising, from the right edge to the left one. */
  readonly offsetM: Float64Array;
  readonly stationM: Float64Array;
  /** Margin nearest to its limit in its own tolerances, `stationM.length` to an offset; values as entered. */
  readonly ease: Float64Array;
  /** The verdict at each offset; empty where only the picture was asked for. */
  readonly words: readonly VerdictWord[];
  readonly bands: readonly Band[];
}

/** How closely a sweep looks. Coarse is for while a size is being dragged. */
export interface Grain {
  readonly acrossM: number;
  readonly alongM: number;
  /** Whether each offset gets its verdict, at the hard end of every range too. */
  readonly judged: boolean;
}

export const COARSE: Grain = { acrossM: 0.2, alongM: 0.25, judged: false };
export const FINE: Grain = { acrossM: 0.1, alongM: 0.1, judged: true };

/** Swept beyond where the vehicle's sides stay within the corridor, so that the edge shows; and the most, metres. */
const BEYOND_M = 0.3;
const MOST_M = 2.5;

/** Offsets over the corridor and a little beyond, the main line among them. */
function offsetsAcross({ values }: Vehicle, { corridor }: Ground, acrossM: number): Float64Array {
  const reach = (roomM: number) => {
    const sideM = Math.min(MOST_M, Math.max(0, roomM - values.widthM / 2) + BEYOND_M);
    return Math.ceil(sideM / acrossM - 1e-9);
  };
  const first = -reach(corridor.rightM);
  return Float64Array.from({ length: reach(corridor.leftM) - first + 1 }, (_, i) => (first + i) * acrossM);
}

/** Room beside the vehicle at one offset, in its tolerances; it counts at every station. */
function roomEase({ values }: Vehicle, ground: Ground, offsetM: number): number {
  const room = fitChecks(values, ground, offsetM).find(({ name }) => name === 'width');
  return room === undefined ? Infinity : room.margin / room.tolerance;
}

/** Null where ground or vehicle are not known well enough to say anything. */
export function sweepOf(vehicle: Vehicle, grounds: Grounds, rungIndex: number, grain: Grain): Sweep | null {
  const { entered } = grounds;
  if (entered === null) return null;
  const rungs = ladder(vehicle.values);
  const { aids } = rungs[Math.min(rungIndex, rungs.length - 1)];
  const offsetM = offsetsAcross(vehicle, entered, grain.acrossM);
  const rows = Array.from(offsetM, (offset) =>
    worstAlong(vehicle.values, entered, offset, aids, grain.alongM),
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

  const oneRung: Assess = (values, ground, offset, aidSets) => {
    const [said] = assessTraverse(values, ground, offset, [aids]);
    return aidSets.map(() => said);
  };
  const words = grain.judged
    ? Array.from(offsetM, (offset) => verdictOn(vehicle, grounds, offset, oneRung).word)
    : [];
  return { offsetM, stationM, ease, words, bands: bandsOf(offsetM, words, DRIVER_ERROR_M) };
}

/** Runs of offsets that go, narrowed by the driver's error at either end; what is left of none is no band. */
export function bandsOf(offsetM: ArrayLike<number>, words: readonly VerdictWord[], errorM: number): Band[] {
  const bands: Band[] = [];
  const goes = (i: number) => words[i] === 'goes' || words[i] === 'goes with care';
  for (let i = 0; i < words.length; i++) {
    if (!goes(i)) continue;
    let to = i;
    while (goes(to + 1)) to++;
    const band = { fromM: offsetM[i] + errorM, toM: offsetM[to] - errorM };
    if (band.toM >= band.fromM - 1e-9) bands.push(band);
    i = to;
  }
  return bands;
}
