import { lineString, simplify } from '@turf/turf';
import { bearingRad, metresPerDegree, stepM, wrapLng } from './ellipsoid.ts';

/** A line over the ground without a gap: parallel arrays of degrees. */
export interface Path {
  readonly lng: Float64Array;
  readonly lat: Float64Array;
}

/** How far to look back and ahead along a path for its direction: recorded points jitter sideways. */
const DIRECTION_M = 3;

/** At a bend, an offset line goes out to this many times its offset at most. */
const MITRE_LIMIT = 2;

/** Points that Turf thins at a time: it calls itself once a point at worst, and its time grows with the square. */
const BLOCK = 4_096;

/**
 * A path with fewer points that stays within `toleranceM` of the given one, by `turf.simplify` in a plane at its mid
 * latitude. For overviews; the longitudes run on past 180 where the path crosses that meridian, as maps want it.
 */
export function simplified({ lng, lat }: Path, toleranceM: number): Path {
  const { east, north } = metresPerDegree((lat[0] + lat[lat.length - 1]) / 2);
  const squeeze = east / north;
  let eastward = lng[0];
  const plane = Array.from(lat, (y, i) => {
    eastward += i > 0 ? wrapLng(lng[i] - lng[i - 1]) : 0;
    return [eastward * squeeze, y];
  });
  const kept = plane.slice(0, 1);
  for (let from = 0; from < plane.length - 1; from += BLOCK) {
    const block = lineString(plane.slice(from, from + BLOCK + 1));
    const thinned = simplify(block, { tolerance: toleranceM / north, highQuality: true, mutate: true });
    kept.push(...thinned.geometry.coordinates.slice(1));
  }
  return {
    lng: Float64Array.from(kept, ([x]) => x / squeeze),
    lat: Float64Array.from(kept, ([, y]) => y),
  };
}

/**
 * A path moved sideways, positive to the left of the direction of travel, point by point. Where it bends tighter than
 * the offset, the inner side folds back on itself.
 *
 * `turf.lineOffset` is no use here: it counts in degrees (at latitude 60 an offset of 3 m to the east is 1.5 m), a
 * hairpin throws its point 90 m out for an offset of 2 m, and two equal points give NaN.
 */
export function offsetPath(path: Path, acrossM: number): Path {
  const { lng, lat } = path;
  const moved = { lng: new Float64Array(lng.length), lat: new Float64Array(lat.length) };
  for (let i = 0; i < lng.length; i++) {
    const behind = seek(path, i, -1);
    const ahead = seek(path, i, 1);
    const into = behind === i ? null : bearingRad(lng[behind], lat[behind], lng[i], lat[i]);
    const out = ahead === i ? null : bearingRad(lng[i], lat[i], lng[ahead], lat[ahead]);
    const from = into ?? out ?? 0;
    const half = (out === null ? 0 : turn(from, out)) / 2;
    const toLeft = from + half - Math.PI / 2;
    const reachM = acrossM * Math.min(MITRE_LIMIT, 1 / Math.cos(half));
    const { east, north } = metresPerDegree(lat[i]);
    moved.lng[i] = wrapLng(lng[i] + (reachM * Math.sin(toLeft)) / east);
    moved.lat[i] = lat[i] + (reachM * Math.cos(toLeft)) / north;
  }
  return moved;
}

/** The first point from `i` on, backward or forward, that is far enough away to give a direction; else the end. */
function seek({ lng, lat }: Path, i: number, by: -1 | 1): number {
  let j = i;
  while (j + by >= 0 && j + by < lng.length && stepM(lng[i], lat[i], lng[j], lat[j]) < DIRECTION_M) j += by;
  return lng[j] === lng[i] && lat[j] === lat[i] ? i : j;
}

/** From one bearing to another, clockwise, in [-pi, pi). */
function turn(from: number, to: number): number {
  return wrapLng(((to - from) * 180) / Math.PI) * (Math.PI / 180);
}
