import { describe, expect, test } from 'vitest';
import { partOf } from '../../src/route/tiffHead.ts';

describe('a part of a file', () => {
  const file = new Blob(['0123456789']);

  test('is as much of it as there is', async () => {
    expect(await partOf(file, 2, 3).text()).toBe('234');
    expect(await partOf(file, 8, 50).text()).toBe('89');
    expect(await partOf(file, 8, Infinity).text()).toBe('89');
    expect(partOf(file, 10, 4).size).toBe(0);
  });

  test.each([
    [-1, 2],
    [11, 1],
    [2, -1],
    [0.5, 2],
    [2, 0.5],
    [NaN, 2],
    [2, NaN],
    [-Infinity, 2],
  ])('from %d, %d long, is a RangeError', (from, length) => {
    expect(() => partOf(file, from, length)).toThrow(RangeError);
  });
});
