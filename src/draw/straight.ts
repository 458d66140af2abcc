import type { Point } from './ink.ts';

/** What nobody sees: half of the last digit that is written. */
const UNSEEN_PX = 0.05;

/**
 * A line that runs to the right without the points that make no difference to it: none of them lies further than
 * `UNSEEN_PX` above or below what is left. Where the line turns back, every point is kept.
 */
export function withoutStraight(points: readonly Point[]): Point[] {
  if (points.length < 3) return [...points];
  const kept = [points[0]];
  let [low, high] = [-Infinity, Infinity];
  for (let i = 1; i < points.length; i++) {
    const [x0, y0] = kept[kept.length - 1];
    const [x, y] = points[i];
    const slope = (y - y0) / (x - x0);
    if (i > 1 && !(x > x0 && slope >= low && slope <= high)) {
      kept.push(points[i - 1]);
      [low, high] = [-Infinity, Infinity];
    }
    const [ax, ay] = kept[kept.length - 1];
    const dx = x - ax;
    if (dx <= 0) {
      [low, high] = [Infinity, -Infinity];
      continue;
    }
    low = Math.max(low, (y - UNSEEN_PX - ay) / dx);
    high = Math.min(high, (y + UNSEEN_PX - ay) / dx);
  }
  kept.push(points[points.length - 1]);
  return kept;
}
