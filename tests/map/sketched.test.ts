import { describe, expect, it } from 'vitest';
import type { Sketched } from '../../src/map/sketched.ts';
import { lineFromZoom, nearestSketched } from '../../src/map/sketched.ts';

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

describe('the zoom level from which on a line is more than a speck', () => {
  it('goes with the length of the line: half of it needs one level more', () => {
    const half = { ...line, ways: [{ lng: Float64Array.of(10, 10.005), lat: Float64Array.of(50, 50) }] };
    expect(lineFromZoom(half) - lineFromZoom(line)).toBe(1);
    // 0.01° of the 360° that 512 · 2^z pixels show are 14 pixels at z = 9.95.
    expect(lineFromZoom(line)).toBe(10);
  });

  it('is the same for a line northward, which Mercator draws longer by 1 / cos of the latitude', () => {
    const lat = 60;
    const north = {
      ...line,
      ways: [{ lng: Float64Array.of(10, 10), lat: Float64Array.of(lat, lat + 0.005) }],
    };
    expect(lineFromZoom(north)).toBe(lineFromZoom(line));
  });

  it('is never where nothing but a place is known', () => {
    expect(lineFromZoom(point)).toBe(Infinity);
  });
});
