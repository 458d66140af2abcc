import type { Ground } from '../terrain/ground.ts';
import type { Quantity } from '../units.ts';
import type { Aids } from '../vehicle/aids.ts';
import type { VehicleValues } from '../vehicle/specs.ts';

/** What is looked at, in the order it is reported. */
export const CHECKS = [
  'width',
  'headroom',
  'water depth',
  'depth × flow',
  'soft ground',
  'approach',
  'rampover',
  'departure',
  'belly',
  'front differential',
  'rear differential',
  'side tip',
  'end tip',
  'side hold',
  'braking',
  'traction',
] as const;

export type CheckName = (typeof CHECKS)[number];

/** What there is, what is needed, and how far that is from the limit. */
export interface Measured {
  /** Unit of `have`, `need`, `margin` and `tolerance`. */
  readonly quantity: Quantity;
  readonly have: number;
  readonly need: number;
  /** have − need; positive is good. */
  readonly margin: number;
  /** Below this a positive margin is within what model and tape can tell; above 0. */
  readonly tolerance: number;
  /** Where it is worst, along the line from the pin in the direction of travel; NaN where it has no place. */
  readonly stationM: number;
  /** What limits, as a driver would say it: "rear differential on the crown between the ruts". */
  readonly cause: string;
}

/** One check. */
export interface Check extends Measured {
  readonly name: CheckName;
  /** Of braking on a descent: what the engine does of it. */
  readonly engine?: EngineBraking;
}

/**
 * Engine braking on a descent, where it falls furthest short: the slope that engine and rolling resistance hold in first
 * gear at a walk, and the slope under the wheels there. No check of its own, as brakes make up for what it lacks; nor does
 * it add to what they hold.
 */
export interface EngineBraking extends Measured {
  /** What brakes must hold beside it over what wheels can hold, at the station where that is most; at 1 they slide. */
  readonly braked: number;
}

/** What is found out about one vehicle on one line with one set of aids. */
export interface Found {
  readonly checks: readonly Check[];
  /** Least speed on entry that carries the vehicle over where traction lacks; 0 where none lacks, Infinity where no safe speed does. */
  readonly entrySpeedMps: number;
  /** Pull that makes up for the traction lacking at the worst station, newtons; 0 where none does. */
  readonly pullN: number;
}

/** All of it. */
export interface Findings extends Found {
  readonly known: true;
}

/** Why nothing can be said: what is missing and where to measure it. */
export interface NotKnown {
  readonly known: false;
  readonly cause: string;
}

export type Assessment = Findings | NotKnown;

/**
 * Takes one vehicle along a line, `offsetM` left of the main one in the direction of travel, and answers for each set of
 * aids in turn. `grounds` is one, or several that may each be the true one and differ in their plane alone: the least of
 * every check is told.
 */
export type Assess = (
  values: VehicleValues,
  grounds: readonly Ground[],
  offsetM: number,
  aidSets: readonly Aids[],
) => Assessment[];

/** The check nearest to failing, or failing worst, each measured in its own tolerance. */
export function limiting(checks: readonly Check[]): Check {
  return checks.reduce((worst, check) =>
    check.margin / check.tolerance < worst.margin / worst.tolerance ? check : worst,
  );
}

/** The least margin of some checks, in its own tolerance: infinite of none, and less than any where nothing is known. */
export function easeOf(checks: readonly Check[] | null): number {
  if (checks === null) return -Infinity;
  return checks.reduce((least, { margin, tolerance }) => Math.min(least, margin / tolerance), Infinity);
}

/** Of one vehicle on several grounds that may each be the true one: the least of every check; not known where one is not. */
export function worstOf(assessments: readonly Assessment[]): Assessment {
  return assessments.reduce((a, b) => {
    if (!a.known) return a;
    return b.known ? { known: true, ...worseOf(a, b) } : b;
  });
}

/** The same of two, all of it known. */
export function worseOf(a: Found, b: Found): Found {
  const harder = (check: Check): Check => {
    const other = b.checks.find(({ name }) => name === check.name);
    return other !== undefined && other.margin < check.margin ? other : check;
  };
  const onlyThere = b.checks.filter(({ name }) => a.checks.every((check) => check.name !== name));
  return {
    checks: [...a.checks.map(harder), ...onlyThere],
    entrySpeedMps: Math.max(a.entrySpeedMps, b.entrySpeedMps),
    pullN: Math.max(a.pullN, b.pullN),
  };
}
