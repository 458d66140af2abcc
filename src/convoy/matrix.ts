import type { Verdict } from '../grade/verdict.ts';
import { rankOf, verdictOf } from '../grade/verdict.ts';
import type { TrackSlope } from '../terrain/ground.ts';
import type { Direction, Obstacle } from '../terrain/obstacle.ts';
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

export function cellOf(place: Place, vehicle: Vehicle, direction: Direction): Cell {
  const { obstacle, trackSlope } = place;
  const verdicts = obstacle.lines.map((line) => ({
    lineId: line.id,
    verdict: verdictOf(vehicle, obstacle, line, direction, trackSlope),
  }));
  let best = 0;
  verdicts.forEach(({ verdict }, i) => {
    if (better(verdict, verdicts[best].verdict)) best = i;
  });
  return { obstacleId: obstacle.id, vehicleId: vehicle.id, verdicts, best };
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
  return {
    cells: inOrderOfTravel(places, direction).map((place) =>
      vehicles.map((vehicle) => cellOf(place, vehicle, direction)),
    ),
  };
}
