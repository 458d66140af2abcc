import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { BoxIndex } from '../../src/archive/boxIndex.ts';
import type { Box, TrackRow } from '../../src/archive/trackRow.ts';
import type { Wanted } from '../../src/archive/wanted.ts';
import { byName, found } from '../../src/archive/wanted.ts';

const RUNS = { seed: 20261125, numRuns: 300 };

const degree = (most: number) => fc.integer({ min: -most * 4, max: most * 4 }).map((quarter) => quarter / 4);

const anyBox = fc
  .tuple(degree(180), degree(90), degree(180), degree(90))
  .map(([a, b, c, d]): Box => [Math.min(a, c), Math.min(b, d), Math.max(a, c), Math.max(b, d)]);

function row(values: Partial<TrackRow>): TrackRow {
  const none = { name: '', area: '', box: null, lengthM: 0, obstacleCount: 0, levels: {}, lastVisitMs: null };
  const counts = { visitCount: 0, outcomeCount: 0, conflictCount: 0, updatedMs: 0 };
  return { id: 'a', ...none, ...counts, ...values };
}

function names(all: readonly TrackRow[], wanted: Wanted): string[] {
  const rows = all.toSorted(byName);
  return found(rows, new BoxIndex(rows.map(({ box }) => box)), wanted).map(({ name }) => name);
}

test('in a box are those that touch it, and no others, over the 180th meridian too', () => {
  const boxes = fc.array(fc.option(anyBox), { maxLength: 40 });
  fc.assert(
    fc.property(boxes, anyBox, fc.boolean(), (all, [a, south, b, north], crosses) => {
      const wanted: Box = crosses ? [b, south, a, north] : [a, south, b, north];
      const [west, , east] = wanted;
      const parts =
        west <= east
          ? [[west, east]]
          : [
              [west, 180],
              [-180, east],
            ];
      const touches = (box: Box | null) =>
        box !== null &&
        box[1] <= north &&
        box[3] >= south &&
        parts.some(([from, to]) => box[0] <= to && box[2] >= from);
      const right = all.flatMap((box, i) => (touches(box) ? [i] : []));
      expect([...new BoxIndex(all).touching(wanted)].sort((x, y) => x - y)).toEqual(right);
    }),
    RUNS,
  );
});

describe('what is wanted', () => {
  const rows = [
    row({ name: 'Höhenweg 10', area: 'Karst', lengthM: 5000, lastVisitMs: 300, box: [10, 45, 11, 46] }),
    row({ name: 'Höhenweg 9', area: 'Heath', lengthM: 800, lastVisitMs: 100, box: [0, 45, 1, 46] }),
    row({ name: 'Quarry', area: 'Karst', levels: { club: 3 }, conflictCount: 1, box: [179, -1, 180, 0] }),
  ];

  test.each<[string, Wanted, string[]]>([
    ['everything, by name', {}, ['Höhenweg 9', 'Höhenweg 10', 'Quarry']],
    ['words in any order, without accents', { text: 'karst hohen' }, ['Höhenweg 10']],
    ['nothing that fits', { text: 'Karst Heath' }, []],
    ['a level', { levels: { club: [3, 4] } }, ['Quarry']],
    ['a length', { lengthM: [500, 1000] }, ['Höhenweg 9']],
    ['a visit since', { visitedSinceMs: 200 }, ['Höhenweg 10']],
    ['a conflict', { inConflict: true }, ['Quarry']],
    ['the longest first', { order: 'longest' }, ['Höhenweg 10', 'Höhenweg 9', 'Quarry']],
    ['the last visited first', { order: 'visited' }, ['Höhenweg 10', 'Höhenweg 9', 'Quarry']],
    ['the nearest first', { order: { nearest: [0.5, 45.5] } }, ['Höhenweg 9', 'Höhenweg 10', 'Quarry']],
    [
      'the nearest over the meridian',
      { order: { nearest: [-170, 0] } },
      ['Quarry', 'Höhenweg 9', 'Höhenweg 10'],
    ],
  ])('%s', (_, wanted, right) => {
    expect(names(rows, wanted)).toEqual(right);
  });
});
