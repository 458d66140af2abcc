import { describe, expect, it } from 'vitest';
import { hardestOf } from '../../src/convoy/hardest.ts';
import type { Cell } from '../../src/convoy/matrix.ts';
import type { Verdict, VerdictWord } from '../../src/grade/verdict.ts';

function cell(obstacleId: string, vehicleId: string, ...words: VerdictWord[]): Cell {
  const verdicts = words.map((word, i) => ({ lineId: `${i}`, verdict: { word } as Verdict }));
  return { obstacleId, vehicleId, verdicts, best: 0 };
}

describe('where a convoy fares worst', () => {
  it('is the worst of the best lines, and who else has it', () => {
    const cells = [
      cell('a', 'short', 'goes'),
      cell('a', 'long', 'goes with care', 'does not go'),
      cell('b', 'short', 'needs a pull'),
      cell('b', 'long', 'needs a pull'),
    ];
    expect(hardestOf(cells)).toEqual({
      word: 'needs a pull',
      obstacleId: 'b',
      vehicleId: 'short',
      vehicles: 2,
    });
  });

  it('takes what is not known for worst, and nothing for nothing', () => {
    expect(hardestOf([cell('a', 'v', 'does not go'), cell('b', 'v', 'not known')])?.word).toBe('not known');
    expect(hardestOf([])).toBeNull();
  });
});
