import { expect, it } from 'vitest';
import { LEAST_TRIALS } from '../../src/grade/adhesion.ts';
import { groundsTold } from '../../src/grade/groundTold.ts';
import type { Surface } from '../../src/terrain/surface.ts';
import { gripOf } from '../../src/terrain/surface.ts';

const CLAY: Surface = { material: 'clay', condition: 'dry' };
const SAND: Surface = { material: 'sand', condition: 'dry' };

/** As many tries at each of some needs, of which those up to `truth` went. */
function tries(surface: Surface, truth: number, count: number) {
  return Array.from({ length: count }, (_, i) => {
    const needed = truth - 0.3 + (0.6 * (i + 0.5)) / count;
    return { surface, trial: { needed, went: needed <= truth } };
  });
}

it('grounds are told apart, that of which most is known first', () => {
  const told = groundsTold([...tries(SAND, 0.35, 8), ...tries(CLAY, 0.55, 12)]);
  expect(told.map(({ surface, trials }) => [surface.material, trials])).toEqual([
    ['clay', 12],
    ['sand', 8],
  ]);
});

it('few tries on a ground say nothing of it', () => {
  const [{ estimate, against, trials }] = groundsTold(tries(CLAY, 0.5, LEAST_TRIALS - 1));
  expect([estimate, against, trials]).toEqual([null, null, LEAST_TRIALS - 1]);
});

it('tables are contradicted only by the whole interval', () => {
  const { low, high, usual } = gripOf(CLAY).peak;
  const against = (truth: number) => groundsTold(tries(CLAY, truth, 30))[0].against;
  expect(against(usual)).toBe('within');
  expect(against(low - 0.02)).toBe('within');
  expect(against(low - 0.2)).toBe('lower');
  expect(against(high + 0.2)).toBe('higher');
});
