import { describe, expect, it } from 'vitest';
import { placeOfTile, terrarium, tileHeights, TILE_PX, touches } from '../../src/map/groundTile.ts';
import type { ElevationGrid } from '../../src/route/elevation.ts';

/** Ground that rises by a metre every thousandth of a degree eastward, under the middle of one tile. */
const TILE = { zoom: 12, x: 2000, y: 2500 };
const corner = placeOfTile(TILE.zoom, TILE.x + 0.25, TILE.y + 0.75);
const GRID: ElevationGrid = {
  west: corner.lng,
  south: corner.lat,
  lngStepDeg: 0.001,
  latStepDeg: 0.001,
  columns: 41,
  rows: 31,
  elevationM: Float32Array.from({ length: 41 * 31 }, (_, i) => 100 + (i % 41)),
};

/** What a reader of the encoding makes of a pixel: Tilezen Joerd, formats, terrarium. */
function decoded(colours: Uint8ClampedArray, i: number): number {
  return colours[4 * i] * 256 + colours[4 * i + 1] + colours[4 * i + 2] / 256 - 32768;
}

describe('heights of a tile', () => {
  it('are those of the grid at the centres of the pixels, and unknown outside', () => {
    const heights = tileHeights(GRID, TILE, 'unknown');
    const at = (column: number, row: number) => heights[row * TILE_PX + column];
    expect(at(0, 0)).toBeNaN();
    expect(at(70, 250)).toBeNaN();
    const { lng } = placeOfTile(TILE.zoom, TILE.x + 100.5 / TILE_PX, TILE.y);
    expect(at(100, 180)).toBeCloseTo(100 + (lng - GRID.west) / 0.001, 2);
  });

  it('go on from the edge of the grid for shading', () => {
    const heights = tileHeights(GRID, TILE, 'edge');
    expect(heights.every((z) => z >= 100 && z <= 140)).toBe(true);
    expect(heights[180 * TILE_PX]).toBeCloseTo(100, 3);
    expect(heights[180 * TILE_PX + 255]).toBeCloseTo(140, 3);
  });

  it('come back from the image to within a 256th of a metre, below the sea too', () => {
    const heights = Float32Array.of(0, 1234.5678, -12.34, 8848, 0.999);
    const colours = terrarium(heights);
    heights.forEach((z, i) => {
      expect(Math.abs(decoded(colours, i) - z)).toBeLessThanOrEqual(1 / 256);
      expect(colours[4 * i + 3]).toBe(255);
    });
  });

  it('that are unknown take the height before, so that shading sees no cliff', () => {
    expect(decoded(terrarium(Float32Array.of(700, NaN, 710)), 1)).toBe(700);
  });
});

describe('a tile', () => {
  it('touches the ground or does not', () => {
    expect(touches(GRID, TILE)).toBe(true);
    expect(touches(GRID, { ...TILE, x: TILE.x + 1 })).toBe(false);
    expect(touches(GRID, { ...TILE, y: TILE.y - 1 })).toBe(false);
    expect(touches(GRID, { zoom: 0, x: 0, y: 0 })).toBe(true);
  });
});
