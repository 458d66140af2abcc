import { Chance } from './chance.ts';
import type { Place } from './place.ts';
import type { Way } from './way.ts';
import { STEP_M } from './way.ts';

/** One second of a recording. */
export interface Fix {
  readonly lng: number;
  readonly lat: number;
  readonly elevationM: number;
  readonly timeS: number;
  /** True position along the way. */
  readonly alongM: number;
}

/**
 * How a hand-held receiver errs: a drift that comes back to nothing within minutes, and a little jitter a second.
 * Common practice, no source.
 */
const DRIFT = { horizontalM: 1.8, horizontalS: 90, elevationM: 2, elevationS: 240 };
const JITTER = { horizontalM: 0.12, elevationM: 0.35 };

/** The way driven at the pace that its slope allows, halting at the given places (metres along) to look at them. */
export function driven(
  place: Place,
  way: Way,
  startS: number,
  halts: readonly number[],
  seed: number,
): Fix[] {
  const chance = new Chance(seed);
  const fixes: Fix[] = [];
  const drift = { x: 0, y: 0, z: 0 };
  const lengthM = (way.x.length - 1) * STEP_M;
  const ahead = [...halts].sort((a, b) => a - b);
  let alongM = 0;
  let haltS = 0;
  for (let t = 0; alongM < lengthM; t++) {
    drift.x = drifted(drift.x, DRIFT.horizontalM, DRIFT.horizontalS, chance);
    drift.y = drifted(drift.y, DRIFT.horizontalM, DRIFT.horizontalS, chance);
    drift.z = drifted(drift.z, DRIFT.elevationM, DRIFT.elevationS, chance);
    fixes.push({
      lng: place.lng(between(way.x, alongM) + drift.x + JITTER.horizontalM * chance.normal()),
      lat: place.lat(between(way.y, alongM) + drift.y + JITTER.horizontalM * chance.normal()),
      elevationM: between(way.z, alongM) + drift.z + JITTER.elevationM * chance.normal(),
      timeS: startS + t,
      alongM,
    });
    if (ahead.length > 0 && alongM >= ahead[0]) {
      ahead.shift();
      haltS = 45;
    }
    if (haltS-- > 0) continue;
    const rise = (between(way.z, alongM + 12) - between(way.z, alongM - 12)) / 24;
    alongM += 1 + 2.6 / (1 + (rise / 0.15) ** 2);
  }
  return fixes;
}

function drifted(value: number, size: number, backS: number, chance: Chance): number {
  return value - value / backS + size * Math.sqrt(2 / backS) * chance.normal();
}

function between(values: Float64Array, alongM: number): number {
  const at = Math.min(Math.max(0, alongM / STEP_M), values.length - 1.001);
  const i = Math.floor(at);
  return values[i] + (values[i + 1] - values[i]) * (at - i);
}
