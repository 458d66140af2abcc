import type { Verdict } from '../grade/verdict.ts';

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
