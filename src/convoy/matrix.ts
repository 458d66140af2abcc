import type { Band } from '../grade/bands.ts';
import { bandsOf } from '../grade/bands.ts';
import { drawsThatGo } from '../grade/sureness.ts';
import type { Grounds, RungVerdict, Verdict } from '../grade/verdict.ts';
import { faultOf, groundsOf, offsetOf, rankOf, verdictOn } from '../grade/verdict.ts';
import type { TrackSlope } from '../terrain/ground.ts';
import type { Direction, Obstacle, Stretch } from '../terrain/obstacle.ts';
import { stretchOf } from '../terrain/obstacle.ts';
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

/** One obstacle for every vehicle of `vehicles`, in their order. */
export function rowOf(place: Place, vehicles: readonly Vehicle[], direction: Direction): Cell[] {
  const { obstacle, trackSlope } = place;
  const known = new Map<Stretch, Grounds>();
  const lines = obstacle.lines.map((line) => {
    const stretch = stretchOf(obstacle, line);
    const grounds = known.get(stretch) ?? groundsOf(stretch, direction, trackSlope);
    known.set(stretch, grounds);
    return { lineId: line.id, grounds, offsetM: offsetOf(line, direction) };
  });
  return vehicles.map((vehicle) => {
    const verdicts = lines.map(({ lineId, grounds, offsetM }) => ({
      lineId,
      verdict: verdictOn(vehicle, grounds, offsetM),
    }));
    let best = 0;
    verdicts.forEach(({ verdict }, i) => {
      if (better(verdict, verdicts[best].verdict)) best = i;
    });
    return { obstacleId: obstacle.id, vehicleId: vehicle.id, verdicts, best };
  });
}

/**
 * In how many of the draws each vehicle goes on the line and with the aids that its cell advises; null where not known.
 * `advised` is what the row of the obstacle advises, in the order of `vehicles`.
 */
export function surenessOf(
  place: Place,
  vehicles: readonly Vehicle[],
  advised: readonly Advised[],
  direction: Direction,
): (number | null)[] {
  const { obstacle, trackSlope } = place;
  const goesIn = new Array<number | null>(vehicles.length).fill(null);
  const asked = vehicles.map(({ values }, i) => {
    const { best, verdict } = advised[i];
    const line = obstacle.lines[best];
    return { i, stretch: stretchOf(obstacle, line), values, offsetM: offsetOf(line, direction), verdict };
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
): (Band[] | null)[] {
  const grounds = groundsOf(obstacle.stretch, direction, trackSlope);
  return vehicles.map((vehicle) =>
    faultOf(vehicle) === null
      ? bandsOf(
          vehicle.values,
          grounds,
          ladder(vehicle.values).map(({ aids }) => aids),
        )
      : null,
  );
}

/** Places in the order in which they are met; they are kept in the order of the recorded track. */
export function inOrderOfTravel<T>(places: readonly T[], direction: Direction): T[] {
  return direction === 'reversed' ? places.toReversed() : [...places];
}

export function matrixOf(
  places: readonly Place[],
  vehicles: readonly Vehicle[],
  direction: Direction,
): Matrix {
  return { cells: inOrderOfTravel(places, direction).map((place) => rowOf(place, vehicles, direction)) };
}
