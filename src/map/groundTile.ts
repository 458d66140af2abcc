import type { ElevationGrid } from '../route/elevation.ts';
import { eastOf, heightAt, northOf } from '../route/elevation.ts';

/** Square tiles of this many pixels. */
export const TILE_PX = 256;

/** A tile of the web's usual pyramid: Web Mercator (EPSG:3857), x eastward, y southward, one tile at zoom 0. */
export interface TileAt {
  readonly zoom: number;
  readonly x: number;
  readonly y: number;
}

/** Degrees of a place in tiles of a zoom, counted from the north-west. */
export function placeOfTile(
  zoom: number,
  x: number,
  y: number,
): { readonly lng: number; readonly lat: number } {
  const side = 2 ** zoom;
  const mercator = Math.PI * (1 - (2 * y) / side);
  return { lng: (x / side) * 360 - 180, lat: (Math.atan(Math.sinh(mercator)) * 180) / Math.PI };
}

/**
 * Heights at the centres of the pixels of a tile, rows from north to south; NaN outside the grid, or beyond its edge
 * the height of the edge, so that shading does not see a cliff there.
 */
export function tileHeights(grid: ElevationGrid, tile: TileAt, beyond: 'unknown' | 'edge'): Float32Array {
  const heights = new Float32Array(TILE_PX * TILE_PX);
  const east = eastOf(grid);
  const north = northOf(grid);
  const keep = (value: number, least: number, most: number) =>
    beyond === 'edge' ? Math.min(Math.max(value, least), most) : value;
  for (let row = 0; row < TILE_PX; row++) {
    const { lat } = placeOfTile(tile.zoom, tile.x, tile.y + (row + 0.5) / TILE_PX);
    const y = keep(lat, grid.south, north);
    for (let column = 0; column < TILE_PX; column++) {
      const { lng } = placeOfTile(tile.zoom, tile.x + (column + 0.5) / TILE_PX, tile.y);
      heights[row * TILE_PX + column] = heightAt(grid, keep(lng, grid.west, east), y);
    }
  }
  return heights;
}

/**
 * Heights as the colours of an image in the terrarium encoding (Tilezen Joerd, formats: height = red * 256 + green +
 * blue / 256 - 32768). A height that is not known takes that of the pixel before it.
 */
export function terrarium(heights: Float32Array): Uint8ClampedArray<ArrayBuffer> {
  const colours = new Uint8ClampedArray(heights.length * 4);
  let last = 0;
  for (let i = 0; i < heights.length; i++) {
    if (!Number.isNaN(heights[i])) last = heights[i];
    const value = Math.min(Math.max(last, -32768), 32767) + 32768;
    const whole = Math.floor(value);
    colours[4 * i] = whole >> 8;
    colours[4 * i + 1] = whole & 255;
    colours[4 * i + 2] = Math.floor((value - whole) * 256);
    colours[4 * i + 3] = 255;
  }
  return colours;
}

/** Whether a tile shares ground with the grid. */
export function touches(grid: ElevationGrid, { zoom, x, y }: TileAt): boolean {
  const northWest = placeOfTile(zoom, x, y);
  const southEast = placeOfTile(zoom, x + 1, y + 1);
  return (
    northWest.lng <= eastOf(grid) &&
    southEast.lng >= grid.west &&
    southEast.lat <= northOf(grid) &&
    northWest.lat >= grid.south
  );
}
