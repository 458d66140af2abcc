/** Repeatable chance: the same seed gives the same numbers on every machine (only 32-bit integers inside). */
export class Chance {
  #state: number;

  constructor(seed: number) {
    this.#state = seed >>> 0;
  }

  /** Uniform in [0, 1). T. Ettinger, mulberry32 (public domain, 2017). */
  uniform(): number {
    this.#state = (this.#state + 0x6d2b79f5) >>> 0;
    let t = this.#state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  }

  /** About normal, mean 0, standard deviation 1: twelve uniforms less six. */
  normal(): number {
    let sum = -6;
    for (let i = 0; i < 12; i++) sum += this.uniform();
    return sum;
  }
}
