import type { TrackSlope } from '../terrain/ground.ts';
import type { Direction, Obstacle } from '../terrain/obstacle.ts';
import { assessTraverse } from '../traverse/traverse.ts';
import { rad } from '../units.ts';
import type { VehicleField, VehicleValues } from '../vehicle/specs.ts';
import { vehicleFields } from '../vehicle/specs.ts';
import type { Season } from './classification.ts';
import { referenceRungs, referenceVehicle } from './reference.ts';
import { groundsIn } from './season.ts';
import type { Grounds, RungVerdict } from './verdict.ts';
import { groundsOf, rankOf, verdictOn } from './verdict.ts';

/** What a requirement line tells, in the order in which it is said. */
export const NEEDS = ['clearance', 'angles', 'trackWidth', 'width', 'tyre', 'wading'] as const;

export type NeedName = (typeof NEEDS)[number];

/** The least (of widths the greatest) with which the reference vehicle goes, all else as it has it. */
export type Need =
  /** `value` in SI: metres, of `angles` the radians that all three are away from the reference's. */
  | {
      readonly found: true;
      readonly value: number;
      /** As far as the range of the field goes: less (or more) was not to be tried. */
      readonly atEnd: boolean;
    }
  | { readonly found: false };

/** What it takes to go over one obstacle by its main line, one direction, one season. Null where the ground is not known. */
export interface Requirement {
  readonly obstacleId: string;
  readonly needs: Readonly<Record<NeedName, Need>> | null;
  /** Name of the least rung of the reference, lockers fitted, that goes; null where none does. */
  readonly rung: string | null;
  /** How many rungs it is up from the first; Infinity where none goes. */
  readonly rungsUp: number;
}

/** All of a track's requirements in one line, and which obstacle asks most of each. */
export interface TrackRequirement {
  readonly needs: Readonly<Record<NeedName, Need & { readonly obstacleId: string }>> | null;
  readonly rung: string | null;
  readonly rungSetBy: string | null;
  /** Obstacles of which nothing can be said. */
  readonly notKnown: readonly string[];
}

/** The mid-size wagon of our classes, with lockers fitted in both axles, so that what it lacks is shape and size. */
export const REFERENCE_VALUES: VehicleValues = {
  ...referenceVehicle('wagon').values,
  frontDifferential: 'locker',
  rearDifferential: 'locker',
};

/** How a need is varied on the reference: by whole steps from what it has; less is asked of a vehicle downwards or upwards. */
interface Varied {
  readonly stepSi: number;
  /** −1 where the least is sought, 1 where the greatest. */
  readonly seeks: 1 | -1;
  /** What is told, on the reference as it is. */
  readonly has: number;
  readonly fields: readonly VehicleField[];
  readonly with: (by: number) => Partial<VehicleValues>;
}

function shifted(fields: readonly VehicleField[], by: number): Partial<VehicleValues> {
  return Object.fromEntries(fields.map((name) => [name, (REFERENCE_VALUES[name] as number) + by]));
}

function plain(name: VehicleField, stepSi: number, seeks: 1 | -1): Varied {
  const has = REFERENCE_VALUES[name] as number;
  return { stepSi, seeks, has, fields: [name], with: (by) => shifted([name], by) };
}

const UNDERSIDE = [
  'bellyHeightM',
  'sillHeightM',
  'frontDifferentialHeightM',
  'rearDifferentialHeightM',
] as const;
const ANGLES = ['approachRad', 'rampoverRad', 'departureRad'] as const;
const TRACKS = ['frontTrackWidthM', 'rearTrackWidthM'] as const;
const RISE_WITH_TYRES = [...UNDERSIDE, 'heightM', 'massHeightM', 'roofLoadHeightM', 'floorHeightM'] as const;

/** Steps are what a tape under a vehicle tells apart, and one usual size of tyre. Common practice, no source. */
const VARIED: Readonly<Record<NeedName, Varied>> = {
  clearance: {
    stepSi: 0.01,
    seeks: -1,
    has: Math.min(REFERENCE_VALUES.frontDifferentialHeightM, REFERENCE_VALUES.rearDifferentialHeightM),
    fields: UNDERSIDE,
    with: (by) => shifted(UNDERSIDE, by),
  },
  angles: { stepSi: rad(1), seeks: -1, has: 0, fields: ANGLES, with: (by) => shifted(ANGLES, by) },
  trackWidth: {
    stepSi: 0.05,
    seeks: 1,
    has: Math.max(REFERENCE_VALUES.frontTrackWidthM, REFERENCE_VALUES.rearTrackWidthM),
    fields: TRACKS,
    with: (by) => {
      const tracks = shifted(TRACKS, by);
      const overTyres =
        Math.max(...TRACKS.map((name) => tracks[name] as number)) + REFERENCE_VALUES.tyreSectionM;
      return { ...tracks, widthM: Math.max(REFERENCE_VALUES.widthM, overTyres) };
    },
  },
  width: plain('widthM', 0.05, 1),
  tyre: {
    stepSi: 0.033,
    seeks: -1,
    has: REFERENCE_VALUES.tyreDiameterM,
    fields: ['tyreDiameterM'],
    with: (by) => ({ ...shifted(RISE_WITH_TYRES, by / 2), ...shifted(['tyreDiameterM'], by) }),
  },
  wading: plain('wadingDepthM', 0.05, -1),
};

/** The reference vehicle with one need so many steps from what it has; null beyond the range of a field. */
export function variedBy(name: NeedName, steps: number): VehicleValues | null {
  const varied = VARIED[name];
  const values: VehicleValues = { ...REFERENCE_VALUES, ...varied.with(steps * varied.stepSi) };
  const inRange = (Object.keys(varied.with(0)) as VehicleField[]).every((field) => {
    const { kind, min, max } = vehicleFields[field] as { kind: string; min: number; max: number };
    const value = values[field] as number;
    return kind !== 'number' || (value >= min && value <= max);
  });
  const stands = Math.max(values.frontTrackWidthM, values.rearTrackWidthM) + values.tyreSectionM;
  return inRange && stands <= values.widthM + 0.1 ? values : null;
}

/** What a number of steps means, SI. */
export function valueAtSteps(name: NeedName, steps: number): number {
  return VARIED[name].has + steps * VARIED[name].stepSi;
}

/** What is asked of a vehicle here: its best rung at usual tyres, and with tyres down where that does not go. */
type Goes = (values: VehicleValues) => boolean;

/**
 * Found by taking the reference over the main line, one thing varied at a time, a step at a time: from what it has towards
 * less as long as it goes, or, where it does not go, towards more until it does. Every step in between was tried, so that
 * what is told goes, and nothing between it and the reference fails. Where nothing does by any amount, none is found.
 */
export function requirementOf(
  obstacle: Obstacle,
  trackSlope: TrackSlope | null,
  direction: Direction,
  season: Season,
): Requirement {
  const all = groundsIn(season, obstacle.stretch).map((stretch) => groundsOf(stretch, direction, trackSlope));
  if (all.some(({ entered, worst }) => entered === null || worst === null))
    return { obstacleId: obstacle.id, needs: null, rung: null, rungsUp: Infinity };
  const goes: Goes = (values) => all.every((grounds) => rungThatGoes(values, grounds) !== null);
  const rungs = all.map((grounds) => rungThatGoes(REFERENCE_VALUES, grounds));
  const most = rungs.reduce((a, b) => (a === null || b === null ? null : a.up >= b.up ? a : b));
  const entries = NEEDS.map((name) => [name, walked(name, most !== null, goes)] as const);
  return {
    obstacleId: obstacle.id,
    needs: Object.fromEntries(entries) as Record<NeedName, Need>,
    rung: most?.name ?? null,
    rungsUp: most?.up ?? Infinity,
  };
}

function walked(name: NeedName, referenceGoes: boolean, goes: Goes): Need {
  const { seeks } = VARIED[name];
  const at = (steps: number): boolean => {
    const values = variedBy(name, steps);
    return values !== null && goes(values);
  };
  if (referenceGoes) {
    let steps = 0;
    while (at(steps + seeks)) steps += seeks;
    const atEnd = variedBy(name, steps + seeks) === null;
    return { found: true, value: valueAtSteps(name, steps), atEnd };
  }
  for (let steps = -seeks; variedBy(name, steps) !== null; steps -= seeks)
    if (at(steps)) return { found: true, value: valueAtSteps(name, steps), atEnd: false };
  return { found: false };
}

interface RungUp {
  readonly name: string;
  readonly up: number;
}

/** The least rung with which it goes, with care or without. Tyres down come after all lockers, as in the ladder. */
function rungThatGoes(values: VehicleValues, grounds: Grounds): RungUp | null {
  const vehicle = { ...referenceVehicle('wagon'), values };
  let up = 0;
  for (const tyresDown of [false, true]) {
    const rungs = referenceRungs(values, tyresDown);
    const { ladder } = verdictOn(vehicle, grounds, 0, assessTraverse, rungs);
    const at = ladder.findIndex(goesAlone);
    if (at >= 0) return { name: tyresDown ? 'tyres down' : ladder[at].rung.name, up: up + at };
    up += rungs.length;
  }
  return null;
}

function goesAlone({ word }: RungVerdict): boolean {
  return rankOf(word) <= rankOf('goes with care');
}

/** What a vehicle must have for all of some obstacles. */
export function requirementOfTrack(all: readonly Requirement[]): TrackRequirement {
  const known = all.filter(({ needs }) => needs !== null);
  const notKnown = all.filter(({ needs }) => needs === null).map(({ obstacleId }) => obstacleId);
  if (known.length === 0) return { needs: null, rung: null, rungSetBy: null, notKnown };
  const entries = NEEDS.map((name) => {
    const each = known.map(({ obstacleId, needs }) => ({
      ...(needs as Record<NeedName, Need>)[name],
      obstacleId,
    }));
    return [name, each.reduce((most, next) => (asksMore(name, next, most) ? next : most))] as const;
  });
  const hardest = known.reduce((most, next) => (next.rungsUp > most.rungsUp ? next : most));
  return {
    needs: Object.fromEntries(entries) as Record<NeedName, Need & { readonly obstacleId: string }>,
    rung: hardest.rung,
    rungSetBy: hardest.obstacleId,
    notKnown,
  };
}

function asksMore(name: NeedName, a: Need, b: Need): boolean {
  if (!a.found || !b.found) return !a.found && b.found;
  return VARIED[name].seeks === -1 ? a.value > b.value : a.value < b.value;
}
