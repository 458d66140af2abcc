import type { RungVerdict, Verdict } from '../grade/verdict.ts';
import type { EngineBraking } from '../traverse/assess.ts';
import type { System } from '../units.ts';
import { shown } from '../units.ts';
import type { VehicleValues } from '../vehicle/specs.ts';
import { say } from '../words/words.ts';

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
  const gear = step.rung.aids.lowRange ? say.driving.firstLow : say.driving.firstGear;
  if (engineHolds(engine)) return say.driving.holds(gear);
  if (engine.margin >= 0) return say.driving.justHolds(gear);
  const brakes = values.hillDescent ? say.driving.descentControl(gear) : say.driving.footOnBrake(gear);
  const keeps = keptBy(verdict, step);
  const said = letGo(engine)
    ? engine.cause
    : say.driving.engineHolds(shown(engine.have, 'angle', system), shown(engine.need, 'angle', system));
  return say.driving.down(
    brakes,
    keeps === null ? said : say.driving.allOfIt(said, say.rung[keeps.rung.name]),
  );
}

/** What to engage for a descent: the rung itself where it has low range or there is none, else the first one that has. */
export function geared(verdict: Verdict): RungVerdict {
  if (verdict.rung.aids.lowRange) return verdict;
  return verdict.ladder.find(({ rung }) => rung.aids.lowRange) ?? verdict;
}

/** Whether wheels in the air, not engine or ground, take the engine braking away. */
function letGo({ cause }: EngineBraking): boolean {
  return cause !== say.causes.engine && cause !== say.causes.grip;
}

/** The first further rung with which the engine holds it; null where there is none. */
function keptBy({ ladder }: Verdict, step: RungVerdict): RungVerdict | null {
  const after = ladder.slice(ladder.findIndex(({ rung }) => rung === step.rung) + 1);
  const keeps = after.find((next) => {
    const engine = engineOf(next);
    return engine !== null && engineHolds(engine);
  });
  return keeps ?? null;
}

/** Said once to a driver who has a descent ahead. Common practice, no source. */
export const ON_THE_WAY_DOWN = say.driving.onTheWayDown;

/** What stability control does on a descent, and where it stands down. Common practice, no source. */
export function stabilityText({ stabilityControl }: Pick<VehicleValues, 'stabilityControl'>): string {
  return say.driving.stability[stabilityControl];
}
