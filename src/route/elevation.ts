import { metresPerDegree } from './ellipsoid.ts';

/**
 * Heights at the nodes of a grid in degrees of WGS 84. Row 0 is the northernmost, column 0 the westernmost;
 * node (column, row) is `elevationM[row * columns + column]`, NaN where the height is not known.
 */
export interface ElevationGrid {
  /** Longitude of column 0, degrees. */
  readonly west: number;
  /** Latitude of the last row, degrees. */
  readonly south: number;
  readonly lngStepDeg: number;
  readonly latStepDeg: number;
  /** At least 2 of each. */
  readonly columns: number;
  readonly rows: number;
  /** Height above mean sea level. */
  readonly elevationM: Float32Array;
}

export function eastOf(grid: ElevationGrid): number {
  return grid.west + (grid.columns - 1) * grid.lngStepDeg;
}

export function northOf(grid: ElevationGrid): number {
  return grid.south + (grid.rows - 1) * grid.latStepDeg;
}

/** Bilinear height of a place; NaN outside the grid and beside a node of unknown height. */
export function heightAt(grid: ElevationGrid, lng: number, lat: number): number {
  const x = (lng - grid.west) / grid.lngStepDeg;
  const y = (northOf(grid) - lat) / grid.latStepDeg;
  if (!(x >= -EDGE && x <= grid.columns - 1 + EDGE && y >= -EDGE && y <= grid.rows - 1 + EDGE)) return NaN;
  const column = Math.min(Math.max(0, Math.floor(x)), grid.columns - 2);
  const row = Math.min(Math.max(0, Math.floor(y)), grid.rows - 2);
  const u = Math.min(Math.max(0, x - column), 1);
  const v = Math.min(Math.max(0, y - row), 1);
  const at = row * grid.columns + column;
  const z = grid.elevationM;
  const upper = z[at] + (z[at + 1] - z[at]) * u;
  const lower = z[at + grid.columns] + (z[at + grid.columns + 1] - z[at + grid.columns]) * u;
  return upper + (lower - upper) * v;
}

/** Steps by which a place may lie outside and still count as on the edge: rounding of degrees, under 1 mm. */
const EDGE = 1e-5;

/**
 * The ground to either side is read off at least so far away: recorded positions are not known to less, and over a step of
 * a metre every bush is a slope.
 */
const LEAST_REACH_M = 10;

/** Distance between nodes at a latitude, eastward or northward, whichever is more. */
export function nodeM({ lngStepDeg, latStepDeg }: ElevationGrid, lat: number): number {
  const metres = metresPerDegree(lat);
  return Math.max(lngStepDeg * metres.east, latStepDeg * metres.north);
}

/**
 * Rise per metre eastward and northward, read over one step, but at least 10 m, to either side; NaN so near to the edge.
 */
export function gradientAt(
  grid: ElevationGrid,
  lng: number,
  lat: number,
): { readonly east: number; readonly north: number } {
  const metres = metresPerDegree(lat);
  const lngReach = Math.max(grid.lngStepDeg, LEAST_REACH_M / metres.east);
  const latReach = Math.max(grid.latStepDeg, LEAST_REACH_M / metres.north);
  const east = heightAt(grid, lng + lngReach, lat) - heightAt(grid, lng - lngReach, lat);
  const north = heightAt(grid, lng, lat + latReach) - heightAt(grid, lng, lat - latReach);
  return { east: east / (2 * lngReach * metres.east), north: north / (2 * latReach * metres.north) };
}

/** How far away to either side the ground is read off, by the distance between nodes. */
export function reachM(nodeM: number): number {
  return Math.max(nodeM, LEAST_REACH_M);
}

/** Slope of the ground in a direction, climbing positive; bearing clockwise from north. NaN where unknown. */
export function groundSlopeRad(grid: ElevationGrid, lng: number, lat: number, bearingRad: number): number {
  const { east, north } = gradientAt(grid, lng, lat);
  return Math.atan(east * Math.sin(bearingRad) + north * Math.cos(bearingRad));
}

/**
 * Slope of the ground across a direction of travel, left side high positive. This is the hillside, not the
 * formed track: a bench cut into it is narrower than a step of most grids.
 */
export function groundCamberRad(grid: ElevationGrid, lng: number, lat: number, bearingRad: number): number {
  return groundSlopeRad(grid, lng, lat, bearingRad - Math.PI / 2);
}
