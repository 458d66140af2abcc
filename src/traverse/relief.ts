import { heightsAlong } from '../terrain/feature.ts';
import type { Feature } from '../terrain/feature.ts';
import type { Ground } from '../terrain/ground.ts';
import { ACROSS_M, BEYOND_M, SAMPLE_M } from './limits.ts';

/** Ground heights on a grid, sampled along one line of travel at a time, when it is first asked for. */
export class Relief {
  /** Where the samples of every line begin, metres from the pin. */
  readonly fromM: number;
  readonly count: number;
  /** By index: 0, 1, −1, 2, −2 … */
  readonly #lines: Float64Array[] = [];

  constructor(
    readonly features: readonly Feature[],
    lengthM: number,
    readonly stepM = SAMPLE_M,
    readonly acrossM = ACROSS_M,
    beyondM = BEYOND_M,
  ) {
    const half = Math.ceil((lengthM / 2 + beyondM) / stepM);
    this.fromM = -half * stepM;
    this.count = 2 * half + 1;
  }

  /** Heights along y = `index` × `acrossM`, metres. */
  line(index: number): Float64Array {
    const place = index > 0 ? 2 * index - 1 : -2 * index;
    const known = this.#lines[place];
    if (known) return known;
    const heights = heightsAlong(this.features, index * this.acrossM, this.fromM, this.stepM, this.count);
    this.#lines[place] = heights;
    return heights;
  }

  /** The higher of the two samples about x on the line nearest to y, metres. */
  highestNear(x: number, y: number): number {
    const line = this.line(y < 0 ? -Math.round(-y / this.acrossM) : Math.round(y / this.acrossM));
    const i = Math.max(0, Math.min(this.count - 2, Math.floor((x - this.fromM) / this.stepM)));
    return Math.max(line[i], line[i + 1]);
  }

  /** First and last line under a strip, rounded alike on both sides so that mirrored ground gives mirrored heights. */
  linesUnder(fromYM: number, toYM: number): { readonly first: number; readonly last: number } {
    const first = Math.ceil(fromYM / this.acrossM - 0.5);
    return { first, last: Math.max(first, Math.floor(toYM / this.acrossM + 0.5)) };
  }
}

const known = new WeakMap<Ground, Relief>();

/** The relief of a ground; the same ground, asked again for another vehicle or offset, is not sampled again. */
export function reliefOf(ground: Ground): Relief {
  const found = known.get(ground);
  if (found) return found;
  const relief = new Relief(ground.features, ground.lengthM);
  known.set(ground, relief);
  return relief;
}
