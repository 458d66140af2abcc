import { test } from 'vitest';
import { CRITERIA, NAMED_GROUND, SOFT_LEVEL } from '../../src/grade/criteria.ts';
import { expectGolden } from '../golden.ts';

test('our reading of the words in numbers changes only on purpose', () => {
  const table = { CRITERIA, NAMED_GROUND, SOFT_LEVEL };
  expectGolden('tests/grade/out/criteria.txt', `${JSON.stringify(table, null, 2)}\n`);
});
