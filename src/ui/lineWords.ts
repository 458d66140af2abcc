import { lineTag, openText } from '../brief/lineText.ts';
import { goesSomehow, wordClass } from '../brief/verdictText.ts';
import type { Cell } from '../convoy/matrix.ts';
import { openTo } from '../convoy/openTo.ts';
import { markSvg } from '../draw/mark.ts';
import type { Fare, LineWords } from '../map/subject.ts';
import type { Direction, Line, Obstacle } from '../terrain/obstacle.ts';
import type { System } from '../units.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import { say } from '../words/words.ts';

/** Breadth of a verdict's mark at a pin. */
const MARK_PX = 22;

/** Beside each line but the main line: which it is, and the track widths of the convoy that it is open to. */
export function wordsForConvoy(
  { lines }: Obstacle,
  vehicles: readonly Vehicle[],
  cells: readonly Cell[],
  direction: Direction,
  system: System,
): [Line, LineWords][] {
  return lines
    .filter(({ kind }) => kind !== 'main')
    .map((line) => [
      line,
      {
        call: lineTag(line, direction, system),
        note: openText(openTo(line.id, vehicles, cells), system),
      },
    ]);
}

/** Beside each line where there is a choice: which it is, and the verdict of one vehicle on it, once that is known. */
export function wordsForOne(
  { lines }: Obstacle,
  cell: Cell | undefined,
  direction: Direction,
  system: System,
): [Line, LineWords][] {
  if (lines.length < 2) return [];
  return lines.map((line) => {
    const verdict = cell?.verdicts.find(({ lineId }) => lineId === line.id)?.verdict;
    return [line, { call: lineTag(line, direction, system), note: verdict ? say.verdict[verdict.word] : '' }];
  });
}

/** How one vehicle fares at an obstacle, for its pin: the word is written where more is asked than to drive on. */
export function fareOf(obstacle: Obstacle, cell: Cell, name: string): Fare {
  const { lineId, verdict } = cell.verdicts[cell.best];
  const line = goesSomehow(verdict.word) ? obstacle.lines.find(({ id }) => id === lineId) : undefined;
  const on = line && obstacle.lines.length > 1 ? line.name : '';
  return {
    line: line ?? null,
    word: verdict.word === 'goes' ? '' : say.verdict[verdict.word],
    spoken: say.map.faresOn(name || say.map.theVehicle, say.verdict[verdict.word], on),
    mark: markSvg(verdict.word, MARK_PX),
    fill: wordClass(verdict.word),
  };
}
