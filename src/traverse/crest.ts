import type { Shelf } from './shelf.ts';

/**
 * Some lines of ground side by side. Their highest sample over any stretch, at once: the maxima over 1, 2, 4 … samples
 * from each on, of which two overlapping ones cover a stretch. And whether they go on level there.
 */
export class Crest {
  readonly #shelf: Shelf;
  readonly #levels: Float64Array[];
  /** For each sample, how many up to it are unlike the one before, on any line. */
  readonly #changes: Uint32Array;

  /** At least one line, all of one length. */
  constructor(lines: readonly Float64Array[], shelf: Shelf) {
    const top = shelf.numbers(lines[0].length);
    top.set(lines[0]);
    const changes = shelf.counts(top.length);
    for (const heightsM of lines)
      for (let i = 0; i < top.length; i++) {
        if (heightsM[i] > top[i]) top[i] = heightsM[i];
        if (i > 0 && heightsM[i] !== heightsM[i - 1]) changes[i] = 1;
      }
    for (let i = 1; i < changes.length; i++) changes[i] += changes[i - 1];
    this.#shelf = shelf;
    this.#levels = [top];
    this.#changes = changes;
  }

  /** Whether every line keeps its height over the samples from `from` to `to`; beyond its ends a line goes on as it ends. */
  isLevel(from: number, to: number): boolean {
    const last = this.#changes.length - 1;
    const low = Math.max(0, Math.min(last, from));
    return this.#changes[low] === this.#changes[Math.max(low, Math.min(last, to))];
  }

  /** Of the samples from `from` to `to`, both included and both kept to those there are. */
  highest(from: number, to: number): number {
    const last = this.#levels[0].length - 1;
    const low = Math.max(0, Math.min(last, from));
    const high = Math.max(low, Math.min(last, to));
    const power = 31 - Math.clz32(high - low + 1);
    while (this.#levels.length <= power) this.#add();
    const level = this.#levels[power];
    return Math.max(level[low], level[high - (1 << power) + 1]);
  }

  /** The maxima over twice as many samples as the last ones. */
  #add(): void {
    const span = 1 << (this.#levels.length - 1);
    const below = this.#levels[this.#levels.length - 1];
    const level = this.#shelf.numbers(below.length - span);
    for (let i = 0; i < level.length; i++) level[i] = below[i] > below[i + span] ? below[i] : below[i + span];
    this.#levels.push(level);
  }
}
