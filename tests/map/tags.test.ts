import { describe, expect, it } from 'vitest';
import { overlap } from '../../src/map/box.ts';
import { boxesOf, tagsOf } from '../../src/map/tags.ts';

const mark = (id: string, x: number, y: number) => ({ id, x, y, fixedWidthPx: 0, moreWidthPx: [80] });

describe('tags of obstacles', () => {
  it('stand right above their place with the name where there is room', () => {
    const tags = tagsOf([mark('a', 200, 200), mark('b', 400, 300)], null, 800);
    expect(tags.get('a')).toEqual({ side: 'right-above', more: 1 });
    expect(tags.get('b')).toEqual({ side: 'right-above', more: 1 });
  });

  it('make way for each other, and give up the name rather than the number', () => {
    const tags = tagsOf([mark('a', 400, 200), mark('b', 405, 200), mark('c', 410, 204)], null, 800);
    expect(tags.get('b')).toEqual({ side: 'left-above', more: 1 });
    expect(tags.get('c')?.more).toBe(0);
    expect(tags.get('c')?.side).toBe('right-below');
  });

  it('turn inward at the edge of the frame', () => {
    expect(tagsOf([mark('a', 760, 200)], null, 800).get('a')?.side).toBe('left-above');
  });

  it('always name the chosen one', () => {
    const crowd = Array.from({ length: 9 }, (_, i) => mark(`${i}`, 400 + 2 * i, 200));
    expect(tagsOf(crowd, '8', 800).get('8')).toEqual({ side: 'right-above', more: 1 });
  });

  it('let every number stand before anything more is written', () => {
    const tags = tagsOf([mark('a', 400, 200), mark('b', 480, 200)], null, 800);
    expect(tags.get('a')).toEqual({ side: 'left-above', more: 1 });
    expect(tags.get('b')).toEqual({ side: 'right-above', more: 1 });
  });

  it('write what matters most first, and of the chosen one that in any case', () => {
    const long = (id: string, x: number) => ({ ...mark(id, x, 200), moreWidthPx: [80, 300] });
    expect(tagsOf([long('a', 400)], null, 800).get('a')).toEqual({ side: 'right-above', more: 1 });
    expect(tagsOf([long('a', 300)], null, 800).get('a')).toEqual({ side: 'right-above', more: 2 });
    expect(tagsOf([long('a', 40)], 'a', 100).get('a')).toEqual({ side: 'right-above', more: 1 });
  });

  it('keep room for what is always written', () => {
    const wide = { ...mark('a', 600, 200), fixedWidthPx: 120 };
    expect(tagsOf([wide], null, 800).get('a')).toEqual({ side: 'left-above', more: 1 });
  });

  it('keep clear of what is laid over the map', () => {
    const key = { left: 205, right: 300, top: 100, bottom: 180 };
    expect(tagsOf([mark('a', 200, 200)], null, 800, [key]).get('a')).toEqual({ side: 'left-above', more: 1 });
  });

  it('cover their place and what is written, so that others can keep clear', () => {
    const marks = [mark('a', 200, 200), mark('b', 400, 300)];
    const boxes = boxesOf(marks, tagsOf(marks, null, 800));
    expect(boxes).toHaveLength(4);
    const on = (x: number, y: number) => ({ left: x, right: x + 1, top: y, bottom: y + 1 });
    for (const at of [on(200, 200), on(230, 160), on(310, 170), on(400, 300)])
      expect(boxes.some((box) => overlap(box, at))).toBe(true);
    expect(boxes.some((box) => overlap(box, on(200, 230)))).toBe(false);
  });
});
