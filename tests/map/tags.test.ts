import { describe, expect, it } from 'vitest';
import { tagsOf } from '../../src/map/tags.ts';

const mark = (id: string, x: number, y: number) => ({ id, x, y, nameWidthPx: 80 });

describe('tags of obstacles', () => {
  it('stand right above their place with the name where there is room', () => {
    const tags = tagsOf([mark('a', 200, 200), mark('b', 400, 300)], null, 800);
    expect(tags.get('a')).toEqual({ side: 'right-above', named: true });
    expect(tags.get('b')).toEqual({ side: 'right-above', named: true });
  });

  it('make way for each other, and give up the name rather than the number', () => {
    const tags = tagsOf([mark('a', 400, 200), mark('b', 405, 200), mark('c', 410, 204)], null, 800);
    expect(tags.get('b')).toEqual({ side: 'left-above', named: true });
    expect(tags.get('c')?.named).toBe(false);
    expect(tags.get('c')?.side).toBe('right-below');
  });

  it('turn inward at the edge of the frame', () => {
    expect(tagsOf([mark('a', 760, 200)], null, 800).get('a')?.side).toBe('left-above');
  });

  it('always name the chosen one', () => {
    const crowd = Array.from({ length: 9 }, (_, i) => mark(`${i}`, 400 + 2 * i, 200));
    expect(tagsOf(crowd, '8', 800).get('8')).toEqual({ side: 'right-above', named: true });
  });
});
