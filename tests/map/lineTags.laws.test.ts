import fc from 'fast-check';
import { it } from 'vitest';
import type { Box } from '../../src/map/box.ts';
import { isWithin, overlap } from '../../src/map/box.ts';
import { lineTagsOf } from '../../src/map/lineTags.ts';

const FRAME: Box = { left: 0, right: 800, top: 0, bottom: 500 };

it('words beside lines never cover each other or what is taken, and stay in the frame', () => {
  const spot = fc.record({ x: fc.integer({ min: -50, max: 850 }), y: fc.integer({ min: -50, max: 550 }) });
  const tagged = fc.record({
    ways: fc.array(fc.array(spot, { minLength: 2, maxLength: 5 }), { maxLength: 2 }),
    sides: fc.constantFrom([1] as const, [-1] as const, [1, -1] as const),
    widthPx: fc.integer({ min: 20, max: 300 }),
    heightPx: fc.integer({ min: 20, max: 60 }),
  });
  fc.assert(
    fc.property(fc.array(tagged, { maxLength: 6 }), fc.array(spot, { maxLength: 4 }), (lines, pins) => {
      const taken = pins.map(({ x, y }) => ({ left: x - 20, right: x + 60, top: y - 20, bottom: y + 20 }));
      const tags = lineTagsOf(
        lines.map((one, i) => ({ ...one, id: `${i}` })),
        taken,
        FRAME,
      );
      const boxes = [...tags.values()].map(({ box }) => box);
      return boxes.every(
        (box, i) =>
          isWithin(box, FRAME) && ![...taken, ...boxes.slice(0, i)].some((other) => overlap(box, other)),
      );
    }),
    { seed: 20261125, numRuns: 500 },
  );
});
