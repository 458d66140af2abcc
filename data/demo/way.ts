import type { Place } from './place.ts';

/** The way of the track over the ground: points `STEP_M` apart, metres in the place. */
export interface Way {
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** Height of the formed track. */
  readonly z: Float64Array;
}

export const STEP_M = 4;
const CELL_M = 20;

/** Moves from cell to cell in sixteen directions. */
const MOVES: readonly (readonly [number, number])[] = [-2, -1, 0, 1, 2].flatMap((dx) =>
  [-2, -1, 0, 1, 2]
    .filter((dy) => Math.max(Math.abs(dx), Math.abs(dy)) === 1 || Math.abs(dx) + Math.abs(dy) === 3)
    .map((dy) => [dx, dy] as const),
);

/** The way a track would be made through the given places: least effort between them, then eased. */
export function wayThrough(place: Place, via: readonly (readonly [number, number])[]): Way {
  const columns = Math.floor(place.widthM / CELL_M) + 1;
  const rows = Math.floor(place.heightM / CELL_M) + 1;
  const ground = new Float64Array(columns * rows);
  for (let i = 0; i < ground.length; i++)
    ground[i] = place.groundM((i % columns) * CELL_M, Math.floor(i / columns) * CELL_M);
  const cell = ([x, y]: readonly [number, number]) =>
    Math.round(y / CELL_M) * columns + Math.round(x / CELL_M);

  const cells: number[] = [cell(via[0])];
  for (let leg = 1; leg < via.length; leg++)
    cells.push(...cheapest(ground, columns, rows, cell(via[leg - 1]), cell(via[leg])).slice(1));
  const rough = evenly(
    cells.map((i) => (i % columns) * CELL_M),
    cells.map((i) => Math.floor(i / columns) * CELL_M),
  );
  const eased = evenly(eased1(rough.x, 5), eased1(rough.y, 5));
  const z = eased1(
    Array.from(eased.x, (x, i) => place.groundM(x, eased.y[i])),
    2,
  );
  return { x: Float64Array.from(eased.x), y: Float64Array.from(eased.y), z: Float64Array.from(z) };
}

/** E. W. Dijkstra's least path, the effort growing with slope and with the hillside that must be cut. */
function cheapest(ground: Float64Array, columns: number, rows: number, from: number, to: number): number[] {
  const cost = new Float64Array(ground.length).fill(Infinity);
  const before = new Int32Array(ground.length).fill(-1);
  const buckets: number[][] = [[from]];
  cost[from] = 0;
  for (let b = 0; b < buckets.length && before[to] === -1; b++) {
    for (const i of buckets[b] ?? []) {
      if (Math.floor(cost[i]) !== b) continue;
      const x = i % columns;
      const y = (i - x) / columns;
      for (const [dx, dy] of MOVES) {
        if (x + dx < 0 || y + dy < 0 || x + dx >= columns || y + dy >= rows) continue;
        const j = i + dy * columns + dx;
        const d = CELL_M * Math.hypot(dx, dy);
        const next = cost[i] + d * effort(ground, columns, i, j, dx, dy, d);
        if (next >= cost[j]) continue;
        cost[j] = next;
        before[j] = i;
        (buckets[Math.floor(next)] ??= []).push(j);
      }
    }
  }
  const path = [to];
  while (path[0] !== from) path.unshift(before[path[0]]);
  return path;
}

/** Effort per metre: one on the level, two at 9 degrees, steeply more beyond 15. */
function effort(
  ground: Float64Array,
  columns: number,
  i: number,
  j: number,
  dx: number,
  dy: number,
  d: number,
): number {
  const slope = Math.abs(ground[j] - ground[i]) / d;
  const across =
    Math.abs((ground[j - dx * columns + dy] ?? 0) - (ground[j + dx * columns - dy] ?? 0)) / (2 * d);
  return 1 + (slope / 0.16) ** 2 + (slope / 0.28) ** 6 + (across / 0.45) ** 2;
}

function evenly(xs: ArrayLike<number>, ys: ArrayLike<number>): { x: number[]; y: number[] } {
  const x = [xs[0]];
  const y = [ys[0]];
  let left = STEP_M;
  for (let i = 1; i < xs.length; i++) {
    const d = Math.hypot(xs[i] - xs[i - 1], ys[i] - ys[i - 1]);
    let at = left;
    for (; at <= d; at += STEP_M) {
      x.push(xs[i - 1] + ((xs[i] - xs[i - 1]) * at) / d);
      y.push(ys[i - 1] + ((ys[i] - ys[i - 1]) * at) / d);
    }
    left = at - d;
  }
  return { x, y };
}

/** Weighted means over neighbours; `sigma` in steps; the ends stay where they are. */
function eased1(values: ArrayLike<number>, sigma: number): number[] {
  const reach = 3 * sigma;
  return Array.from(values, (_, i) => {
    const r = Math.min(reach, i, values.length - 1 - i);
    let sum = 0;
    let weights = 0;
    for (let k = -r; k <= r; k++) {
      const w = Math.exp(-0.5 * (k / sigma) ** 2);
      sum += w * values[i + k];
      weights += w;
    }
    return sum / weights;
  });
}
