import type { RungVerdict, Verdict } from '../grade/verdict.ts';
import type { EngineBraking } from '../traverse/assess.ts';
import type { System } from '../units.ts';
import { shown } from '../units.ts';
import type { VehicleValues } from '../vehicle/specs.ts';

/** What the engine does on the way down, every value at the hard end of its range; null where it is no descent. */
export function engineOf({ worstChecks }: RungVerdict): EngineBraking | null {
  return worstChecks.find(({ name }) => name === 'braking')?.engine ?? null;
}

/** Whether it surely holds the vehicle at a walk, feet off. */
export function engineHolds({ margin, tolerance }: EngineBraking): boolean {
  return margin >= tolerance;
}

/**
 * What to go down with: `first low holds it`, `first low and a foot on the brake: the engine holds 8° of 20°`. A vehicle
 * that has a low range uses it, whatever the least rung is. Empty where it is no descent.
 */
export function descentText(verdict: Verdict, values: VehicleValues, system: System): string {
  const step = geared(verdict);
  const engine = engineOf(step);
  if (engine === null) return '';
  const gear = step.rung.aids.lowRange ? 'first low' : 'first gear';
  if (engineHolds(engine)) return `${gear} holds it on the way down`;
  if (engine.margin >= 0) return `${gear} just holds it on the way down, a foot ready on the brake`;
  const brakes = values.hillDescent
    ? `hill descent control on, in ${gear}`
    : `${gear} and a foot on the brake`;
  const holds = `the engine holds ${shown(engine.have, 'angle', system)} of ${shown(engine.need, 'angle', system)}`;
  const keeps = keptBy(verdict, step);
  const said = engine.cause.includes('in the air') ? `${engine.cause}${keeps}` : `${holds}${keeps}`;
  return `down with ${brakes}: ${said}`;
}

/** What to engage for a descent: the rung itself where it has low range or there is none, else the first one that has. */
export function geared(verdict: Verdict): RungVerdict {
  if (verdict.rung.aids.lowRange) return verdict;
  return verdict.ladder.find(({ rung }) => rung.aids.lowRange) ?? verdict;
}

/** The first further rung with which the engine holds it; nothing where there is none. */
function keptBy({ ladder }: Verdict, step: RungVerdict): string {
  const after = ladder.slice(ladder.findIndex(({ rung }) => rung === step.rung) + 1);
  const keeps = after.find((next) => {
    const engine = engineOf(next);
    return engine !== null && engineHolds(engine);
  });
  return keeps === undefined ? '' : `, with ${keeps.rung.name} all of it`;
}

/** Said once to a driver who has a descent ahead. Common practice, no source. */
export const ON_THE_WAY_DOWN =
  'gear chosen before the edge, foot off the clutch, nose straight down the slope; an automatic is held in first and holds less.';

/** What stability control does on a descent, and where it stands down. Common practice, no source. */
export function stabilityText({ stabilityControl }: Pick<VehicleValues, 'stabilityControl'>): string {
  const acts = 'when it slides it may brake one wheel and close the throttle, so steer little';
  switch (stabilityControl) {
    case 'none':
      return '';
    case 'always on':
      return `Stability control stays on: ${acts}.`;
    case 'off in low range':
      return `Stability control stands down in low range; in high range, ${acts}.`;
    case 'off with centre locked':
      return `Stability control stands down with the centre locked; before that, ${acts}.`;
  }
}
