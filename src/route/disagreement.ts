import type { SlopeProfile } from './slope.ts';
import { slopeAt } from './slope.ts';

/** How an elevation model differs from what was recorded along the same track; positive where the model lies higher. */
export interface Disagreement {
  /** Half of the stations lie above this, half below. As a whole it changes no slope: heights have different zeros. */
  readonly usualM: number;
  /** The difference farthest from that, and where. */
  readonly mostM: number;
  readonly stationM: number;
}

/** Of the smoothed elevations, at the stations where both are known; null where there are none. */
export function disagreementOf(recorded: SlopeProfile, model: SlopeProfile): Disagreement | null {
  const { length, stationM: stations, smoothedM } = recorded;
  const found: { readonly stationM: number; readonly byM: number }[] = [];
  for (let i = 0; i < length; i++) {
    const stationM = stations[i];
    // At a gap two places share one station: which of them the other curve speaks of cannot be told.
    if (stationM === stations[i - 1] || stationM === stations[i + 1]) continue;
    const byM = slopeAt(model, stationM).smoothedM - smoothedM[i];
    if (!Number.isNaN(byM)) found.push({ stationM, byM });
  }
  if (found.length === 0) return null;
  const usualM = found.map(({ byM }) => byM).sort((a, b) => a - b)[found.length >> 1];
  const off = ({ byM }: { readonly byM: number }) => Math.abs(byM - usualM);
  const most = found.reduce((worst, one) => (off(one) > off(worst) ? one : worst));
  return { usualM, mostM: most.byM, stationM: most.stationM };
}
