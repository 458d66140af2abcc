import type { FieldTable } from '../field.ts';
import type { Matrix, Place } from '../convoy/matrix.ts';
import { inOrderOfTravel } from '../convoy/matrix.ts';
import type { OpenTo } from '../convoy/openTo.ts';
import { openTo } from '../convoy/openTo.ts';
import type { Order } from '../convoy/order.ts';
import type { Recovery } from '../convoy/recovery.ts';
import { recoveryOn } from '../convoy/recovery.ts';
import type { Verdict } from '../grade/verdict.ts';
import { offsetOf } from '../grade/verdict.ts';
import type { Problem } from '../problem.ts';
import type { SlopeProfile } from '../route/slope.ts';
import { slopeOf } from '../route/slope.ts';
import type { Track } from '../route/track.ts';
import { checkObstacle } from '../terrain/check.ts';
import { featureFields } from '../terrain/feature.ts';
import type { KnownSlope } from '../terrain/ground.ts';
import { knownSlope } from '../terrain/ground.ts';
import { reversedCorridor, reversedFeature } from '../terrain/reverse.ts';
import type { Direction, Line, Obstacle, Stretch } from '../terrain/obstacle.ts';
import { corridorFields, planeFields, stretchOf } from '../terrain/obstacle.ts';
import { presetText } from '../terrain/preset.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import { engineOf } from './descentText.ts';
import type { GradeTold } from './gradeTold.ts';
import type { Spotter } from './spotter.ts';
import { spotterFor } from './spotter.ts';
import type { StoppedOn } from './stopped.ts';
import { stoppedOn } from './stopped.ts';

/** What a briefing is about; a trip is one. */
export interface Outing {
  readonly name: string;
  readonly note: string;
  /** Empty where none is agreed. */
  readonly radioChannel: string;
  readonly direction: Direction;
  readonly track: Track | null;
  readonly obstacles: readonly Obstacle[];
  readonly vehicles: readonly Vehicle[];
}

/** One vehicle at one obstacle: the line to take, what is said of it, and who helps where it needs a pull. */
export interface Answer {
  readonly vehicle: Vehicle;
  readonly line: Line;
  /** The ground of the line as the convoy comes to it, and how far left of its main line the vehicle is to be. */
  readonly stretch: Stretch;
  readonly offsetM: number;
  readonly verdict: Verdict;
  /** In how many of the draws it goes; null where not known or not asked. */
  readonly goesIn: number | null;
  readonly recovery: Recovery | null;
  readonly spotter: Spotter;
  readonly stoppedOn: readonly StoppedOn[];
}

/** One obstacle as it is met. */
export interface Stop {
  /** From 1, in order of travel. */
  readonly number: number;
  readonly obstacle: Obstacle;
  /** The ground as it is met: left, right, up and down as the convoy comes to it. */
  readonly stretch: Stretch;
  /** Along the track from where the convoy sets off; from its first point where there is no track. */
  readonly distanceM: number;
  /** In the direction of travel; null where nobody knows it. */
  readonly slope: KnownSlope | null;
  /** In convoy order. */
  readonly answers: readonly Answer[];
  /** To whom of the convoy each line is open, by line id; null where that is not known. */
  readonly open: ReadonlyMap<string, OpenTo | null>;
  /** Sizes that cannot be true, or not together. */
  readonly doubts: readonly Problem[];
  /** Of the values that were measured, how many only by eye. */
  readonly byEye: { readonly values: number; readonly of: number };
}

/** What one driver has to know: every obstacle in order of travel. */
export interface Card {
  readonly vehicle: Vehicle;
  readonly calls: readonly Call[];
}

/** One obstacle for one driver. */
export interface Call {
  readonly stop: Stop;
  readonly answer: Answer;
  /** Taken as it comes, on the main line, and not down a slope: nothing is asked of the driver. */
  readonly isPlain: boolean;
}

/** A briefing in the order in which it is spoken. */
export interface Briefing {
  readonly outing: Outing;
  /** 0 without a track. */
  readonly trackLengthM: number;
  /** In the recorded direction; null without a track. */
  readonly profile: SlopeProfile | null;
  /** The order in which most go unaided, and why. */
  readonly order: Order;
  readonly stops: readonly Stop[];
  /** In convoy order. */
  readonly cards: readonly Card[];
  /** Null where it was not asked for, or there is nothing to grade. */
  readonly grade: GradeTold | null;
}

/**
 * The briefing of an outing; `places` in the order of the recorded track, `matrix` as `matrixOf` and `order` as `orderFor`
 * give them for those.
 */
export function briefingOf(
  outing: Outing,
  places: readonly Place[],
  matrix: Matrix,
  order: Order,
  grade: GradeTold | null = null,
): Briefing {
  const { track, direction, vehicles } = outing;
  const trackLengthM = track === null || track.length === 0 ? 0 : track.distanceM[track.length - 1];
  const stops = inOrderOfTravel(places, direction).map((place, i): Stop => {
    const { obstacle, trackSlope } = place;
    const reversed = direction === 'reversed';
    return {
      number: i + 1,
      obstacle,
      stretch: asMet(obstacle.stretch, reversed),
      distanceM: reversed && track !== null ? trackLengthM - obstacle.stationM : obstacle.stationM,
      slope: turned(knownSlope(obstacle.stretch, trackSlope), reversed),
      answers: matrix.cells[i].map(({ verdicts, best, goesIn = null }, v) => {
        const { lineId, verdict } = verdicts[best];
        const line = obstacle.lines.find(({ id }) => id === lineId) ?? obstacle.lines[0];
        const ground = stretchOf(obstacle, line);
        const stretch = asMet(ground, reversed);
        const slopeRad = turned(knownSlope(ground, trackSlope), reversed)?.slopeRad ?? null;
        const offsetM = offsetOf(line, direction);
        const recovery = recoveryOn(place, line, direction, vehicles[v], verdict, vehicles, matrix.cells[i]);
        return {
          vehicle: vehicles[v],
          line,
          stretch,
          offsetM,
          verdict,
          goesIn,
          recovery,
          spotter: spotterFor(stretch, slopeRad, offsetM, vehicles[v].values.widthM),
          stoppedOn: stoppedOn(stretch, slopeRad),
        };
      }),
      open: new Map(obstacle.lines.map(({ id }) => [id, openTo(id, vehicles, matrix.cells[i])])),
      doubts: checkObstacle(obstacle, obstacle.name || presetText(obstacle.preset)),
      byEye: byEye(obstacle.stretch),
    };
  });
  const cards = vehicles.map((vehicle, v) => cardOf(vehicle, v, stops));
  const profile = track === null || track.length === 0 ? null : slopeOf(track);
  return { outing, trackLengthM, profile, order, stops, cards, grade };
}

function cardOf(vehicle: Vehicle, v: number, stops: readonly Stop[]): Card {
  const calls = stops.map((stop) => ({ stop, answer: stop.answers[v], isPlain: isPlain(stop.answers[v]) }));
  return { vehicle, calls };
}

function isPlain({ verdict, line }: Answer): boolean {
  return (
    verdict.word === 'goes' &&
    verdict.rung === verdict.ladder[0].rung &&
    line.kind === 'main' &&
    engineOf(verdict) === null
  );
}

/** A slope in the direction of travel. */
export function turned(slope: KnownSlope | null, reversed: boolean): KnownSlope | null {
  return slope && reversed ? { ...slope, slopeRad: -slope.slopeRad } : slope;
}

/** Shapes and camber as the convoy comes to them. What paths name stays as recorded, so `hows` is left out. */
export function asMet(stretch: Stretch, reversed: boolean): Stretch {
  if (!reversed) return stretch;
  const { slopeRad, camberRad } = stretch.plane;
  return {
    ...stretch,
    plane: { slopeRad: slopeRad && -slopeRad, camberRad: camberRad && -camberRad },
    corridor: reversedCorridor(stretch.corridor),
    features: stretch.features.map(reversedFeature),
    hows: {},
  };
}

function byEye({ plane, features, hows }: Stretch): Stop['byEye'] {
  const paths = [
    ...Object.keys(planeFields)
      .filter((name) => plane[name as keyof typeof plane] !== null)
      .map((name) => `plane.${name}`),
    ...measuredIn(corridorFields).map((name) => `corridor.${name}`),
    ...features.flatMap(({ kind }, i) =>
      measuredIn(featureFields[kind]).map((name) => `features.${i}.${name}`),
    ),
  ];
  return { values: paths.filter((path) => (hows[path] ?? 'by eye') === 'by eye').length, of: paths.length };
}

/** Names of what is measured; a count is not. */
function measuredIn(fields: FieldTable): string[] {
  return Object.entries(fields)
    .filter(([, field]) => field.kind === 'number' && field.quantity !== 'number')
    .map(([name]) => name);
}
