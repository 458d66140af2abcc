import type { TrackSlope } from '../terrain/ground.ts';
import type { Direction, Obstacle } from '../terrain/obstacle.ts';
import { stretchOf } from '../terrain/obstacle.ts';
import { assessTraverse } from '../traverse/traverse.ts';
import { rad } from '../units.ts';
import type { VehicleField, VehicleValues } from '../vehicle/specs.ts';
import { vehicleFields } from '../vehicle/specs.ts';
import type { Season } from './classification.ts';
import { referenceRungs, referenceVehicle } from './reference.ts';
import { groundsIn } from './season.ts';
import type { Grounds, RungVerdict } from './verdict.ts';
import { groundsOf, offsetOf, rankOf, verdictOn } from './verdict.ts';

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

/** What it takes to go past one obstacle by any of its lines, in one direction and season. */
export interface Requirement {
  readonly obstacleId: string;
  /** Null where the ground is not known. */
  readonly needs: Readonly<Record<NeedName, Need>> | null;
  /** Name of the least rung of the reference, lockers fitted, that goes; null where none does. */
  readonly rung: string | null;
  /** How many rungs it is up from the first; Infinity where none goes. */
  readonly rungsUp: number;
}

/** All of a track's requirements in one line, and which obstacle asks most of each. */
export interface TrackRequirement {
  /** Of the obstacles that something goes past; null where there are none such. */
  readonly needs: Readonly<Record<NeedName, Need & { readonly obstacleId: string }>> | null;
  readonly rung: string | null;
  readonly rungSetBy: string | null;
  /** Obstacles that the reference does not go past, whatever one thing is varied: nothing above speaks of them. */
  readonly stops: readonly string[];
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

/** Rounded, as sums of steps are binary fractions: the end of a range is to be met. */
function shifted(fields: readonly VehicleField[], by: number): Partial<VehicleValues> {
  const sum = (name: VehicleField) => Number(((REFERENCE_VALUES[name] as number) + by).toFixed(9));
  return Object.fromEntries(fields.map((name) => [name, sum(name)]));
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
  return Number((VARIED[name].has + steps * VARIED[name].stepSi).toFixed(9));
}

/** Whether such a vehicle goes past, by any line. */
type Goes = (values: VehicleValues) => boolean;

/** One line with its grounds: of a wet season, also as it was entered. */
interface Way {
  readonly grounds: readonly Grounds[];
  readonly offsetM: number;
}

/**
 * Found by taking the reference past by the main line, else by the others, one thing varied at a time, a step at a time:
 * from what it has towards less as long as it goes, or, where it does not go, towards more until it does. Every step in
 * between was tried, so that what is told goes, and nothing between it and the reference fails. Where nothing does by any
 * amount, none is found.
 */
export function requirementOf(
  obstacle: Obstacle,
  trackSlope: TrackSlope | null,
  direction: Direction,
  season: Season,
): Requirement {
  const ways = obstacle.lines.map((line): Way => ({
    grounds: groundsIn(season, stretchOf(obstacle, line)).map((stretch) =>
      groundsOf(stretch, direction, trackSlope),
    ),
    offsetM: offsetOf(line, direction),
  }));
  const known = ways.filter(({ grounds }) => grounds.every(({ entered }) => entered !== null));
  if (known.length === 0) return { obstacleId: obstacle.id, needs: null, rung: null, rungsUp: Infinity };
  const rungs = known.flatMap((way) => rungThatGoes(REFERENCE_VALUES, way) ?? []);
  const least = rungs.length === 0 ? null : rungs.reduce((a, b) => (b.up < a.up ? b : a));
  const goes: Goes = (values) => known.some((way) => rungThatGoes(values, way) !== null);
  const entries = NEEDS.map((name) => [name, walked(name, least !== null, goes)] as const);
  return {
    obstacleId: obstacle.id,
    needs: Object.fromEntries(entries) as Record<NeedName, Need>,
    rung: least?.name ?? null,
    rungsUp: least?.up ?? Infinity,
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

/** The least rung with which it goes by a line, with care or without. Tyres down come after all lockers, as in the ladder. */
function rungThatGoes(values: VehicleValues, { grounds, offsetM }: Way): RungUp | null {
  const vehicle = { ...referenceVehicle('wagon'), values };
  let up = 0;
  for (const tyresDown of [false, true]) {
    const rungs = referenceRungs(values, tyresDown);
    const goes = rungs.map(() => true);
    for (const ground of grounds) {
      const { ladder } = verdictOn(vehicle, ground, offsetM, assessTraverse, rungs);
      ladder.forEach((said, i) => (goes[i] &&= goesAlone(said)));
      if (!goes.includes(true)) break;
    }
    const at = goes.indexOf(true);
    if (at >= 0) return { name: tyresDown ? 'tyres down' : rungs[at].name, up: up + at };
    up += rungs.length;
  }
  return null;
}

function goesAlone({ word }: RungVerdict): boolean {
  return rankOf(word) <= rankOf('goes with care');
}

/** What a vehicle must have for all of some obstacles: of each thing what the obstacle asks that asks most. */
export function requirementOfTrack(all: readonly Requirement[]): TrackRequirement {
  const idsOf = (some: readonly Requirement[]) => some.map(({ obstacleId }) => obstacleId);
  const isOpen = ({ needs }: Requirement) => needs !== null && NEEDS.some((name) => needs[name].found);
  const open = all.filter(isOpen);
  const notKnown = idsOf(all.filter(({ needs }) => needs === null));
  const stops = idsOf(all.filter((one) => one.needs !== null && !isOpen(one)));
  if (open.length === 0) return { needs: null, rung: null, rungSetBy: null, stops, notKnown };
  const entries = NEEDS.map((name) => {
    const each = open.map(({ obstacleId, needs }) => ({
      ...(needs as Record<NeedName, Need>)[name],
      obstacleId,
    }));
    return [name, each.reduce((most, next) => (asksMore(name, next, most) ? next : most))] as const;
  });
  const byRung = open.filter(({ rung }) => rung !== null);
  const hardest = byRung.reduce<Requirement | null>(
    (most, next) => (most === null || next.rungsUp > most.rungsUp ? next : most),
    null,
  );
  return {
    needs: Object.fromEntries(entries) as Record<NeedName, Need & { readonly obstacleId: string }>,
    rung: hardest?.rung ?? null,
    rungSetBy: hardest?.obstacleId ?? null,
    stops,
    notKnown,
  };
}

/** Where one thing does not help but another does, the other is asked for. */
function asksMore(name: NeedName, a: Need, b: Need): boolean {
  if (!a.found || !b.found) return a.found && !b.found;
  return VARIED[name].seeks === -1 ? a.value > b.value : a.value < b.value;
}
