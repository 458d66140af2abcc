import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Point } from '../../src/draw/ink.ts';
import { withoutStraight } from '../../src/draw/straight.ts';

/** Height of a line at x, between its points. */
function heightAt(line: readonly Point[], x: number): number {
  const i = Math.max(1, line.findIndex(([to]) => to >= x)); // prettier-ignore
  const [[x0, y0], [x1, y1]] = [line[i - 1], line[i]];
  return y0 + ((y1 - y0) * (x - x0)) / (x1 - x0);
}

test('no point that is left out lies further off than anyone sees', () => {
  const grounds = fc.array(fc.double({ min: -2, max: 2, noNaN: true }), { minLength: 3, maxLength: 60 });
  fc.assert(
    fc.property(grounds, fc.constantFrom(0, 0.02, 1), (heights, scale) => {
      const line = heights.map((y, i): Point => [2 * i, y * scale]);
      const drawn = withoutStraight(line);
      for (const [x, y] of line) expect(Math.abs(heightAt(drawn, x) - y)).toBeLessThan(0.0501);
    }),
    { seed: 20251125 },
  );
});
