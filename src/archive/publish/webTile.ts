import type { Box } from '../trackRow.ts';

/** Farthest from the equator that web tiles reach, degrees. */
const MOST_LAT = 85.0511;

export type Tile = readonly [x: number, y: number];

/**
 * Column and row of the tile that a position lies in (OGC Two Dimensional Tile Matrix Set, 17-083r4, annex E,
 * "WebMercatorQuad"); rows are counted from the north.
 */
export function tileOf(lng: number, lat: number, zoom: number): Tile {
  const count = 2 ** zoom;
  const [x, y] = placeIn(lng, lat, zoom);
  const inside = (at: number) => Math.max(0, Math.min(count - 1, Math.floor(at)));
  return [inside(x), inside(y)];
}

/** The ground of a tile. */
export function boxOfTile([x, y]: Tile, zoom: number): Box {
  const lng = (column: number) => (column / 2 ** zoom) * 360 - 180;
  const lat = (row: number) => (Math.atan(Math.sinh(Math.PI * (1 - (2 * row) / 2 ** zoom))) * 180) / Math.PI;
  return [lng(x), lat(y + 1), lng(x + 1), lat(y)];
}

/**
 * Tiles so chosen that every tile a path passes through is one of them or beside one: whoever looks at an area and the
 * tiles around it meets the path. `first` is one of them in any case.
 * @param paths positions in order, degrees
 */
export function tilesAlong(first: Tile, paths: readonly Positions[], zoom: number): readonly Tile[] {
  const chosen: Tile[] = [first];
  const pass = (x: number, y: number) => {
    const isBeside = ([cx, cy]: Tile) => Math.abs(cx - x) <= 1 && Math.abs(cy - y) <= 1;
    if (!chosen.some(isBeside)) chosen.push([x, y]);
  };
  for (const { lng, lat } of paths)
    for (let i = 0; i < lng.length; i++) {
      const [x, y] = placeIn(lng[i], lat[i], zoom);
      const joins = i > 0 && Math.abs(lng[i] - lng[i - 1]) < 180;
      const [fromX, fromY] = joins ? placeIn(lng[i - 1], lat[i - 1], zoom) : [x, y];
      const cuts = [0, ...edgesBetween(fromX, x), ...edgesBetween(fromY, y), 1].sort((a, b) => a - b);
      for (let k = 1; k < cuts.length; k++) {
        const part = (cuts[k - 1] + cuts[k]) / 2;
        pass(Math.floor(fromX + part * (x - fromX)), Math.floor(fromY + part * (y - fromY)));
      }
    }
  return chosen.map(([x, y]): Tile => [inRow(x, zoom), inRow(y, zoom)]);
}

/** The edges of tiles between two places, as parts of the way from one to the other. */
function edgesBetween(from: number, to: number): number[] {
  const edges: number[] = [];
  for (let edge = Math.ceil(Math.min(from, to)); edge <= Math.max(from, to); edge++)
    if (from !== to) edges.push((edge - from) / (to - from));
  return edges;
}

export interface Positions {
  readonly lng: ArrayLike<number>;
  readonly lat: ArrayLike<number>;
}

function inRow(at: number, zoom: number): number {
  return Math.max(0, Math.min(2 ** zoom - 1, at));
}

function placeIn(lng: number, lat: number, zoom: number): [x: number, y: number] {
  const count = 2 ** zoom;
  const latRad = (Math.max(-MOST_LAT, Math.min(MOST_LAT, lat)) * Math.PI) / 180;
  return [((lng + 180) / 360) * count, ((1 - Math.asinh(Math.tan(latRad)) / Math.PI) / 2) * count];
}
