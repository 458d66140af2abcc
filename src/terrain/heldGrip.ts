import type { FieldTable } from '../field.ts';
import { number } from '../field.ts';
import { say } from '../words/words.ts';
import type { Obstacle, Stretch } from './obstacle.ts';
import type { HeldGrip, Surface } from './surface.ts';
import { gripOf, surfaceFields } from './surface.ts';

export const heldGripFields = {
  ...surfaceFields,
  peak: number(say.heldGrip.peak, 'number', 0.02, 1.2),
} satisfies FieldTable;

/** What is held of a surface, where it is lower than what tables print; null where nothing is. */
export function heldOf(surface: Surface): { readonly peak: number; readonly printed: number } | null {
  const { material, condition } = surface;
  const printed = gripOf({ material, condition }).peak.low;
  const peak = gripOf(surface).peak.low;
  return peak < printed ? { peak, printed } : null;
}

/** The list with one kind of ground held at a value, never at more than it was or than tables print. */
export function holding(held: readonly HeldGrip[], grip: HeldGrip): readonly HeldGrip[] {
  const { material, condition, peak } = grip;
  if (!(peak < gripOf({ material, condition, held }).peak.low)) return held;
  return [...releasing(held, grip), { material, condition, peak }];
}

/** The list without one kind of ground: what tables print counts again. */
export function releasing(
  held: readonly HeldGrip[],
  { material, condition }: Pick<Surface, 'material' | 'condition'>,
): readonly HeldGrip[] {
  return held.filter((one) => one.material !== material || one.condition !== condition);
}

/** Obstacles with what is held, by list: the same obstacle and list give the same record, so that answers are found again. */
const known = new WeakMap<readonly HeldGrip[], WeakMap<Obstacle, Obstacle>>();

/** An obstacle as it is judged while something is held: its surfaces, those of its bypasses too, know of it. */
export function withHeld(obstacle: Obstacle, held: readonly HeldGrip[]): Obstacle {
  if (held.length === 0) return obstacle;
  const all = known.get(held) ?? new WeakMap<Obstacle, Obstacle>();
  known.set(held, all);
  const made = all.get(obstacle) ?? {
    ...obstacle,
    stretch: groundHeld(obstacle.stretch, held),
    lines: obstacle.lines.map((line) =>
      line.kind === 'bypass' ? { ...line, stretch: groundHeld(line.stretch, held) } : line,
    ),
  };
  all.set(obstacle, made);
  return made;
}

export function groundHeld(stretch: Stretch, held: readonly HeldGrip[]): Stretch {
  return held.length === 0 ? stretch : { ...stretch, surface: { ...stretch.surface, held } };
}
