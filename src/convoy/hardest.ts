import { rankOf } from '../grade/verdict.ts';
import type { VerdictWord } from '../grade/verdict.ts';
import type { Cell } from './matrix.ts';

/** Where a convoy fares worst: the verdict, and the first vehicle and place that have it. */
export interface Hardest {
  readonly word: VerdictWord;
  readonly obstacleId: string;
  readonly vehicleId: string;
  /** Vehicles that do no better than this anywhere on the way. */
  readonly vehicles: number;
}

/** The worst of the best lines of all cells; null where there is no cell. What is not known counts as worst. */
export function hardestOf(cells: readonly Cell[]): Hardest | null {
  const words = cells.map(({ verdicts, best }) => verdicts[best].verdict.word);
  if (words.length === 0) return null;
  const worst = words.reduce((at, word, i) => (rankOf(word) > rankOf(words[at]) ? i : at), 0);
  const { obstacleId, vehicleId } = cells[worst];
  const word = words[worst];
  const vehicles = new Set(cells.filter((_, i) => words[i] === word).map((cell) => cell.vehicleId)).size;
  return { word, obstacleId, vehicleId, vehicles };
}
