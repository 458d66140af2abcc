import type { Ground } from '../terrain/ground.ts';
import type { Check } from '../traverse/assess.ts';
import { easeOf } from '../traverse/assess.ts';
import { fitChecks } from '../traverse/bounds/fit.ts';
import { DRIVER_ERROR_M } from '../traverse/limits.ts';
import { Traverse } from '../traverse/traverse.ts';
import type { Aids } from '../vehicle/aids.ts';
import type { VehicleValues } from '../vehicle/specs.ts';
import { vehicleFields } from '../vehicle/specs.ts';
import type { Grounds } from './verdict.ts';
import { isDanger } from './verdict.ts';

/** Distance between the offsets of the search, metres: ground lines are sampled as far apart. */
export const OFFSET_M = 0.05;

/** The most that is searched to either side, metres. */
const MOST_M = 2.5;

/** Step in which track widths are tried, metres. */
const TRACK_STEP_M = 0.05;

/** From one limit to the other. */
export interface Range {
  readonly fromM: number;
  readonly toM: number;
}

/** Offsets, left of the main line in the direction of travel, between which a line goes; the driver's error is taken off. */
export interface Band extends Range {
  /** The offset in it with the greatest margin. */
  readonly bestM: number;
  /** Index of the least set of aids that goes there. */
  readonly set: number;
}

/** What goes at one offset: the least set of aids, and the least margin, in tolerances, of what can stop it or hurt. */
interface Going {
  readonly set: number;
  readonly ease: number;
}

/** Offsets over the room that the corridor leaves a vehicle and `beyondM` more, the main line among them; rising. */
export function offsetsAcross(
  { widthM }: VehicleValues,
  { corridor }: Ground,
  acrossM: number,
  beyondM = 0,
): Float64Array {
  const reach = (roomM: number) => {
    const sideM = Math.min(MOST_M, Math.max(0, roomM - widthM / 2) + beyondM);
    return Math.floor(sideM / acrossM + 1e-9);
  };
  const first = -reach(corridor.rightM);
  return Float64Array.from({ length: reach(corridor.leftM) - first + 1 }, (_, i) => (first + i) * acrossM);
}

/**
 * Where a vehicle can be moved sideways and go, with care or without, by any of some sets of aids: every offset is judged
 * as a line there would be. Null where ground or vehicle are not known well enough to say anything.
 */
export function bandsOf(values: VehicleValues, grounds: Grounds, aidSets: readonly Aids[]): Band[] | null {
  const { entered } = grounds;
  if (entered === null) return null;
  const offsetM = offsetsAcross(values, entered, OFFSET_M);
  const stops = [...STOPS];
  const asked = new Map<number, Going | null>();
  const goes = (i: number): boolean => {
    if (i < 0 || i >= offsetM.length) return false;
    if (!asked.has(i)) asked.set(i, goingAt(values, grounds, offsetM[i], aidSets, stops));
    return asked.get(i) !== null;
  };
  // A band is wider than the driver's error to both sides, so that none lies between two of these.
  const apart = Math.floor((2 * DRIVER_ERROR_M) / OFFSET_M + 1e-9) + 1;
  for (let i = 0; i < offsetM.length; i += apart) {
    if (asked.has(i) || !goes(i)) continue;
    let left = i - 1;
    while (goes(left)) left--;
    let right = i + 1;
    while (goes(right)) right++;
  }
  const going = Array.from(offsetM, (_, i) => asked.get(i) ?? null);
  return narrowed(offsetM, going, DRIVER_ERROR_M);
}

/** Runs of offsets that go, narrowed by the driver's error at either end; what is left of none is no band. */
export function narrowed(
  offsetM: ArrayLike<number>,
  going: readonly (Going | null)[],
  errorM: number,
): Band[] {
  const bands: Band[] = [];
  for (let i = 0; i < going.length; i++) {
    if (going[i] === null) continue;
    const start = i;
    while (i + 1 < going.length && going[i + 1] !== null) i++;
    const fromM = offsetM[start] + errorM;
    const toM = offsetM[i] - errorM;
    const best = bestOf(offsetM, going, { fromM, toM });
    if (best !== null) bands.push({ fromM, toM, bestM: best.bestM, set: best.set });
  }
  return bands;
}

/** The offset of a band that needs the fewest aids, of those the one with the greatest margin, of those the middle one. */
function bestOf(
  offsetM: ArrayLike<number>,
  going: readonly (Going | null)[],
  { fromM, toM }: Range,
): { readonly bestM: number; readonly set: number } | null {
  const middleM = (fromM + toM) / 2;
  const within = going
    .flatMap((one, i) => (one === null ? [] : [{ set: one.set, ease: one.ease, bestM: offsetM[i] }]))
    .filter(({ bestM }) => bestM >= fromM - 1e-9 && bestM <= toM + 1e-9)
    .sort(
      (a, b) => a.set - b.set || b.ease - a.ease || Math.abs(a.bestM - middleM) - Math.abs(b.bestM - middleM),
    );
  return within.length === 0 ? null : { bestM: within[0].bestM, set: within[0].set };
}

/** What can stop a vehicle at an offset: on the ground as entered, or with every value at its hard end. */
const STOPS = ['standing', 'drive', 'standing at worst', 'drive at worst'] as const;

type Stop = (typeof STOPS)[number];

/** What goes at one offset; null where nothing does. */
function goingAt(
  values: VehicleValues,
  grounds: Grounds,
  offsetM: number,
  aidSets: readonly Aids[],
  stops: Stop[] = [...STOPS],
): Going | null {
  const { entered, worst } = grounds;
  if (entered === null) return null;
  const dangers = (checks: readonly Check[] | null) => checks?.filter(({ name }) => isDanger(name)) ?? null;
  const fit = Math.min(
    easeOf(fitChecks(values, entered, offsetM)),
    ...worst.map((ground) => easeOf(dangers(fitChecks(values, ground, offsetM)))),
  );
  if (fit < 0) return null;
  const asEntered = new Traverse(values, [entered], offsetM, ['engine braking']);
  const atWorst = new Traverse(values, worst, offsetM, ['engine braking', 'underside']);
  const asks: Readonly<Record<Stop, (aids: Aids) => number>> = {
    standing: (aids) => easeOf(asEntered.standing(aids)),
    drive: (aids) => easeOf(asEntered.driven(aids)),
    'standing at worst': (aids) => easeOf(dangers(atWorst.standing(aids))),
    'drive at worst': (aids) => easeOf(dangers(atWorst.driven(aids))),
  };
  try {
    return leastSet(aidSets, fit, asks, stops);
  } finally {
    asEntered.close();
    atWorst.close();
  }
}

/** The least set of aids that goes; null where none does. What stopped the last set or offset is asked first. */
function leastSet(
  aidSets: readonly Aids[],
  fit: number,
  asks: Readonly<Record<Stop, (aids: Aids) => number>>,
  stops: Stop[],
): Going | null {
  for (let set = 0; set < aidSets.length; set++) {
    let ease = fit;
    for (let i = 0; i < stops.length && ease >= 0; i++) {
      const stop = stops[i];
      ease = Math.min(ease, asks[stop](aidSets[set]));
      if (ease >= 0) continue;
      stops.splice(i, 1);
      stops.unshift(stop);
    }
    if (ease >= 0) return { set, ease };
  }
  return null;
}

/**
 * The track widths, of such a vehicle with both axles wider or narrower alike, to which an offset is open: those without a
 * gap about its own, tried in steps. Its body stays, but for wheels that would stand outside it. Null where its own is not.
 */
export function tracksOpenTo(
  values: VehicleValues,
  grounds: Grounds,
  offsetM: number,
  aids: Aids,
): Range | null {
  const own = Math.max(values.frontTrackWidthM, values.rearTrackWidthM);
  const goes = (moreM: number): boolean => {
    const tracks = {
      frontTrackWidthM: values.frontTrackWidthM + moreM,
      rearTrackWidthM: values.rearTrackWidthM + moreM,
    };
    const inRange = (['frontTrackWidthM', 'rearTrackWidthM'] as const).every(
      (name) => tracks[name] >= vehicleFields[name].min && tracks[name] <= vehicleFields[name].max,
    );
    const widthM = Math.max(values.widthM, own + moreM + values.tyreSectionM);
    return inRange && goingAt({ ...values, ...tracks, widthM }, grounds, offsetM, [aids]) !== null;
  };
  if (!goes(0)) return null;
  const furthest = (sign: 1 | -1): number => {
    let steps = 0;
    while (goes(sign * (steps + 1) * TRACK_STEP_M)) steps++;
    return own + sign * steps * TRACK_STEP_M;
  };
  return { fromM: furthest(-1), toM: furthest(1) };
}
