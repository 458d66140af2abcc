import type { ElevationGrid } from './elevation.ts';
import { metresPerDegree } from './ellipsoid.ts';
import type { Raster } from './geoTiff.ts';
import type { Projection } from './projection.ts';

/** Nodes between two whose place is worked out; those between are put in even steps, under 2 cm off at 30 m a node. */
const BLOCK = 16;

/** Heights that lie in degrees already; null where they lie off the earth. */
export function degreesGrid({
  columns,
  rows,
  x0,
  y0,
  xStep,
  yStep,
  elevationM,
}: Raster): ElevationGrid | null {
  const west = x0 > 180 ? x0 - 360 : x0;
  const grid = {
    west,
    south: y0 - (rows - 1) * yStep,
    lngStepDeg: xStep,
    latStepDeg: yStep,
    columns,
    rows,
    elevationM,
  };
  const within = west >= -180.001 && west + (columns - 1) * xStep <= 180.001;
  return within && y0 <= 90 && grid.south >= -90 ? grid : null;
}

/**
 * Heights of a plane in metres, read off (bilinear) at nodes in degrees that lie as far apart as those of the plane, or
 * farther where there would be more than `most`. NaN outside and beside what is not known. Null where it lies off the
 * earth.
 */
export function resampled(raster: Raster, projection: Projection, most: number): ElevationGrid | null {
  const box = boxOf(raster, projection);
  if (box === null) return null;
  const [west, east, south, north] = box;
  const metres = metresPerDegree((south + north) / 2);
  const apart = (coarser: number) => {
    const lngStepDeg = (raster.xStep / metres.east) * coarser;
    const latStepDeg = (raster.yStep / metres.north) * coarser;
    return {
      lngStepDeg,
      latStepDeg,
      columns: Math.floor((east - west) / lngStepDeg + 1e-9) + 1,
      rows: Math.floor((north - south) / latStepDeg + 1e-9) + 1,
    };
  };
  const first = apart(1);
  // A zone bends and turns what lies in it a little; what asks for many times its nodes lies nowhere near its zone.
  if (!(first.columns * first.rows <= 4 * raster.columns * raster.rows + 10_000)) return null;
  const steps = apart(Math.max(1, Math.sqrt((first.columns * first.rows) / most)));
  const { lngStepDeg, latStepDeg, columns, rows } = steps;
  if (!(columns >= 2 && rows >= 2 && columns * rows <= 1.01 * most)) return null;
  const elevationM = new Float32Array(columns * rows).fill(NaN);
  const top = south + (rows - 1) * latStepDeg;
  for (let row = 0; row < rows; row += BLOCK)
    for (let column = 0; column < columns; column += BLOCK) {
      const corner = (right: number, down: number) =>
        projection.fromDegrees(
          west + (column + right * BLOCK) * lngStepDeg,
          top - (row + down * BLOCK) * latStepDeg,
        );
      const corners = [corner(0, 0), corner(1, 0), corner(0, 1), corner(1, 1)];
      for (let j = row; j < Math.min(rows, row + BLOCK); j++)
        for (let i = column; i < Math.min(columns, column + BLOCK); i++) {
          const [x, y] = between(corners, (i - column) / BLOCK, (j - row) / BLOCK);
          elevationM[j * columns + i] = heightIn(raster, x, y);
        }
    }
  return { west, south, ...steps, elevationM };
}

function between(
  [a, b, c, d]: readonly (readonly [number, number])[],
  u: number,
  v: number,
): readonly [number, number] {
  const mix = (axis: 0 | 1) => {
    const upper = a[axis] + (b[axis] - a[axis]) * u;
    const lower = c[axis] + (d[axis] - c[axis]) * u;
    return upper + (lower - upper) * v;
  };
  return [mix(0), mix(1)];
}

/** Bilinear; NaN outside. */
function heightIn(
  { columns, rows, x0, y0, xStep, yStep, elevationM: z }: Raster,
  x: number,
  y: number,
): number {
  const across = (x - x0) / xStep;
  const down = (y0 - y) / yStep;
  if (!(across >= -EDGE && across <= columns - 1 + EDGE && down >= -EDGE && down <= rows - 1 + EDGE))
    return NaN;
  const column = Math.min(Math.max(0, Math.floor(across)), columns - 2);
  const row = Math.min(Math.max(0, Math.floor(down)), rows - 2);
  const u = Math.min(Math.max(0, across - column), 1);
  const v = Math.min(Math.max(0, down - row), 1);
  const at = row * columns + column;
  const upper = z[at] + (z[at + 1] - z[at]) * u;
  const lower = z[at + columns] + (z[at + columns + 1] - z[at + columns]) * u;
  return upper + (lower - upper) * v;
}

/** Steps by which a place may lie outside and still count as on the edge. */
const EDGE = 1e-4;

/** West, east, south, north of a raster's edge, looked at in several places a side, as sides bend. */
function boxOf(
  { columns, rows, x0, y0, xStep, yStep }: Raster,
  { toDegrees }: Projection,
): readonly [number, number, number, number] | null {
  const SIDES = 8;
  const box: [number, number, number, number] = [Infinity, -Infinity, Infinity, -Infinity];
  for (let i = 0; i <= SIDES; i++)
    for (let j = 0; j <= SIDES; j++) {
      const x = x0 + ((columns - 1) * xStep * i) / SIDES;
      const y = y0 - ((rows - 1) * yStep * j) / SIDES;
      const [lng, lat] = toDegrees(x, y);
      if (!(Math.abs(lng) <= 180 && Math.abs(lat) <= 90)) return null;
      box[0] = Math.min(box[0], lng);
      box[1] = Math.max(box[1], lng);
      box[2] = Math.min(box[2], lat);
      box[3] = Math.max(box[3], lat);
    }
  return box;
}
