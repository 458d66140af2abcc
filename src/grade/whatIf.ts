import type { Check } from '../traverse/assess.ts';
import { DRIVER_ERROR_M } from '../traverse/limits.ts';
import type { TrackSlope } from '../terrain/ground.ts';
import type { Feature } from '../terrain/feature.ts';
import type { How } from '../terrain/measure.ts';
import type { Direction, Stretch } from '../terrain/obstacle.ts';
import { featureFields } from '../terrain/feature.ts';
import { softens } from '../terrain/wear.ts';
import type { Aids } from '../vehicle/aids.ts';
import type { VehicleValues } from '../vehicle/specs.ts';
import { vehicleFields } from '../vehicle/specs.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import type { RungVerdict, Verdict } from './verdict.ts';
import { groundsOf, rankOf, verdictOn } from './verdict.ts';
import { say } from '../words/words.ts';

/** What would be said if one thing were otherwise. */
export interface Change {
  /** What would be otherwise, such as `rear locker fitted`. */
  readonly name: string;
  /** By how much, where the name has a size to it, metres; else NaN. */
  readonly amountM: number;
  /** What it leaves out or takes for granted; empty where nothing. */
  readonly grant: string;
  readonly from: RungVerdict;
  readonly to: RungVerdict;
  /** The check that limits now, as it would then be; null where it falls away. */
  readonly limitThen: Check | null;
}

/** The line that a change is tried on. */
export interface Try {
  readonly vehicle: Vehicle;
  readonly stretch: Stretch;
  readonly direction: Direction;
  readonly trackSlope: TrackSlope | null;
  /** Left of the main line in the direction of travel. */
  readonly offsetM: number;
  /** How many others of the convoy go before it. */
  readonly ahead: number;
}

/** Fill that a crew puts into a rut or a hole in a few minutes, metres. Common practice, no source. */
const FILL_M = 0.1;

/** One usual size of tyre up, on the diameter, metres. Common practice, no source. */
const ONE_SIZE_M = 0.033;

/** Angle of stones laid at the foot of a step, radians: 45°, where a heap of rock stays. Common practice, no source. */
const HEAP_RAD = Math.PI / 4;

/** Share of the pressure that is let out where the owner named no lower one. Common practice, no source. */
const LET_OUT = 0.4;

/** How far a driver misses a line whom a spotter leads by hand, metres. Common practice, no source. */
const SPOTTED_ERROR_M = 0.04;

function ladderOf(given: Try, changed: Partial<Try> = {}): Verdict {
  const { vehicle, stretch, direction, trackSlope, offsetM, ahead } = { ...given, ...changed };
  return verdictOn(vehicle, groundsOf(stretch, direction, trackSlope, ahead), offsetM);
}

/** With the aids that help most: a locker that is fitted counts even where the least rung earns the same word. */
function judged(given: Try, changed: Partial<Try> = {}): RungVerdict {
  return bestOf(ladderOf(given, changed), () => true) as RungVerdict;
}

function withValues(given: Try, changed: Partial<VehicleValues>): Partial<Try> {
  return { vehicle: { ...given.vehicle, values: { ...given.vehicle.values, ...changed } } };
}

function change(name: string, grant: string, from: RungVerdict, to: RungVerdict, amountM = NaN): Change {
  const { limit } = from;
  const then = limit !== null && from.checks.includes(limit) ? to.checks : to.worstChecks;
  return {
    name,
    amountM,
    grant,
    from,
    to,
    limitThen: then.find((check) => check.name === limit?.name) ?? null,
  };
}

/** The best of the rungs that are allowed; the least of them where equal. Null where none is. */
function bestOf(verdict: Verdict, allowed: (aids: Aids) => boolean): RungVerdict | null {
  const rungs = verdict.ladder.filter(({ rung }) => allowed(rung.aids));
  return rungs.length === 0 ? null : rungs.reduce((best, next) => (nearer(next, best) < 0 ? next : best));
}

/** Negative where `a` says better than `b`: by its word, then by the margin that decides it, in tolerances. */
function nearer(a: RungVerdict, b: RungVerdict): number {
  return rankOf(a.word) - rankOf(b.word) || ease(b) - ease(a);
}

function ease({ limit }: RungVerdict): number {
  return limit === null ? -1e9 : limit.margin / limit.tolerance;
}

/** How much better a change makes it: steps of the verdict first, then tolerances of the deciding margin. */
export function gainOf({ from, to }: Change): { readonly words: number; readonly ease: number } {
  return { words: rankOf(from.word) - rankOf(to.word), ease: ease(to) - ease(from) };
}

/**
 * What could be otherwise about vehicle, driver and ground, each tried alone through the whole traverse with the aids
 * that help most, the best gain first. What the vehicle has already is told by the rungs with it against those without.
 */
export function whatIf(given: Try): Change[] {
  const ladder = ladderOf(given);
  if (ladder.word === 'not known') return [];
  const now = bestOf(ladder, () => true) as RungVerdict;
  const changes = [...aidChanges(given, ladder, now), ...groundChanges(given, now), ...driverChanges(given)];
  return changes.toSorted((a, b) => {
    const [x, y] = [gainOf(a), gainOf(b)];
    return y.words - x.words || y.ease - x.ease;
  });
}

function aidChanges(given: Try, ladder: Verdict, now: RungVerdict): Change[] {
  const v = given.vehicle.values;
  const changes: Change[] = [];
  const fitted = (name: string, grant: string, changed: Partial<VehicleValues>, amountM = NaN) =>
    changes.push(change(name, grant, now, judged(given, withValues(given, changed)), amountM));
  /** What can be left unused: never worse than without it. */
  const optional = (name: string, grant: string, changed: Partial<VehicleValues>) => {
    const then = judged(given, withValues(given, changed));
    changes.push(change(name, grant, now, nearer(then, now) < 0 ? then : now));
  };
  const engaged = (name: string, has: (aids: Aids) => boolean) => {
    const without = bestOf(ladder, (aids) => !has(aids));
    const engagedBest = bestOf(ladder, has);
    if (without !== null && engagedBest !== null) changes.push(change(name, '', without, engagedBest));
  };
  if (v.rearDifferential === 'locker') engaged(say.whatIf.rearEngaged, (aids) => aids.rearLocked);
  else if (v.drive !== 'front') optional(say.whatIf.rearFitted, '', { rearDifferential: 'locker' });
  if (v.frontDifferential === 'locker') engaged(say.whatIf.frontEngaged, (aids) => aids.frontLocked);
  else if (v.drive !== 'rear') optional(say.whatIf.frontFitted, '', { frontDifferential: 'locker' });
  if (v.lowPressurePa < v.tyrePressurePa) engaged(say.whatIf.tyresDown, (aids) => aids.airedDown);
  else
    optional(say.whatIf.tyresDownBy, say.whatIf.tyresDownGrant, {
      lowPressurePa: Math.max(vehicleFields.lowPressurePa.min, v.tyrePressurePa * (1 - LET_OUT)),
    });
  if (v.tyreDiameterM + ONE_SIZE_M <= vehicleFields.tyreDiameterM.max)
    fitted(say.whatIf.biggerTyres, say.whatIf.biggerTyresGrant, biggerTyres(v), ONE_SIZE_M);
  if (v.roofLoadKg > 0) fitted(say.whatIf.nothingOnRoof, '', { roofLoadKg: 0 });
  return changes;
}

/** 33 mm more diameter lifts everything but the axles' own middle by half of that. */
function biggerTyres(v: VehicleValues): Partial<VehicleValues> {
  const up = ONE_SIZE_M / 2;
  return {
    tyreDiameterM: v.tyreDiameterM + ONE_SIZE_M,
    heightM: v.heightM + up,
    bellyHeightM: v.bellyHeightM + up,
    sillHeightM: v.sillHeightM + up,
    frontDifferentialHeightM: v.frontDifferentialHeightM + up,
    rearDifferentialHeightM: v.rearDifferentialHeightM + up,
    massHeightM: v.massHeightM + up,
    roofLoadHeightM: v.roofLoadHeightM + up,
    floorHeightM: v.floorHeightM + up,
  };
}

function groundChanges(given: Try, now: RungVerdict): Change[] {
  const { stretch } = given;
  const changes: Change[] = [];
  const otherwise = (name: string, grant: string, changed: Stretch, amountM = NaN) =>
    changes.push(change(name, grant, now, judged(given, { stretch: changed }), amountM));
  const shaped = (shape: (feature: Feature) => Feature) => ({
    ...stretch,
    features: stretch.features.map(shape),
  });
  if (stretch.features.some(isCut))
    otherwise(say.whatIf.fillIn, say.whatIf.fillInGrant, shaped(filled), FILL_M);
  if (stretch.features.some((feature) => feature.kind === 'ledge' && feature.faceRad > HEAP_RAD))
    otherwise(say.whatIf.stones, say.whatIf.stonesGrant, shaped(heaped));
  if (stretch.surface.condition === 'wet')
    otherwise(say.whatIf.dry, '', { ...stretch, surface: { ...stretch.surface, condition: 'dry' } });
  else otherwise(say.whatIf.wet, '', { ...stretch, surface: { ...stretch.surface, condition: 'wet' } });
  if (given.ahead > 0 && softens(stretch))
    changes.push(change(say.whatIf.first, say.whatIf.firstGrant, now, judged(given, { ahead: 0 })));
  if (numbersOf(stretch).some((path) => looser(stretch.hows[path])))
    otherwise(say.whatIf.taped, say.whatIf.tapedGrant, {
      ...stretch,
      hows: { ...stretch.hows, ...Object.fromEntries(numbersOf(stretch).map((path) => [path, 'taped'])) },
    });
  return changes;
}

function looser(how: How | undefined): boolean {
  return how === undefined || how === 'by eye' || how === 'paced';
}

function isCut({ kind }: Feature): boolean {
  return kind === 'rut' || kind === 'hole' || kind === 'ditch';
}

function filled(feature: Feature): Feature {
  if (feature.kind !== 'rut' && feature.kind !== 'hole' && feature.kind !== 'ditch') return feature;
  const least = featureFields[feature.kind].depthM;
  const minM = least.kind === 'number' ? least.min : 0;
  return { ...feature, depthM: Math.max(minM, feature.depthM - FILL_M) };
}

function heaped(feature: Feature): Feature {
  return feature.kind === 'ledge' ? { ...feature, faceRad: Math.min(feature.faceRad, HEAP_RAD) } : feature;
}

/** Paths of all numbers of a stretch whose ± depends on how they were got. */
function numbersOf(stretch: Stretch): string[] {
  const plane = Object.entries(stretch.plane).flatMap(([name, value]) =>
    value === null ? [] : [`plane.${name}`],
  );
  const shapes = stretch.features.flatMap((feature, i) =>
    Object.entries(featureFields[feature.kind]).flatMap(([name, field]) =>
      field.kind === 'number' ? [`features.${i}.${name}`] : [],
    ),
  );
  return [...plane, 'corridor.leftM', 'corridor.rightM', 'corridor.headroomM', ...shapes];
}

/** Judges the line moved aside; no offset twice. */
function asideOf(given: Try): (asideM: number) => RungVerdict {
  const known = new Map<number, RungVerdict>();
  return (asideM) => {
    const found = known.get(asideM) ?? judged(given, { offsetM: given.offsetM + asideM });
    known.set(asideM, found);
    return found;
  };
}

/** The worst that a driver meets who aims so far beside the line and misses that by `errorM` to either side. */
function missed(aside: (asideM: number) => RungVerdict, errorM: number, aimM = 0): RungVerdict {
  return [aimM - errorM, aimM, aimM + errorM]
    .map(aside)
    .reduce((worst, next) => (nearer(next, worst) > 0 ? next : worst));
}

/**
 * A spotter sees every wheel: the driver is held closer to the line, and to whichever one is best of those that the
 * driver alone might have met.
 */
function spotted(aside: (asideM: number) => RungVerdict): RungVerdict {
  return [-1, -0.5, 0, 0.5, 1]
    .map((part) => missed(aside, SPOTTED_ERROR_M, part * (DRIVER_ERROR_M - SPOTTED_ERROR_M)))
    .reduce((best, next) => (nearer(next, best) < 0 ? next : best));
}

function driverChanges(given: Try): Change[] {
  const aside = asideOf(given);
  const from = missed(aside, DRIVER_ERROR_M);
  const halved = missed(aside, DRIVER_ERROR_M / 2);
  return [
    change(say.whatIf.errorHalved, say.whatIf.errorHalvedGrant, from, halved, DRIVER_ERROR_M),
    change(say.whatIf.spotter, say.whatIf.spotterGrant, from, spotted(aside), SPOTTED_ERROR_M),
  ];
}
