import type { Band } from '../grade/bands.ts';
import { bandsOf } from '../grade/bands.ts';
import { drawsThatGo } from '../grade/sureness.ts';
import type { Grounds, RungVerdict, Verdict } from '../grade/verdict.ts';
import { faultOf, groundsOf, offsetOf, rankOf, verdictOn } from '../grade/verdict.ts';
import type { TrackSlope } from '../terrain/ground.ts';
import type { Direction, Obstacle, Stretch } from '../terrain/obstacle.ts';
import { stretchOf } from '../terrain/obstacle.ts';
import { softened, softens } from '../terrain/wear.ts';
import { ladder } from '../vehicle/aids.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';

/** An obstacle with what the track's elevations say of the slope there, if they say anything. */
export interface Place {
  readonly obstacle: Obstacle;
  readonly trackSlope: TrackSlope | null;
}

/** One obstacle for one vehicle: a verdict on each line, and the line to take. */
export interface Cell {
  readonly obstacleId: string;
  readonly vehicleId: string;
  /** In the order of the obstacle's lines. */
  readonly verdicts: readonly { readonly lineId: string; readonly verdict: Verdict }[];
  /** Index into `verdicts` of the line with the best word, then the fewest aids, then the greatest margin. */
  readonly best: number;
  /** In how many of the draws that line goes with those aids; null where not known, absent until it was asked. */
  readonly goesIn?: number | null;
  /** Where it goes on the ground of the main line, moved sideways, with whatever aids it has; absent until it was asked. */
  readonly bands?: readonly Band[] | null;
}

/** Whether the vehicle gets past without a pull, on the line that is advised. */
export function passesUnaided({ verdicts, best }: Cell): boolean {
  return rankOf(verdicts[best].verdict.word) <= rankOf('needs momentum');
}

/** What a cell advises: the line to take, and what is said of it there. All that is asked for how sure it is. */
export interface Advised {
  readonly best: number;
  readonly verdict: RungVerdict;
}

export function advisedBy({ best, verdicts }: Cell): Advised {
  const { rung, word, cause, limit, checks, worstChecks, entrySpeedMps, pullN } = verdicts[best].verdict;
  return { best, verdict: { rung, word, cause, limit, checks, worstChecks, entrySpeedMps, pullN } };
}

/** Obstacles down in order of travel, vehicles across in convoy order. */
export interface Matrix {
  readonly cells: readonly (readonly Cell[])[];
}

/** Rungs above the first that the verdict asks for. */
function rungsUp(verdict: Verdict): number {
  return verdict.ladder.findIndex((step) => step.rung === verdict.rung);
}

/** Margin of the deciding check in its own tolerances, so that unlike checks can be compared. */
function ease(verdict: Verdict): number {
  return verdict.limit === null ? -Infinity : verdict.limit.margin / verdict.limit.tolerance;
}

function better(a: Verdict, b: Verdict): boolean {
  const rank = rankOf(a.word) - rankOf(b.word);
  if (rank !== 0) return rank < 0;
  const rungs = rungsUp(a) - rungsUp(b);
  return rungs !== 0 ? rungs < 0 : ease(a) > ease(b);
}

/** How many of a convoy go before each of its vehicles. */
export function aheadOf(convoy: readonly Vehicle[]): number[] {
  return convoy.map((_, place) => place);
}

/** Whether an obstacle has a line on which vehicles leave the ground softer for those behind. */
export function softensAnywhere(obstacle: Obstacle): boolean {
  return obstacle.lines.some((line) => softens(stretchOf(obstacle, line)));
}

/**
 * One obstacle for every vehicle of `vehicles`, in their order. `ahead` is how many others go before each of them: soft
 * ground is judged as they leave it; each as the first unless given.
 */
export function rowOf(
  place: Place,
  vehicles: readonly Vehicle[],
  direction: Direction,
  ahead: readonly number[] = [],
): Cell[] {
  const { obstacle, trackSlope } = place;
  const known = new Map<Stretch, Map<number, Grounds>>();
  const groundsAfter = (stretch: Stretch, passes: number): Grounds => {
    const borne = softens(stretch) ? passes : 0;
    const after = known.get(stretch) ?? new Map<number, Grounds>();
    const grounds = after.get(borne) ?? groundsOf(stretch, direction, trackSlope, borne);
    known.set(stretch, after.set(borne, grounds));
    return grounds;
  };
  return vehicles.map((vehicle, i) => {
    const verdicts = obstacle.lines.map((line) => {
      const grounds = groundsAfter(stretchOf(obstacle, line), ahead[i] ?? 0);
      return { lineId: line.id, verdict: verdictOn(vehicle, grounds, offsetOf(line, direction)) };
    });
    let best = 0;
    verdicts.forEach(({ verdict }, i) => {
      if (better(verdict, verdicts[best].verdict)) best = i;
    });
    return { obstacleId: obstacle.id, vehicleId: vehicle.id, verdicts, best };
  });
}

/**
 * In how many of the draws each vehicle goes on the line and with the aids that its cell advises; null where not known.
 * `advised` is what the row of the obstacle advises, in the order of `vehicles`; `ahead` as there.
 */
export function surenessOf(
  place: Place,
  vehicles: readonly Vehicle[],
  advised: readonly Advised[],
  direction: Direction,
  ahead: readonly number[] = [],
): (number | null)[] {
  const { obstacle, trackSlope } = place;
  const goesIn = new Array<number | null>(vehicles.length).fill(null);
  const asked = vehicles.map(({ values }, i) => {
    const { best, verdict } = advised[i];
    const line = obstacle.lines[best];
    const stretch = softened(stretchOf(obstacle, line), ahead[i] ?? 0);
    return { i, stretch, values, offsetM: offsetOf(line, direction), verdict };
  });
  for (const stretch of new Set(asked.map((one) => one.stretch))) {
    const there = asked.filter((one) => one.stretch === stretch);
    drawsThatGo(there, stretch, direction, trackSlope).forEach((count, k) => (goesIn[there[k].i] = count));
  }
  return goesIn;
}

/** Where each vehicle can be moved sideways on the ground of the main line and go; null where not known. */
export function bandsOver(
  { obstacle, trackSlope }: Place,
  vehicles: readonly Vehicle[],
  direction: Direction,
  ahead: readonly number[] = [],
): (Band[] | null)[] {
  const asFirst = groundsOf(obstacle.stretch, direction, trackSlope);
  const groundsAfter = (passes: number) =>
    passes > 0 && softens(obstacle.stretch)
      ? groundsOf(obstacle.stretch, direction, trackSlope, passes)
      : asFirst;
  return vehicles.map((vehicle, i) =>
    faultOf(vehicle) === null
      ? bandsOf(
          vehicle.values,
          groundsAfter(ahead[i] ?? 0),
          ladder(vehicle.values).map(({ aids }) => aids),
        )
      : null,
  );
}

/** Places in the order in which they are met; they are kept in the order of the recorded track. */
export function inOrderOfTravel<T>(places: readonly T[], direction: Direction): T[] {
  return direction === 'reversed' ? places.toReversed() : [...places];
}

/** Every vehicle at its place in the convoy. */
export function matrixOf(
  places: readonly Place[],
  vehicles: readonly Vehicle[],
  direction: Direction,
): Matrix {
  const ahead = aheadOf(vehicles);
  return {
    cells: inOrderOfTravel(places, direction).map((place) => rowOf(place, vehicles, direction, ahead)),
  };
}
