import { heightsAlong, topM } from '../terrain/feature.ts';
import type { Feature } from '../terrain/feature.ts';
import type { Ground } from '../terrain/ground.ts';
import { ACROSS_M, BEYOND_M, SAMPLE_M } from './limits.ts';
import { Crest } from './crest.ts';
import { Shelf } from './shelf.ts';
import type { WheelPath } from './wheel.ts';

/** Heights along one line of travel. Lines that are alike, as on level ground beside a rut, share one. */
export interface Row {
  readonly id: number;
  readonly heightsM: Float64Array;
  /** Lines that are alike have the same sum. */
  readonly sumM: number;
}

/** The line that is being sampled; kept only where it is unlike the others. */
let sampled = new Float64Array(0);

/** Ground heights on a grid, sampled along one line of travel at a time, when it is first asked for. */
export class Relief {
  /** Where the samples of every line begin, metres from the pin. */
  readonly fromM: number;
  readonly count: number;
  /** No height is above it, metres. */
  readonly topM: number;
  /** What was rolled over it already, by how; null where nothing would be asked twice. */
  readonly paths: Map<string, WheelPath> | null;
  /** What is kept of it and of what rolls over it lies here. */
  readonly shelf = new Shelf();
  /** By index: 0, 1, −1, 2, −2 … */
  readonly #lines: Row[] = [];
  readonly #distinct: Row[] = [];
  readonly #crests = new Map<string, Crest>();

  /** Sampled from the whole step before `fromM` to the one after `toM`, metres from the pin. */
  constructor(
    readonly features: readonly Feature[],
    fromM: number,
    toM: number,
    readonly stepM = SAMPLE_M,
    readonly acrossM = ACROSS_M,
    keepsPaths = false,
  ) {
    const first = Math.floor(fromM / stepM);
    this.fromM = first * stepM;
    this.count = Math.ceil(toM / stepM) - first + 1;
    this.topM = topM(features);
    this.paths = keepsPaths ? new Map<string, WheelPath>() : null;
  }

  /** Heights along y = `index` × `acrossM`, metres. */
  line(index: number): Row {
    const place = index > 0 ? 2 * index - 1 : -2 * index;
    const known = this.#lines[place];
    if (known) return known;
    if (sampled.length !== this.count) sampled = new Float64Array(this.count);
    heightsAlong(this.features, index * this.acrossM, this.fromM, this.stepM, sampled);
    const row = this.#rowOf(sampled);
    this.#lines[place] = row;
    return row;
  }

  /** Lets go of all heights and paths, which nobody may look into any more; what is asked after that is made anew. */
  clear(): void {
    this.paths?.clear();
    this.#lines.length = 0;
    this.#distinct.length = 0;
    this.#crests.clear();
    this.shelf.clear();
  }

  #rowOf(heightsM: Float64Array): Row {
    let sumM = 0;
    for (let i = 0; i < heightsM.length; i++) sumM += heightsM[i];
    for (let k = this.#distinct.length - 1; k >= 0; k--) {
      const row = this.#distinct[k];
      if (row.sumM === sumM && alike(row.heightsM, heightsM)) return row;
    }
    const kept = this.shelf.numbers(heightsM.length);
    kept.set(heightsM);
    const row = { id: this.#distinct.length, heightsM: kept, sumM };
    this.#distinct.push(row);
    return row;
  }

  /** Whether all lines from `first` to `last` are alike. */
  isAlike(first: number, last: number): boolean {
    const { id } = this.line(first);
    for (let j = first + 1; j <= last; j++) if (this.line(j).id !== id) return false;
    return true;
  }

  /** The lines from `first` to `last`, to be asked for any stretch of them. */
  crest(first: number, last: number): Crest {
    const key = `${first} ${last}`;
    const known = this.#crests.get(key);
    if (known) return known;
    const lines = new Set<Float64Array>();
    for (let j = first; j <= last; j++) lines.add(this.line(j).heightsM);
    const crest = new Crest([...lines], this.shelf);
    this.#crests.set(key, crest);
    return crest;
  }

  /** Index of the sample at x or next before it; it may lie beyond the ends. */
  sampleBefore(x: number): number {
    return Math.floor((x - this.fromM) / this.stepM);
  }

  /** The higher of the two samples about x on the line nearest to y, metres. */
  highestNear(x: number, y: number): number {
    const { heightsM } = this.line(this.lineNear(y));
    const i = Math.max(0, Math.min(this.count - 2, this.sampleBefore(x)));
    return Math.max(heightsM[i], heightsM[i + 1]);
  }

  /** Index of the line nearest to y, rounded alike on both sides. */
  lineNear(y: number): number {
    return y < 0 ? -Math.round(-y / this.acrossM) : Math.round(y / this.acrossM);
  }

  /** First and last line under a strip, rounded alike on both sides so that mirrored ground gives mirrored heights. */
  linesUnder(fromYM: number, toYM: number): { readonly first: number; readonly last: number } {
    const first = Math.ceil(fromYM / this.acrossM - 0.5);
    return { first, last: Math.max(first, Math.floor(toYM / this.acrossM + 0.5)) };
  }
}

function alike(a: Float64Array, b: Float64Array): boolean {
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return false;
  return true;
}

const known = new WeakMap<readonly Feature[], Map<number, Relief>>();

/**
 * The relief of a ground; the same features, asked again for another vehicle or offset, or in another plane, are not
 * sampled again.
 */
export function reliefOf({ features, lengthM }: Ground): Relief {
  const byLength = known.get(features) ?? new Map<number, Relief>();
  known.set(features, byLength);
  const reachM = lengthM / 2 + BEYOND_M;
  const relief = byLength.get(lengthM) ?? new Relief(features, -reachM, reachM, SAMPLE_M, ACROSS_M, true);
  byLength.set(lengthM, relief);
  asked?.add(relief);
  return relief;
}

/** Reliefs that were asked for in what is being done; null where nothing lets go of them. */
let asked: Set<Relief> | null = null;

/** Does what asks for reliefs, and lets go of them. Nothing that it answers, or keeps, may hold arrays of one. */
export function lettingGo<Answer>(work: () => Answer): Answer {
  const before = asked;
  const own = new Set<Relief>();
  asked = own;
  try {
    return work();
  } finally {
    for (const relief of own) relief.clear();
    asked = before;
  }
}
