import { describe, expect, it } from 'vitest';
import type { Sketched } from '../../src/map/sketched.ts';
import { nearestSketched } from '../../src/map/sketched.ts';

const line: Sketched = {
  id: 'line',
  name: '',
  lng: 10,
  lat: 50,
  ways: [{ lng: Float64Array.of(10, 10.01), lat: Float64Array.of(50, 50) }],
};
const point: Sketched = { id: 'point', name: '', lng: 10.005, lat: 50.001, ways: null };

describe('the track that is pointed at', () => {
  it('is the nearest, between the points of a line too', () => {
    expect(nearestSketched([line, point], 10.005, 50.0001, 50)?.id).toBe('line');
    expect(nearestSketched([line, point], 10.005, 50.0009, 50)?.id).toBe('point');
  });

  it('is none, beyond reach', () => {
    expect(nearestSketched([line, point], 10.005, 50.0005, 50)).toBeNull();
    expect(nearestSketched([line], 10.011, 50, 50)).toBeNull();
  });

  it('is found over the 180th meridian', () => {
    const over = {
      ...line,
      ways: [{ lng: Float64Array.of(179.9999, -179.9999), lat: Float64Array.of(0, 0) }],
    };
    expect(nearestSketched([over], -179.99995, 0, 20)?.id).toBe('line');
  });
});
