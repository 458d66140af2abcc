import { heldGripFields } from '../terrain/heldGrip.ts';
import type { HeldGrip, Surface } from '../terrain/surface.ts';
import { gripOf } from '../terrain/surface.ts';
import type { AdhesionEstimate, Trial } from './adhesion.ts';
import { adhesionFrom } from './adhesion.ts';

/** What the tries on one kind of ground tell of it. */
export interface GroundTold {
  readonly surface: Surface;
  readonly trials: number;
  /** Null where they are too few to say anything. */
  readonly estimate: AdhesionEstimate | null;
  /** How that stands to the range that tables print; null where nothing is said, or only of one end. */
  readonly against: 'lower' | 'higher' | 'within' | null;
}

/** Ground by ground, that of which most is known first. */
export function groundsTold(
  all: readonly { readonly surface: Surface; readonly trial: Trial }[],
): GroundTold[] {
  const grounds = new Map<string, { surface: Surface; trials: Trial[] }>();
  for (const { surface, trial } of all) {
    const key = `${surface.material} ${surface.condition}`;
    const ground = grounds.get(key) ?? { surface, trials: [] };
    ground.trials.push(trial);
    grounds.set(key, ground);
  }
  return [...grounds.values()]
    .map(({ surface, trials }) => {
      const estimate = adhesionFrom(trials);
      return { surface, trials: trials.length, estimate, against: againstTables(surface, estimate) };
    })
    .sort((a, b) => b.trials - a.trials);
}

/** Adhesion is held in steps of so much, the next lower one. */
const HELD_STEP = 0.01;

/**
 * What could be held of the ground after its tries: the low end of what they suggest, or where none went, the high one.
 * Null where that is not slipperier than what is reckoned with anyway; `held` is what the trip holds already.
 */
export function heldSuggested({ surface, estimate }: GroundTold, held: readonly HeldGrip[]): HeldGrip | null {
  const least = estimate && (estimate.low ?? estimate.high);
  if (least === null) return null;
  const { material, condition } = surface;
  const steps = Math.floor(least / HELD_STEP + 1e-9);
  const peak = Math.max(heldGripFields.peak.min, Number((steps * HELD_STEP).toFixed(2)));
  return peak < gripOf({ material, condition, held }).peak.low ? { material, condition, peak } : null;
}

/** It differs only where the whole interval lies beyond what is printed. */
function againstTables(surface: Surface, estimate: AdhesionEstimate | null): GroundTold['against'] {
  const { peak } = gripOf(surface);
  if (estimate === null) return null;
  if (estimate.high !== null && estimate.high < peak.low) return 'lower';
  if (estimate.low !== null && estimate.low > peak.high) return 'higher';
  return estimate.likely === null ? null : 'within';
}
