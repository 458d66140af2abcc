import { expect, it } from 'vitest';
import { briefingOf } from '../../src/brief/brief.ts';
import { obstacleBlock } from '../../src/brief/obstacleBlock.ts';
import type { Matrix } from '../../src/convoy/matrix.ts';
import { matrix, order, outing, places } from './outing.ts';

/** The matrix of the outing with a verdict for every line, that of each vehicle's best. */
function onEveryLine(about: ReturnType<typeof outing>): Matrix {
  return {
    cells: matrix(about).cells.map((row) =>
      row.map((cell) => ({
        ...cell,
        best: 0,
        verdicts: about.obstacles[0].lines.map(({ id }) => ({ ...cell.verdicts[cell.best], lineId: id })),
      })),
    ),
  };
}

it('the lines of an obstacle are told with the track widths that they are open to', () => {
  const about = outing();
  const { stops } = briefingOf(about, places(about), onEveryLine(about), order(about));
  const text = obstacleBlock(stops[0], 'as recorded', 'metric').markup;
  expect(text).toMatch(
    /Lines: 40 cm left of main line \(track width \d\.\d\d m, not Wren\); bypass: upper way \(track width/,
  );
});

it('and without where a verdict is missing', () => {
  const about = outing();
  const { stops } = briefingOf(about, places(about), matrix(about), order(about));
  expect(obstacleBlock(stops[0], 'as recorded', 'metric').markup).toMatch(
    /Lines: 40 cm left of main line; bypass: upper way\./,
  );
});
