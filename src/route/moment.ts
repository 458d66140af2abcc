import { spansOf } from './station.ts';
import type { Track } from './track.ts';

/** Where a recording was at a time. */
export interface Moment {
  readonly stationM: number;
  /** Length between the recorded points before and after: the place is known no better. */
  readonly withinM: number;
}

/**
 * The place of a track at a time (seconds since 1970-01-01T00:00:00Z), straight between the recorded points before and
 * after it; the first where a recording passes the time twice. Null outside the recording and in its gaps.
 */
export function momentAt(track: Track, timeS: number): Moment | null {
  const { timeS: times, distanceM } = track;
  for (const { from, to } of spansOf(track)) {
    let before = -1;
    for (let i = from; i < to; i++) {
      if (Number.isNaN(times[i])) continue;
      if (times[i] === timeS) return { stationM: distanceM[i], withinM: 0 };
      if (before >= 0 && times[before] < timeS && timeS < times[i]) {
        const withinM = distanceM[i] - distanceM[before];
        const share = (timeS - times[before]) / (times[i] - times[before]);
        return { stationM: distanceM[before] + share * withinM, withinM };
      }
      before = i;
    }
  }
  return null;
}
