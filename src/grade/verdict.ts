import type { Direction, Line, Stretch } from '../terrain/obstacle.ts';
import { checkStretch } from '../terrain/check.ts';
import { AS_ENTERED, AT_WORST } from '../terrain/take.ts';
import { softened } from '../terrain/wear.ts';
import type { Ground, TrackSlope } from '../terrain/ground.ts';
import { groundOf, inPlane } from '../terrain/ground.ts';
import type { Assess, Check, CheckName, Findings } from '../traverse/assess.ts';
import { limiting } from '../traverse/assess.ts';
import { assessTraverse } from '../traverse/traverse.ts';
import type { Rung } from '../vehicle/aids.ts';
import { ladder } from '../vehicle/aids.ts';
import type { VehicleField } from '../vehicle/specs.ts';
import { vehicleFields } from '../vehicle/specs.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import { checkVehicle } from '../vehicle/vehicle.ts';
import { say } from '../words/words.ts';

/** From best to worst. `not known` stands apart: something must be measured first. */
export const VERDICT_WORDS = [
  'goes',
  'goes with care',
  'needs momentum',
  'needs a pull',
  'does not go',
  'not known',
] as const;

export type VerdictWord = (typeof VERDICT_WORDS)[number];

/** What is said of one vehicle with one rung of aids. */
export interface RungVerdict {
  readonly rung: Rung;
  readonly word: VerdictWord;
  /** What limits, in a driver's words. */
  readonly cause: string;
  /** The check that decides the word; null when not known. */
  readonly limit: Check | null;
  /** All checks with the values as entered; empty when not known. */
  readonly checks: readonly Check[];
  /** All checks with every value at the hard end of its range; empty when not known. */
  readonly worstChecks: readonly Check[];
  /** Least entry speed for `needs momentum`, else 0. */
  readonly entrySpeedMps: number;
  /** Pull for `needs a pull`, else 0. */
  readonly pullN: number;
}

/** What is said of one vehicle on one line in one direction: the least rung that earns the best word, and all rungs. */
export interface Verdict extends RungVerdict {
  readonly ladder: readonly RungVerdict[];
}

/** Position in `VERDICT_WORDS`; lower is better. */
export function rankOf(word: VerdictWord): number {
  return VERDICT_WORDS.indexOf(word);
}

/** Checks whose failing hurts people: here the hard end of the range decides, not the values as entered. */
const DANGERS: readonly CheckName[] = ['depth × flow', 'side tip', 'end tip', 'side hold', 'braking'];

export function isDanger(name: CheckName): boolean {
  return DANGERS.includes(name);
}

/** Checks whose failing leaves a vehicle standing unharmed, for another to pull on. */
const STRANDS: readonly CheckName[] = ['soft ground', 'traction'];

/**
 * Part of what braked wheels hold on a descent that a foot may be left to hold without care. A wheel that uses half of its
 * grip to brake keeps 87 % of it sideways (friction circle); a foot cannot tell which wheel is the light one, hill descent
 * control can. Common practice, no source.
 */
const FOOT_SHARE = 0.5;

/** Whether a foot on the brake has to hold more of a descent than that. */
function leansOnFoot({ engine }: Check, hillDescent: boolean): boolean {
  return engine !== undefined && !hillDescent && engine.braked > FOOT_SHARE;
}

function judge(rung: Rung, entered: Findings, worst: Findings, hillDescent: boolean): RungVerdict {
  const said = (word: VerdictWord, limit: Check, entrySpeedMps = 0, pullN = 0): RungVerdict => ({
    rung,
    word,
    cause: limit.cause,
    limit,
    checks: entered.checks,
    worstChecks: worst.checks,
    entrySpeedMps,
    pullN,
  });
  const fails = [
    ...entered.checks.filter((check) => check.margin < 0 && !STRANDS.includes(check.name)),
    ...worst.checks.filter((check) => check.margin < 0 && isDanger(check.name)),
  ];
  if (fails.length > 0) return said('does not go', limiting(fails));

  const stranded = entered.checks.filter((check) => check.margin < 0);
  if (stranded.length > 0) {
    const lacking = limiting(stranded);
    const others = worst.checks.filter((check) => check.name !== 'traction');
    const steady = others.every((check) => check.margin >= check.tolerance);
    if (steady && Number.isFinite(worst.entrySpeedMps))
      return said('needs momentum', lacking, worst.entrySpeedMps);
    return said('needs a pull', lacking, 0, worst.pullN);
  }

  const sure =
    worst.checks.every((check) => check.margin >= 0) &&
    entered.checks.every((check) => check.margin >= check.tolerance);
  const braking = worst.checks.find((check) => leansOnFoot(check, hillDescent));
  if (sure && braking !== undefined) return said('goes with care', braking);
  return said(sure ? 'goes' : 'goes with care', limiting(worst.checks));
}

function notKnown(rung: Rung, cause: string): RungVerdict {
  return {
    rung,
    word: 'not known',
    cause,
    limit: null,
    checks: [],
    worstChecks: [],
    entrySpeedMps: 0,
    pullN: 0,
  };
}

/** Ground decided for one direction of travel: as entered, null where it is not known or cannot be, and at every hard end. */
export interface Grounds {
  readonly entered: Ground | null;
  /** At least one, but where the ground is not known or cannot be. */
  readonly worst: readonly Ground[];
}

const NOT_KNOWN: Grounds = { entered: null, worst: [] };

/**
 * Sizes out of range or against each other are nobody's ground: a rut that ends before it starts would not be there. Soft
 * patches are as a vehicle finds them that comes after `ahead` others.
 */
export function groundsOf(
  measured: Stretch,
  direction: Direction,
  trackSlope: TrackSlope | null,
  ahead = 0,
): Grounds {
  if (checkStretch(measured, '').length > 0) return NOT_KNOWN;
  const stretch = softened(measured, ahead);
  const entered = groundOf(stretch, direction, trackSlope, AS_ENTERED);
  const worst = groundOf(stretch, direction, trackSlope, AT_WORST);
  if (entered === null || worst === null) return NOT_KNOWN;
  return { entered, worst: hardEnds(entered, worst) };
}

/**
 * Nearly level ground may climb or fall, lean left or right, within its ±: each end that lies across zero is judged too, so
 * that a place is no easier for being measured as level.
 */
function hardEnds(entered: Ground, worst: Ground): Ground[] {
  const across = (name: 'slopeRad' | 'camberRad') => {
    const other = 2 * entered[name] - worst[name];
    return other * worst[name] < 0 ? [worst[name], other] : [worst[name]];
  };
  const cambersRad = across('camberRad');
  return across('slopeRad').flatMap((slopeRad) =>
    cambersRad.map((camberRad) => inPlane(worst, slopeRad, camberRad)),
  );
}

/** How far left of the main line, in the direction of travel. */
export function offsetOf(line: Line, direction: Direction): number {
  if (line.kind === 'bypass') return 0;
  return direction === 'reversed' ? -line.offsetM : line.offsetM;
}

/** Why nothing can be said of a vehicle; null where all of it is known and can be. */
export function faultOf(vehicle: Vehicle): string | null {
  const missing = (Object.keys(vehicleFields) as VehicleField[]).filter((name) =>
    Number.isNaN(vehicle.values[name]),
  );
  if (missing.length > 0)
    return say.causes.vehicleNotKnown(
      missing.map((name) => say.fields.within(vehicleFields[name].label)).join(', '),
    );
  const [wrong] = checkVehicle(vehicle, '');
  return wrong === undefined ? null : say.causes.vehicleCannotBe(wrong.what);
}

/**
 * The verdict for one vehicle `offsetM` left of the main line. `assess` is the physics; the traverse unless another is given.
 * `rungs` are what may be engaged; the vehicle's own ladder unless others are given.
 */
export function verdictOn(
  vehicle: Vehicle,
  grounds: Grounds,
  offsetM: number,
  assess: Assess = assessTraverse,
  rungs: readonly Rung[] = ladder(vehicle.values),
): Verdict {
  const unknown = (cause: string): Verdict => {
    const said = rungs.map((rung) => notKnown(rung, cause));
    return { ...said[0], ladder: said };
  };
  const fault = faultOf(vehicle);
  if (fault !== null) return unknown(fault);
  if (grounds.entered === null) return unknown(say.causes.placeNotKnown);

  const aidSets = rungs.map((rung) => rung.aids);
  const entered = assess(vehicle.values, [grounds.entered], offsetM, aidSets);
  const worst = assess(vehicle.values, grounds.worst, offsetM, aidSets);
  const verdicts = rungs.map((rung, i) => {
    const a = entered[i];
    const b = worst[i];
    if (!a.known) return notKnown(rung, a.cause);
    if (!b.known) return notKnown(rung, b.cause);
    return judge(rung, a, b, vehicle.values.hillDescent);
  });
  const { rung, word, cause, limit, checks, worstChecks, entrySpeedMps, pullN } = verdicts.reduce(
    (least, next) => (rankOf(next.word) < rankOf(least.word) ? next : least),
  );
  return { rung, word, cause, limit, checks, worstChecks, entrySpeedMps, pullN, ladder: verdicts };
}
