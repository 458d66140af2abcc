import { expect, test } from 'vitest';
import type { ClassificationId } from '../../src/grade/classification.ts';
import type { Measure } from '../../src/grade/criteria.ts';
import { CRITERIA, levelAt, MEASURES } from '../../src/grade/criteria.ts';

const CLASSIFICATIONS: readonly ClassificationId[] = ['australia', 'south africa'];

test.each(MEASURES.flatMap((measure) => CLASSIFICATIONS.map((id) => [measure, id] as const)))(
  'the last value that a level allows is of that level, and a little more is harder: %s, %s',
  (measure: Measure, id: ClassificationId) => {
    const { harder, limits } = CRITERIA[measure];
    const beyond = harder === 'more' ? 1e-6 : -1e-6;
    for (const limit of limits[id]) {
      const allowing = 1 + limits[id].indexOf(limit);
      const after =
        1 + limits[id].filter((other) => (harder === 'more' ? other <= limit : other >= limit)).length;
      expect(levelAt(measure, id, limit)).toBe(allowing);
      expect(levelAt(measure, id, limit + beyond)).toBe(after);
    }
  },
);
