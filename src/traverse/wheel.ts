import { STEEPEST_CONTACT } from './limits.ts';
import type { Relief } from './relief.ts';

/** A rigid wheel rolled along one wheel path, station by station. */
export interface WheelPath {
  /** Height of the wheel's lowest point, so that flat ground gives the ground's height. */
  readonly bottomM: Float64Array;
  /** Tangent of the ground's climb at the contact, α; positive where the wheel climbs. */
  readonly climbTan: Float64Array;
}

/**
 * A wheel of radius R and section width b rests where the highest ground under its section, z(u), touches the disc:
 *
 *     bottom = max over u in [−R, R] of  z(u) + √(R² − u²) − R,      tan α = u / √(R² − u²)
 *
 * Between samples the ground is straight, z = z₀ + m u, so beside the highest sample the maximum lies at
 * u = R m / √(1 + m²), kept to its piece. Neglected: the tyre's own give over small stones, which makes climbs milder
 * than reckoned.
 */
export function wheelPath(
  relief: Relief,
  fromXM: number,
  stationM: number,
  count: number,
  yM: number,
  radiusM: number,
  sectionM: number,
): WheelPath {
  const R = radiusM;
  const step = relief.stepM;
  const { first, last } = relief.linesUnder(yM - sectionM / 2, yM + sectionM / 2);
  const reach = Math.ceil(R / step) + 1;
  const startM = fromXM - relief.fromM;
  const low = Math.max(0, Math.floor(startM / step) - reach);
  const high = Math.min(relief.count, Math.ceil((startM + (count - 1) * stationM) / step) + reach + 1);
  const top = relief.line(first).slice(low, high);
  for (let j = first + 1; j <= last; j++) {
    const line = relief.line(j);
    for (let i = 0; i < top.length; i++) if (line[low + i] > top[i]) top[i] = line[low + i];
  }
  const path = { bottomM: new Float64Array(count), climbTan: new Float64Array(count) };
  const levelTo = levelRuns(top);
  const arc = new Arc(R, step);
  for (let n = 0; n < count; n++) {
    const at = (startM + n * stationM) / step - low;
    const from = Math.max(0, Math.ceil(at - R / step));
    const to = Math.min(top.length - 1, Math.floor(at + R / step));
    if (levelTo[from] >= to) {
      path.bottomM[n] = top[from];
      continue;
    }
    const rise = arc.about(at, from, to);
    let bottom = -Infinity;
    let best = from;
    for (let i = from; i <= to; i++) {
      const z = top[i] + rise[i - from];
      if (z > bottom) {
        bottom = z;
        best = i;
      }
    }
    const u0 = (best - at) * step;
    let u = u0;
    for (let side = -1; side <= 1; side += 2) {
      const next = best + side;
      if (next < 0 || next >= top.length) continue;
      const m = ((top[next] - top[best]) * side) / step;
      const touch = (R * m) / Math.sqrt(1 + m * m);
      if ((touch - u0) * side <= 0 || (touch - u0) * side >= step) continue;
      const z = top[best] + m * (touch - u0) + Math.sqrt(R * R - touch * touch);
      if (z > bottom) {
        bottom = z;
        u = touch;
      }
    }
    path.bottomM[n] = bottom - R;
    const drop = Math.sqrt(Math.max(0, R * R - u * u));
    path.climbTan[n] = Math.abs(u) >= drop * STEEPEST_CONTACT ? Math.sign(u) * STEEPEST_CONTACT : u / drop;
  }
  return path;
}

/** For each sample, the last one of those after it that are as high. */
function levelRuns(top: Float64Array): Uint32Array {
  const levelTo = new Uint32Array(top.length);
  for (let i = top.length - 1; i >= 0; i--)
    levelTo[i] = i + 1 < top.length && top[i + 1] === top[i] ? levelTo[i + 1] : i;
  return levelTo;
}

/** √(R² − u²) at the samples under a wheel; the same again where the next wheel stands alike between samples. */
class Arc {
  readonly #radiusM: number;
  readonly #stepM: number;
  readonly #rise: Float64Array;
  #from = NaN;
  #count = 0;

  constructor(radiusM: number, stepM: number) {
    this.#radiusM = radiusM;
    this.#stepM = stepM;
    this.#rise = new Float64Array(2 * Math.ceil(radiusM / stepM) + 2);
  }

  about(at: number, from: number, to: number): Float64Array {
    const count = to - from + 1;
    if (from - at === this.#from && count <= this.#count) return this.#rise;
    this.#from = from - at;
    this.#count = count;
    for (let i = 0; i < count; i++) {
      const u = (this.#from + i) * this.#stepM;
      this.#rise[i] = Math.sqrt(Math.max(0, this.#radiusM * this.#radiusM - u * u));
    }
    return this.#rise;
  }
}
