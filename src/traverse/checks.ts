import type { Part } from '../vehicle/body.ts';
import type { Check, CheckName, EngineBraking } from './assess.ts';
import type { Gap } from './clearance.ts';
import type { Descent } from './descent.ts';
import { ENGINE_LIMITS, HANGING } from './descent.ts';
import type { Effort } from './effort.ts';
import { WHEELS } from './equilibrium.ts';
import { HANGS, TIP_RESERVE_RAD, TOLERANCE } from './limits.ts';
import type { TraverseRecord } from './record.ts';
import type { TipMargin } from './stability.ts';
import type { Up } from './up.ts';
import { say } from '../words/words.ts';

/** Which check a part of the underside belongs to. */
const CLEARANCE: Readonly<Record<Part, CheckName>> = {
  'front corner': 'approach',
  'rear corner': 'departure',
  'crest of the belly': 'rampover',
  belly: 'belly',
  'left sill': 'belly',
  'right sill': 'belly',
  'front differential': 'front differential',
  'rear differential': 'rear differential',
};

/** The check that a part of the underside belongs to. */
export function clearanceOf(part: Part): CheckName {
  return CLEARANCE[part];
}

/** One check of each name, at its part with the least gap. */
export function clearanceChecks(gaps: readonly Gap[]): Check[] {
  const checks = new Map<CheckName, Check>();
  for (const { part, gapM, stationM } of gaps) {
    if (gapM === Infinity) continue;
    const name = CLEARANCE[part];
    const known = checks.get(name);
    if (known && known.margin <= gapM) continue;
    const tolerance = TOLERANCE.gapM;
    checks.set(name, {
      name,
      quantity: 'size',
      have: gapM,
      need: 0,
      margin: gapM,
      tolerance,
      stationM,
      cause: say.causes.touches[part],
    });
  }
  return [...checks.values()];
}

/** Side and end tip: the tilt left at the worst edge, of which some is kept in hand for jolts. */
export function tipChecks(margins: readonly TipMargin[]): Check[] {
  const worst = (name: CheckName, edges: readonly TipMargin['edge'][]): Check[] => {
    const known = margins.filter((tip) => edges.includes(tip.edge) && !Number.isNaN(tip.marginRad));
    if (known.length === 0) return [];
    const tip = known.reduce((least, next) => (next.marginRad < least.marginRad ? next : least));
    return [
      {
        name,
        quantity: 'angle',
        have: tip.marginRad,
        need: TIP_RESERVE_RAD,
        margin: tip.marginRad - TIP_RESERVE_RAD,
        tolerance: TOLERANCE.tipRad,
        stationM: tip.stationM,
        cause: say.causes.nearTipping[tip.edge],
      },
    ];
  };
  return [...worst('side tip', ['left', 'right']), ...worst('end tip', ['back', 'forward'])];
}

/** Side hold, braking and traction, each at its worst station. */
export function effortChecks(effort: Effort, record: TraverseRecord, up: Up): [Check, Check, Check] {
  let hold = -1;
  let brake = -1;
  let pull = -1;
  const brakeAsk = (n: number) => (effort.slidesBack[n] ? up.x : -up.x);
  const braked = (n: number) => effort.brake[n] - brakeAsk(n);
  for (let n = 0; n < effort.length; n++) {
    if (record.standing[n] !== 0) continue;
    if (hold < 0 || effort.hold[n] < effort.hold[hold]) hold = n;
    if (brake < 0 || braked(n) < braked(brake)) brake = n;
    if (pull < 0 || effort.push[n] - effort.ask[n] < effort.push[pull] - effort.ask[pull]) pull = n;
  }
  const braking = effort.slidesBack[brake] ? say.causes.brakesOnClimb : say.causes.slidesDown;
  const held: { -readonly [K in keyof Check]: Check[K] } = at(
    'braking',
    brake,
    record,
    effort.brake[brake],
    brakeAsk(brake),
    braking,
  );
  if (effort.descent !== null) held.engine = engineBraking(effort.descent, record);
  return [
    at(
      'side hold',
      hold,
      record,
      effort.hold[hold] + effort.holdAsk[hold],
      effort.holdAsk[hold],
      say.causes.slides[effort.holdCase[hold]],
    ),
    held,
    at('traction', pull, record, effort.push[pull], effort.ask[pull], tractionCause(effort, record, pull)),
  ];
}

function engineBraking({ ask, brake, engine, limitedBy }: Descent, record: TraverseRecord): EngineBraking {
  let worst = -1;
  let braked = 0;
  for (let n = 0; n < ask.length; n++) {
    if (ask[n] <= 0) continue;
    if (worst < 0 || engine[n] - ask[n] < engine[worst] - ask[worst]) worst = n;
    braked = Math.max(braked, ask[n] < brake[n] ? Math.max(0, ask[n] - engine[n]) / brake[n] : 1);
  }
  const have = Math.asin(Math.min(1, engine[worst]));
  const need = Math.asin(Math.min(1, ask[worst]));
  return {
    quantity: 'angle',
    have,
    need,
    margin: have - need,
    tolerance: TOLERANCE.grip,
    stationM: record.stationM[worst],
    cause: engineCause(limitedBy[worst]),
    braked,
  };
}

function engineCause(limitedBy: number): string {
  if (limitedBy < HANGING) return say.causes[ENGINE_LIMITS[limitedBy]];
  return say.causes.wheelsLetGo(wheelNames(limitedBy));
}

/** How those wheels are called whose bits are set. */
function wheelNames(wheels: number): string[] {
  return WHEELS.filter((_, i) => (wheels & (1 << i)) !== 0).map((wheel) => say.wheel[wheel]);
}

/** A check of forces over weight at station `n`; where the vehicle stands nowhere (`n` < 0) nothing is left. */
function at(
  name: CheckName,
  n: number,
  record: TraverseRecord,
  have: number,
  need: number,
  cause: string,
): Check {
  const tolerance = TOLERANCE.grip;
  if (n < 0)
    return {
      name,
      quantity: 'share',
      have: 0,
      need: 1,
      margin: -1,
      tolerance,
      stationM: NaN,
      cause: say.causes.tips,
    };
  return {
    name,
    quantity: 'share',
    have,
    need,
    margin: have - need,
    tolerance,
    stationM: record.stationM[n],
    cause,
  };
}

/** Climb of a contact, weighed by load, from which a wheel is said to stand against a step. */
const STEP = 0.25;

function tractionCause(effort: Effort, record: TraverseRecord, n: number): string {
  if (n < 0) return '';
  if (effort.limitedBy[n] === 2) return say.causes.waterCarries;
  const { loadN: V, climbTan: t } = record;
  const at = 4 * n;
  const mean = (V[at] + V[at + 1] + V[at + 2] + V[at + 3]) / 4;
  let hanging = 0;
  let steepest = at;
  for (let i = 0; i < 4; i++) {
    if (V[at + i] < HANGS * mean) hanging |= 1 << i;
    if (V[at + i] * t[at + i] > V[steepest] * t[steepest]) steepest = at + i;
  }
  if (hanging !== 0) return say.causes.wheelsSpin(wheelNames(hanging));
  if (V[steepest] * t[steepest] > STEP * mean)
    return say.causes.againstStep(say.wheel[WHEELS[steepest - at]]);
  return effort.limitedBy[n] === 1 ? say.causes.engine : say.causes.grip;
}
