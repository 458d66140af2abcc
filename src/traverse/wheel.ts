import { SLIDE_M, STEEPEST_CONTACT } from './limits.ts';
import type { Relief } from './relief.ts';

/** A rigid wheel rolled along one wheel path, station by station. */
export interface WheelPath {
  /** Height of the wheel's lowest point, so that flat ground gives the ground's height. */
  readonly bottomM: Float64Array;
  /** Tangent of the ground's climb at the contact, α; positive where the wheel climbs. */
  readonly climbTan: Float64Array;
  /** How the wheel would sink if it slid `SLIDE_M` to the left: drop over way, tan β; negative where it would rise. */
  readonly fallLeftTan: Float64Array;
  /** The same to the right. */
  readonly fallRightTan: Float64Array;
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
  const rolled = (y: number) => roll(relief, fromXM, stationM, count, y, radiusM, sectionM);
  const { bottomM, climbTan } = rolled(yM);
  const fall = (asideM: number) =>
    rolled(yM + asideM).bottomM.map((aside, n) => (bottomM[n] - aside) / SLIDE_M);
  return { bottomM, climbTan, fallLeftTan: fall(SLIDE_M), fallRightTan: fall(-SLIDE_M) };
}

function roll(
  relief: Relief,
  fromXM: number,
  stationM: number,
  count: number,
  yM: number,
  radiusM: number,
  sectionM: number,
): Pick<WheelPath, 'bottomM' | 'climbTan'> {
  const R = radiusM;
  const step = relief.stepM;
  const { first, last } = relief.linesUnder(yM - sectionM / 2, yM + sectionM / 2);
  const top = Float64Array.from(relief.line(first));
  for (let j = first + 1; j <= last; j++) {
    const line = relief.line(j);
    for (let i = 0; i < top.length; i++) if (line[i] > top[i]) top[i] = line[i];
  }
  const path = { bottomM: new Float64Array(count), climbTan: new Float64Array(count) };
  for (let n = 0; n < count; n++) {
    const at = (fromXM + n * stationM - relief.fromM) / step;
    const from = Math.max(0, Math.ceil(at - R / step));
    const to = Math.min(top.length - 1, Math.floor(at + R / step));
    let bottom = -Infinity;
    let best = from;
    for (let i = from; i <= to; i++) {
      const u = (i - at) * step;
      const z = top[i] + Math.sqrt(R * R - u * u);
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
    const rise = Math.sqrt(Math.max(0, R * R - u * u));
    path.climbTan[n] = Math.abs(u) >= rise * STEEPEST_CONTACT ? Math.sign(u) * STEEPEST_CONTACT : u / rise;
  }
  return path;
}
