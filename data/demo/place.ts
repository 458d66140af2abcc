import { metresPerDegree } from '../../src/route/ellipsoid.ts';
import type { ElevationGrid } from '../../src/route/elevation.ts';
import { Chance } from './chance.ts';
import type { Raster } from './terrain.ts';
import { worn } from './terrain.ts';

/** South-west corner, on the open ocean, so that no real place is meant. */
const WEST = 88.55;
const SOUTH = -33.425;
const STEP_DEG = 0.0002;
const COLUMNS = 481;
const ROWS = 251;

/** Height of the outlet of the valleys above sea level. */
const BASE_M = 610;

/** Land is made some way beyond the sheet and cut, so that its edges do not show. */
const MARGIN_CELLS = 60;
const CELL_M = 20;

/** The invented place: its ground in metres east and north of the south-west corner. */
export interface Place {
  readonly widthM: number;
  readonly heightM: number;
  groundM(x: number, y: number): number;
  /** Area that drains through a place, square metres. */
  drainageM2(x: number, y: number): number;
  lng(x: number): number;
  lat(y: number): number;
}

export function invented(seed: number): Place {
  const metres = metresPerDegree(SOUTH + (STEP_DEG * (ROWS - 1)) / 2);
  const raster = worn(451 + 2 * MARGIN_CELLS, 281 + 2 * MARGIN_CELLS, CELL_M, {
    seed,
    steps: 60,
    stepYears: 20_000,
    upliftMPerYear: 3.2e-3,
    erodibility: 1.2e-4,
    creepM2PerYear: 0.2,
  });
  const bendX = noise(seed + 1);
  const bendY = noise(seed + 2);
  const rough = noise(seed + 3);
  const heightM = STEP_DEG * (ROWS - 1) * metres.north;

  /** Bends the eight directions of the flow out of the land. */
  const bent = (x: number, y: number): [number, number] => [
    x + 70 * bendX(x / 700, y / 700) + 22 * bendX(x / 230 + 9, y / 230),
    y + 70 * bendY(x / 700, y / 700) + 22 * bendY(x / 230 + 9, y / 230),
  ];
  const cell = (x: number, y: number): [number, number] => [
    x / CELL_M + MARGIN_CELLS,
    (5_620 - y) / CELL_M + MARGIN_CELLS,
  ];
  return {
    widthM: STEP_DEG * (COLUMNS - 1) * metres.east,
    heightM,
    groundM(x, y) {
      const land = smooth(raster.heightM, raster, ...cell(...bent(x, y)));
      const bumps =
        2.2 * rough(x / 160, y / 160) + 1 * rough(x / 70 + 5, y / 70) + 0.4 * rough(x / 32, y / 32 + 5);
      return BASE_M + land + bumps;
    },
    drainageM2(x, y) {
      const [c, r] = cell(...bent(x, y));
      return raster.drainageM2[Math.round(r) * raster.columns + Math.round(c)];
    },
    lng: (x) => WEST + x / metres.east,
    lat: (y) => SOUTH + y / metres.north,
  };
}

/** The ground at the nodes of the elevation grid, to a decimetre. */
export function gridOf(place: Place): ElevationGrid {
  const elevationM = new Float32Array(COLUMNS * ROWS);
  for (let row = 0; row < ROWS; row++) {
    for (let column = 0; column < COLUMNS; column++) {
      const x = (column / (COLUMNS - 1)) * place.widthM;
      const y = (1 - row / (ROWS - 1)) * place.heightM;
      elevationM[row * COLUMNS + column] = Math.round(place.groundM(x, y) * 10) / 10;
    }
  }
  return {
    west: WEST,
    south: SOUTH,
    lngStepDeg: STEP_DEG,
    latStepDeg: STEP_DEG,
    columns: COLUMNS,
    rows: ROWS,
    elevationM,
  };
}

/** Catmull-Rom through the sixteen cells around, so that slope has no kinks at the cells. */
function smooth(values: Float64Array, raster: Raster, x: number, y: number): number {
  const column = Math.floor(x);
  const row = Math.floor(y);
  const along = (r: number) => {
    const at = (row + r) * raster.columns + column;
    return through(values[at - 1], values[at], values[at + 1], values[at + 2], x - column);
  };
  return through(along(-1), along(0), along(1), along(2), y - row);
}

function through(a: number, b: number, c: number, d: number, t: number): number {
  return b + 0.5 * t * (c - a + t * (2 * a - 5 * b + 4 * c - d + t * (3 * (b - c) + d - a)));
}

/** Smooth noise about 0, mostly within ±1, over a lattice of one unit. */
function noise(seed: number): (x: number, y: number) => number {
  const chance = new Chance(seed);
  const size = 256;
  const lattice = Float64Array.from({ length: size * size }, () => chance.uniform() * 2 - 1);
  const at = (i: number, j: number) => lattice[(j & (size - 1)) * size + (i & (size - 1))];
  const fade = (t: number) => t * t * t * (t * (t * 6 - 15) + 10);
  return (x, y) => {
    const i = Math.floor(x);
    const j = Math.floor(y);
    const u = fade(x - i);
    const v = fade(y - j);
    const top = at(i, j) + (at(i + 1, j) - at(i, j)) * u;
    const low = at(i, j + 1) + (at(i + 1, j + 1) - at(i, j + 1)) * u;
    return top + (low - top) * v;
  };
}
