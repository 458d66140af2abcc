import type { Tyre } from '../vehicle/tyre.ts';
import { BEARS_M, STEEPEST_CONTACT } from './limits.ts';
import type { Relief } from './relief.ts';
import type { Shelf } from './shelf.ts';

/** A rigid wheel rolled along one wheel path, station by station. */
export interface WheelPath {
  /** Height of the wheel's lowest point, so that flat ground gives the ground's height. */
  readonly bottomM: Float64Array;
  /** Tangent of the ground's climb at the contact, α; positive where the wheel climbs. */
  readonly climbTan: Float64Array;
  /**
   * Where across its tread it bears: the middle of what lies within `BEARS_M` of the highest ground under it, in ground
   * lines left of the middle of all lines under it; 0 where all of the tread bears.
   */
  readonly bearingLines: Float64Array;
}

export function emptyPath(count: number, shelf: Shelf): WheelPath {
  return {
    bottomM: shelf.numbers(count),
    climbTan: shelf.numbers(count),
    bearingLines: shelf.numbers(count),
  };
}

/**
 * A wheel of radius R and section width b rests where the highest ground under its section, z(u), touches the disc:
 *
 *     bottom = max over u in [−R, R] of  z(u) + √(R² − u²) − R,      tan α = u / √(R² − u²)
 *
 * Between samples the ground is straight, z = z₀ + m u, so beside the highest sample the maximum lies at
 * u = R m / √(1 + m²), kept to its piece. Neglected: the tyre's own give over small stones, which makes climbs milder
 * than reckoned. A relief that keeps its paths answers what was asked before; else the path is written into `out`.
 */
export function wheelPath(
  relief: Relief,
  fromXM: number,
  stationM: number,
  count: number,
  yM: number,
  { radiusM, sectionM }: Pick<Tyre, 'radiusM' | 'sectionM'>,
  out?: WheelPath,
): WheelPath {
  const { first, last } = relief.linesUnder(yM - sectionM / 2, yM + sectionM / 2);
  const { paths } = relief;
  if (paths === null) {
    const path = out ?? emptyPath(count, relief.shelf);
    roll(relief, first, last, fromXM, stationM, radiusM, path);
    return path;
  }
  let key = `${radiusM} ${fromXM} ${stationM} ${count}`;
  for (let j = first; j <= last; j++) key += ` ${relief.line(j).id}`;
  const known = paths.get(key);
  if (known) return known;
  const path = emptyPath(count, relief.shelf);
  roll(relief, first, last, fromXM, stationM, radiusM, path);
  paths.set(key, path);
  return path;
}

/** Kept from call to call: rolling a few stations takes less time than making these anew would. */
let under = new Float64Array(0);
let levelTo = new Uint32Array(0);
let rise = new Float64Array(0);
let touches = new Int32Array(0);

/**
 * A wheel further on never touches further back, as a disc is convex. So every fourth station is looked at from where the
 * one before touches, and those between only between their neighbours (one sample more to each side, for rounding).
 */
const PASSES = [
  { first: 0, every: 4, apart: 4, closed: false },
  { first: 2, every: 4, apart: 2, closed: true },
  { first: 1, every: 2, apart: 1, closed: true },
] as const;

function roll(
  relief: Relief,
  first: number,
  last: number,
  fromXM: number,
  stationM: number,
  R: number,
  { bottomM, climbTan, bearingLines }: WheelPath,
): void {
  const count = bottomM.length;
  const step = relief.stepM;
  const reach = Math.ceil(R / step) + 1;
  const startM = fromXM - relief.fromM;
  const low = Math.max(0, Math.floor(startM / step) - reach);
  const high = Math.min(relief.count, Math.ceil((startM + (count - 1) * stationM) / step) + reach + 1);
  const length = Math.max(0, high - low);
  const { top, base } = highest(relief, first, last, low, length);
  const allBears = top !== under;
  markLevel(top, base, length);

  // Stations a whole number of samples apart stand alike between them, so that the disc is the same under all.
  const perStation = stationM / step;
  const even = Number.isInteger(perStation);
  const start = startM / step - low;
  const start0 = Math.floor(start);
  const back = Math.floor(R / step) + 2;
  if (rise.length < 2 * back + 2) rise = new Float64Array(2 * back + 2);
  if (touches.length < count) touches = new Int32Array(2 * count);
  let discAt = NaN;
  for (const { first: begin, every, apart, closed } of PASSES)
    for (let n = begin; n < count; n += every) {
      const whole = even ? start0 + n * perStation : Math.floor(start + n * perStation);
      const between = even ? start - start0 : start + n * perStation - whole;
      const from = Math.max(0, whole + Math.ceil(between - R / step));
      const to = Math.min(length - 1, whole + Math.floor(between + R / step));
      if (levelTo[from] >= to) {
        touches[n] = whole;
        bottomM[n] = top[base + from];
        climbTan[n] = 0;
        bearingLines[n] = allBears ? 0 : bearing(relief, first, last, low + from, bottomM[n]);
        continue;
      }
      if (between !== discAt) {
        discAt = between;
        for (let k = -back; k <= back; k++) {
          const u = (k - between) * step;
          rise[k + back] = Math.sqrt(Math.max(0, R * R - u * u));
        }
      }
      const shift = back - whole;
      const nearest = n < apart ? from : Math.max(from, touches[n - apart] - 1);
      const furthest = closed && n + apart < count ? Math.min(to, touches[n + apart] + 1) : to;
      let bottom = -Infinity;
      let best = nearest;
      for (let i = nearest; i <= furthest; i++) {
        const z = top[base + i] + rise[i + shift];
        if (z > bottom) {
          bottom = z;
          best = i;
        }
      }
      touches[n] = best;
      const u0 = (best - whole - between) * step;
      let u = u0;
      for (let side = -1; side <= 1; side += 2) {
        const next = best + side;
        if (next < 0 || next >= length) continue;
        const m = ((top[base + next] - top[base + best]) * side) / step;
        const touch = (R * m) / Math.sqrt(1 + m * m);
        if ((touch - u0) * side <= 0 || (touch - u0) * side >= step) continue;
        const z = top[base + best] + m * (touch - u0) + Math.sqrt(R * R - touch * touch);
        if (z > bottom) {
          bottom = z;
          u = touch;
        }
      }
      bottomM[n] = bottom - R;
      const drop = Math.sqrt(Math.max(0, R * R - u * u));
      climbTan[n] = Math.abs(u) >= drop * STEEPEST_CONTACT ? Math.sign(u) * STEEPEST_CONTACT : u / drop;
      bearingLines[n] = allBears ? 0 : bearing(relief, first, last, low + best, top[base + best]);
    }
}

/** The highest of some lines, sample by sample, from sample `low` on: the line itself where all are alike. */
function highest(relief: Relief, first: number, last: number, low: number, length: number) {
  const one = relief.line(first);
  let other = first + 1;
  while (other <= last && relief.line(other).id === one.id) other++;
  if (other > last) return { top: one.heightsM, base: low };
  if (under.length < length) under = new Float64Array(2 * length);
  for (let i = 0; i < length; i++) under[i] = one.heightsM[low + i];
  let before = one.id;
  for (let j = other; j <= last; j++) {
    const { id, heightsM } = relief.line(j);
    if (id === before) continue;
    before = id;
    raise(under, heightsM, low, length);
  }
  return { top: under, base: 0 };
}

/** On its own, so that it is made fast once and not each time anew amid its callers. */
function raise(top: Float64Array, heightsM: Float64Array, low: number, length: number): void {
  for (let i = 0; i < length; i++) if (heightsM[low + i] > top[i]) top[i] = heightsM[low + i];
}

/** For each sample, the last one of those after it that are as high. */
function markLevel(top: Float64Array, base: number, length: number): void {
  if (levelTo.length < length) levelTo = new Uint32Array(2 * length);
  for (let i = length - 1; i >= 0; i--)
    levelTo[i] = i + 1 < length && top[base + i + 1] === top[base + i] ? levelTo[i + 1] : i;
}

/** Middle of the lines that bear at a sample, left of the middle of all; 0 where all do. */
function bearing(relief: Relief, first: number, last: number, sample: number, topM: number): number {
  let sum = 0;
  let bears = 0;
  for (let j = first; j <= last; j++) {
    if (relief.line(j).heightsM[sample] < topM - BEARS_M) continue;
    sum += j;
    bears++;
  }
  return bears === 0 ? 0 : sum / bears - (first + last) / 2;
}
