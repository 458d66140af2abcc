import { expect, test } from 'vitest';
import type { Point } from '../../src/draw/ink.ts';
import { withoutStraight } from '../../src/draw/straight.ts';

test('a straight line is its two ends, a corner stays', () => {
  const level = Array.from({ length: 50 }, (_, i): Point => [i, 3]);
  expect(withoutStraight(level)).toEqual([level[0], level[49]]);
  const step: Point[] = [...level, [50, 20], ...level.map(([x]): Point => [x + 51, 20])];
  expect(withoutStraight(step)).toEqual([level[0], level[49], [50, 20], [100, 20]]);
});

test('a line that turns back keeps every point', () => {
  const back: Point[] = [[0, 0], [2, 1], [1, 2], [0, 3], [5, 3]]; // prettier-ignore
  expect(withoutStraight(back)).toEqual(back);
});
