import type { Take } from './take.ts';

/** How many times the ranges are drawn from; shares are told out of it. */
export const DRAWS = 128;

/**
 * Latin hypercube: each value's range is cut into `DRAWS` equal parts, every draw takes another part of it, and the
 * parts are dealt anew for each value (McKay, Beckman & Conover, Technometrics 21, 1979). The deal depends on the
 * value's path alone, so it is the same on every machine and in every worker. Within its range every value is taken to
 * be as likely as any other.
 */
export function drawn(draw: number): Take {
  return {
    measured: (path, value, plusMinus) => value + plusMinus * (2 * portion(path, draw) - 1),
    printed: (path, range) => range.low + (range.high - range.low) * portion(path, draw),
  };
}

const deals = new Map<string, Float64Array>();

/** Where in its range, 0 to 1, a value lies in a draw. */
function portion(path: string, draw: number): number {
  let deal = deals.get(path);
  if (deal === undefined) {
    deal = dealt(seedOf(path));
    deals.set(path, deal);
  }
  return deal[draw];
}

function dealt(seed: number): Float64Array {
  const next = mulberry32(seed);
  const parts = Float64Array.from({ length: DRAWS }, (_, part) => part);
  for (let i = DRAWS - 1; i > 0; i--) {
    const j = Math.floor(next() * (i + 1));
    [parts[i], parts[j]] = [parts[j], parts[i]];
  }
  return parts.map((part) => (part + next()) / DRAWS);
}

/** FNV-1a, 32 bits (Fowler, Noll & Vo). */
function seedOf(path: string): number {
  let hash = 0x811c9dc5;
  for (let i = 0; i < path.length; i++) hash = Math.imul(hash ^ path.charCodeAt(i), 0x01000193);
  return hash >>> 0;
}

/** Uniform in [0, 1); mulberry32, a public-domain generator of 32 bits of state. */
function mulberry32(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
  };
}
