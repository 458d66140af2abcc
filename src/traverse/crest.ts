/**
 * The highest of some samples over any stretch of them, at once: the maxima over 1, 2, 4 … samples from each on, of which
 * two overlapping ones cover a stretch.
 */
export class Crest {
  readonly #levels: Float64Array[];

  constructor(heightsM: Float64Array) {
    this.#levels = [heightsM];
    for (let span = 1; 2 * span <= heightsM.length; span *= 2) {
      const below = this.#levels[this.#levels.length - 1];
      const level = new Float64Array(heightsM.length - 2 * span + 1);
      for (let i = 0; i < level.length; i++)
        level[i] = below[i] > below[i + span] ? below[i] : below[i + span];
      this.#levels.push(level);
    }
  }

  /** Of the samples from `from` to `to`, both included and both kept to those there are. */
  highest(from: number, to: number): number {
    const last = this.#levels[0].length - 1;
    const low = Math.max(0, Math.min(last, from));
    const high = Math.max(low, Math.min(last, to));
    const power = 31 - Math.clz32(high - low + 1);
    const level = this.#levels[power];
    return Math.max(level[low], level[high - (1 << power) + 1]);
  }
}
