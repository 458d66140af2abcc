import { Chance } from './chance.ts';

/** A raster of heights in metres on square cells, row 0 the northernmost. */
export interface Raster {
  readonly columns: number;
  readonly rows: number;
  readonly cellM: number;
  readonly heightM: Float64Array;
  /** Area that drains through each cell, in square metres. */
  readonly drainageM2: Float64Array;
}

const SQRT_HALF = Math.SQRT1_2;
const NEIGHBOURS = [
  [-1, -1, SQRT_HALF],
  [0, -1, 1],
  [1, -1, SQRT_HALF],
  [-1, 0, 1],
  [1, 0, 1],
  [-1, 1, SQRT_HALF],
  [0, 1, 1],
  [1, 1, SQRT_HALF],
] as const;

/** What makes the land: rates in metres and years, lengths in metres. */
export interface Making {
  readonly seed: number;
  readonly steps: number;
  readonly stepYears: number;
  /** Uplift in the middle of the range; falls off toward the edges. */
  readonly upliftMPerYear: number;
  /** Stream power coefficient for drainage in square metres to the power 0.45. */
  readonly erodibility: number;
  /** Soil creep. */
  readonly creepM2PerYear: number;
}

/**
 * Mountain land by uplift, rivers and soil creep, worn until its valleys have found each other: stream power
 * erosion solved implicitly from the outlets upstream (J. Braun and S. D. Willett, A very efficient O(n), implicit
 * and parallel method to solve the stream power equation, Geomorphology 180–181, 2013), flow to the steepest
 * neighbour after filling hollows.
 */
export function worn(columns: number, rows: number, cellM: number, making: Making): Raster {
  const chance = new Chance(making.seed);
  const n = columns * rows;
  const z = new Float64Array(n);
  const uplift = new Float64Array(n);
  const waves = Array.from({ length: 24 }, (_, k) => ({
    kx: (chance.uniform() - 0.5) * 0.04 * (1 + k / 4),
    ky: (chance.uniform() - 0.5) * 0.04 * (1 + k / 4),
    phase: chance.uniform() * 2 * Math.PI,
    size: 1 / (1 + k / 3),
  }));
  for (let i = 0; i < n; i++) {
    const x = i % columns;
    const y = Math.floor(i / columns);
    const wave = waves.reduce((sum, w) => sum + w.size * Math.sin(w.kx * x + w.ky * y + w.phase), 0);
    uplift[i] = making.upliftMPerYear * Math.max(0.15, rangeShape(x / columns, y / rows) + 0.06 * wave);
    z[i] = (60 * uplift[i]) / making.upliftMPerYear + 12 * wave + 6 * chance.uniform();
  }

  const receiver = new Int32Array(n);
  const distanceM = new Float64Array(n);
  const drainageM2 = new Float64Array(n);
  const order = new Int32Array(n);
  for (let step = 0; step < making.steps; step++) {
    fillAndRoute(z, columns, rows, cellM, receiver, distanceM, order);
    drainageM2.fill(cellM * cellM);
    for (let k = n - 1; k >= 0; k--) {
      const i = order[k];
      if (receiver[i] !== i) drainageM2[receiver[i]] += drainageM2[i];
    }
    for (let k = 0; k < n; k++) {
      const i = order[k];
      const r = receiver[i];
      if (r === i) continue;
      const f = (making.erodibility * making.stepYears * drainageM2[i] ** 0.45) / distanceM[i];
      z[i] = (z[i] + uplift[i] * making.stepYears + f * z[r]) / (1 + f);
    }
    creep(z, columns, rows, (making.creepM2PerYear * making.stepYears) / (cellM * cellM));
  }
  return { columns, rows, cellM, heightM: z, drainageM2 };
}

/** A range that runs from the south-west to the north-east, with a lower shoulder to the south; 0 to 1. */
function rangeShape(u: number, v: number): number {
  const across = (u - 0.5) * 0.35 + (v - 0.42);
  const crest = Math.exp(-((across / 0.3) ** 2));
  const ends = Math.min(1, 5 * Math.min(u, 1 - u)) * Math.min(1, 5 * Math.min(v, 1 - v));
  return (0.3 + 0.7 * crest) * ends;
}

/** Outlets are the cells of the southern edge. Priority flood with a tiny fall toward the outlet, giving receivers and an order from the outlets upstream. */
function fillAndRoute(
  z: Float64Array,
  columns: number,
  rows: number,
  cellM: number,
  receiver: Int32Array,
  distanceM: Float64Array,
  order: Int32Array,
): void {
  const n = columns * rows;
  const state = new Uint8Array(n);
  const heap = new Heap(n, z);
  for (let i = 0; i < n; i++) {
    if (i < n - columns) continue;
    state[i] = 1;
    receiver[i] = i;
    heap.push(i);
  }
  for (let count = 0; count < n; count++) {
    const i = heap.pop();
    order[count] = i;
    state[i] = 2;
    const x = i % columns;
    const y = (i - x) / columns;
    for (const [dx, dy] of NEIGHBOURS) {
      const nx = x + dx;
      const ny = y + dy;
      if (nx < 0 || ny < 0 || nx >= columns || ny >= rows) continue;
      const j = ny * columns + nx;
      if (state[j] !== 0) continue;
      state[j] = 1;
      if (z[j] <= z[i]) z[j] = z[i] + 1e-4;
      receiver[j] = i;
      heap.push(j);
    }
  }
  for (let i = 0; i < n; i++) {
    if (receiver[i] === i) continue;
    const x = i % columns;
    const y = (i - x) / columns;
    let steepest = 0;
    for (const [dx, dy, inverse] of NEIGHBOURS) {
      if (x + dx < 0 || x + dx >= columns || y + dy < 0) continue;
      const j = (y + dy) * columns + x + dx;
      const fall = (z[i] - z[j]) * inverse;
      if (fall <= steepest) continue;
      steepest = fall;
      receiver[i] = j;
      distanceM[i] = cellM / inverse;
    }
  }
  sortUpstream(receiver, order);
}

/** Rewrites the order so that every cell comes after the one it drains to. */
function sortUpstream(receiver: Int32Array, order: Int32Array): void {
  const n = receiver.length;
  const givers = new Int32Array(n + 1);
  for (let i = 0; i < n; i++) if (receiver[i] !== i) givers[receiver[i] + 1]++;
  for (let i = 0; i < n; i++) givers[i + 1] += givers[i];
  const from = givers.slice();
  const list = new Int32Array(n);
  for (let i = 0; i < n; i++) if (receiver[i] !== i) list[from[receiver[i]]++] = i;
  let end = 0;
  for (let i = 0; i < n; i++) if (receiver[i] === i) order[end++] = i;
  for (let k = 0; k < end; k++) {
    const i = order[k];
    for (let g = givers[i]; g < givers[i + 1]; g++) order[end++] = list[g]!;
  }
}

function creep(z: Float64Array, columns: number, rows: number, rate: number): void {
  const passes = Math.max(1, Math.ceil(rate / 0.2));
  const part = rate / passes;
  for (let pass = 0; pass < passes; pass++) {
    const before = z.slice();
    for (let y = 1; y < rows - 1; y++) {
      for (let x = 1; x < columns - 1; x++) {
        const i = y * columns + x;
        const around = before[i - 1] + before[i + 1] + before[i - columns] + before[i + columns];
        z[i] = before[i] + part * (around - 4 * before[i]);
      }
    }
  }
}

/** Cells, lowest first. */
class Heap {
  readonly #cells: Int32Array;
  readonly #key: Float64Array;
  #size = 0;

  constructor(capacity: number, key: Float64Array) {
    this.#cells = new Int32Array(capacity + 1);
    this.#key = key;
  }

  push(cell: number): void {
    let at = ++this.#size;
    while (at > 1) {
      const parent = at >> 1;
      if (this.#key[this.#cells[parent]] <= this.#key[cell]) break;
      this.#cells[at] = this.#cells[parent]!;
      at = parent;
    }
    this.#cells[at] = cell;
  }

  pop(): number {
    const top = this.#cells[1];
    const last = this.#cells[this.#size--];
    let at = 1;
    for (;;) {
      let child = 2 * at;
      if (child > this.#size) break;
      if (child < this.#size && this.#key[this.#cells[child + 1]] < this.#key[this.#cells[child]]) child++;
      if (this.#key[this.#cells[child]] >= this.#key[last]) break;
      this.#cells[at] = this.#cells[child]!;
      at = child;
    }
    this.#cells[at] = last;
    return top;
  }
}
