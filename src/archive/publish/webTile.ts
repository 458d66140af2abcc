/** Farthest from the equator that web tiles reach, degrees. */
const MOST_LAT = 85.0511;

/**
 * Column and row of the tile that a position lies in (OGC Two Dimensional Tile Matrix Set, 17-083r4, annex E,
 * "WebMercatorQuad"); rows are counted from the north.
 */
export function tileOf(lng: number, lat: number, zoom: number): [x: number, y: number] {
  const count = 2 ** zoom;
  const latRad = (Math.max(-MOST_LAT, Math.min(MOST_LAT, lat)) * Math.PI) / 180;
  const x = ((lng + 180) / 360) * count;
  const y = ((1 - Math.asinh(Math.tan(latRad)) / Math.PI) / 2) * count;
  const inside = (at: number) => Math.max(0, Math.min(count - 1, Math.floor(at)));
  return [inside(x), inside(y)];
}
