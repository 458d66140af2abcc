import { describe, expect, it } from 'vitest';
import { boundsOf, frameOf } from '../../src/map/frame.ts';
import type { ElevationGrid } from '../../src/route/elevation.ts';
import type { Track } from '../../src/route/track.ts';

function track(...places: readonly (readonly [number, number])[]): Track {
  return {
    length: places.length,
    lng: Float64Array.from(places, ([lng]) => lng),
    lat: Float64Array.from(places, ([, lat]) => lat),
  } as unknown as Track;
}

const GRID = { west: 5, south: 6, lngStepDeg: 0.5, latStepDeg: 0.25, columns: 3, rows: 5 } as ElevationGrid;

describe('the frame of the map', () => {
  it('is that of the track, else of the ground, else of the pins, else the world', () => {
    expect(frameOf(track([10, -30], [10.2, -30.1], [10.1, -29.9]), GRID)).toEqual([10, -30.1, 10.2, -29.9]);
    expect(frameOf(null, GRID)).toEqual([5, 6, 6, 7]);
    expect(frameOf(track(), null)[0]).toBeLessThan(-170);
    const pins = [
      { lng: 7, lat: 45 },
      { lng: 6.9, lat: 45.2 },
    ];
    expect(frameOf(null, null, pins)).toEqual([6.9, 45, 7, 45.2]);
    expect(frameOf(null, GRID, pins)).toEqual(frameOf(null, GRID));
  });

  it('does not go round the earth where a track crosses the 180th meridian', () => {
    const [west, , east] = boundsOf(track([179.9, 0], [-179.9, 0.1]));
    expect(west).toBeCloseTo(179.9, 9);
    expect(east).toBeCloseTo(180.1, 9);
  });
});
