import { describe, expect, it } from 'vitest';
import type { Box } from '../../src/map/box.ts';
import { overlap } from '../../src/map/box.ts';
import type { Tagged } from '../../src/map/lineTags.ts';
import { lineTagsOf } from '../../src/map/lineTags.ts';

const FRAME: Box = { left: 0, right: 800, top: 0, bottom: 500 };

function line(id: string, x: number, sides: Tagged['sides']): Tagged {
  // Up the page.
  const ways = [
    [
      { x, y: 400 },
      { x, y: 100 },
    ],
  ];
  return { id, ways, sides, widthPx: 120, heightPx: 36 };
}

describe('words beside lines', () => {
  it('stand on the side of their line, clear of it, with a leader from the line to the box', () => {
    const tags = lineTagsOf([line('left', 380, [1]), line('right', 420, [-1])], [], FRAME);
    const [left, right] = [tags.get('left')!, tags.get('right')!];
    expect(left.box.right).toBeCloseTo(370, 6);
    expect(right.box.left).toBeCloseTo(430, 6);
    expect(left.from).toEqual({ x: 380, y: 325 });
    expect(left.to).toEqual({ x: 370, y: 325 });
  });

  it('stand above a line across the page, where its left is', () => {
    const across = {
      ...line('a', 0, [1]),
      ways: [
        [
          { x: 300, y: 250 },
          { x: 500, y: 250 },
        ],
      ],
    };
    expect(lineTagsOf([across], [], FRAME).get('a')!.box.bottom).toBeCloseTo(240, 6);
  });

  it('move along the line, then farther off, from what is taken', () => {
    const pin: Box = { left: 300, right: 380, top: 300, bottom: 350 };
    const moved = lineTagsOf([line('left', 380, [1])], [pin], FRAME).get('left')!;
    expect(moved.from).toEqual({ x: 380, y: 175 });
    const wall: Box = { left: 350, right: 380, top: 0, bottom: 500 };
    const off = lineTagsOf([line('left', 380, [1])], [wall], FRAME).get('left')!;
    expect(off.box.right).toBeCloseTo(346, 6);
  });

  it('cover no line where that can be helped', () => {
    const bent = {
      ...line('a', 0, [1]),
      ways: [
        [
          { x: 300, y: 400 },
          { x: 300, y: 250 },
          { x: 200, y: 250 },
          { x: 200, y: 60 },
        ],
      ],
    };
    const { box } = lineTagsOf([bent], [], FRAME).get('a')!;
    const onWay = [300, 320, 340, 360, 380, 400].map((y) => ({ left: 300, right: 300, top: y, bottom: y }));
    for (const at of onWay) expect(overlap(box, at)).toBe(false);
    const [neighbour] = [line('b', 250, [1])];
    const tags = lineTagsOf([line('a', 300, [1]), neighbour], [], FRAME);
    expect(tags.get('a')!.box.right).toBeLessThan(250);
  });

  it('are left out where there is no room, and where the line is out of sight', () => {
    expect(lineTagsOf([line('left', 380, [1])], [FRAME], FRAME).size).toBe(0);
    expect(lineTagsOf([line('left', 1380, [1])], [], FRAME).size).toBe(0);
    expect(lineTagsOf([{ ...line('left', 380, [1]), ways: [] }], [], FRAME).size).toBe(0);
  });
});
