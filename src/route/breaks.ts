/**
 * Indices at which a curve may be broken into straight pieces that leave it by no more than `tolerance`, measured
 * along y; the first and the last index included. The pieces end on the curve, so their rises add up to its own.
 *
 * D. H. Douglas and T. K. Peucker, Algorithms for the reduction of the number of points required to represent a
 * digitized line or its caricature, Cartographica 10 (1973), with the vertical distance in place of the normal one.
 */
export function breaksOf(x: Float64Array, y: Float64Array, tolerance: number): number[] {
  const breaks = [0];
  const ends = [x.length - 1];
  while (ends.length > 0) {
    const from = breaks[breaks.length - 1];
    const to = ends[ends.length - 1];
    const worst = farthest(x, y, from, to, tolerance);
    if (worst > 0) ends.push(worst);
    else if (to > from) breaks.push(ends.pop()!);
    else ends.pop();
  }
  return breaks;
}

/** The index between two others that lies farthest from the straight line between them; 0 if all are within reach. */
function farthest(x: Float64Array, y: Float64Array, from: number, to: number, tolerance: number): number {
  const slope = (y[to] - y[from]) / (x[to] - x[from]);
  let worst = 0;
  let most = tolerance;
  for (let i = from + 1; i < to; i++) {
    const off = Math.abs(y[i] - y[from] - slope * (x[i] - x[from]));
    if (off > most) {
      most = off;
      worst = i;
    }
  }
  return worst;
}
