import contour from 'maplibre-contour';
import { addProtocol } from 'maplibre-gl';
import type { ElevationGrid } from '../route/elevation.ts';
import type { System } from '../units.ts';
import type { TileAt } from './groundTile.ts';
import { terrarium, tileHeights, TILE_PX, touches } from './groundTile.ts';

/** Addresses under which MapLibre asks for tiles; nothing goes over the network. */
const SHADE = 'rutline-shade';
const CONTOUR = 'rutline-contour';

/** Pixels of a tile are smaller than the steps of most grids from here on: closer tiles would show nothing more. */
export const SHADE_ZOOM = 13;
export const CONTOUR_ZOOM = 14;

export const CONTOUR_LAYER = 'contours';

/** From this zoom up: contour interval and that of the heavier, labelled contours, in metres and in feet. */
const INTERVALS = [
  { zoom: 0, metric: [200, 1000], imperial: [1000, 5000] },
  { zoom: 10, metric: [100, 500], imperial: [400, 2000] },
  { zoom: 12, metric: [50, 250], imperial: [200, 1000] },
  { zoom: 13, metric: [20, 100], imperial: [100, 500] },
  { zoom: 14, metric: [10, 50], imperial: [40, 200] },
] as const;

const FEET_PER_METRE = 1 / 0.3048;

/** The contour interval drawn at a zoom, in metres or feet. */
export function contourIntervalAt(zoom: number, system: System): number {
  return levelsAt(zoom, system)[0];
}

function levelsAt(zoom: number, system: System): readonly [number, number] {
  return (INTERVALS.findLast((interval) => zoom >= interval.zoom) ?? INTERVALS[0])[system];
}

/** Makes contours of a grid that is at hand, where the library expects to fetch images. */
class GridContours extends contour.LocalDemManager {
  constructor(grid: ElevationGrid) {
    super({
      demUrlPattern: '{z}/{x}/{y}',
      cacheSize: 64,
      encoding: 'terrarium',
      maxzoom: CONTOUR_ZOOM,
      timeoutMs: 60_000,
    });
    this.fetchAndParseTile = (zoom, x, y) =>
      Promise.resolve({
        width: TILE_PX,
        height: TILE_PX,
        data: tileHeights(grid, { zoom, x, y }, 'unknown'),
      });
  }
}

interface Ground {
  readonly grid: ElevationGrid;
  readonly contours: GridContours;
}

const grounds = new Map<string, Ground>();
const NO_TILE = new ArrayBuffer(0);
let made = 0;

/** The tiles of a grid: patterns for MapLibre's sources, and a way to let go of them. */
export interface GroundTiles {
  readonly shade: string;
  readonly contours: string;
  readonly forget: () => void;
}

export function groundTiles(grid: ElevationGrid, system: System): GroundTiles {
  if (made === 0) {
    addProtocol(SHADE, async ({ url }) => ({ data: await shadeTile(url) }));
    addProtocol(CONTOUR, async ({ url }, abort) => ({ data: await contourTile(url, abort) }));
  }
  const key = `${++made}`;
  grounds.set(key, { grid, contours: new GridContours(grid) });
  return {
    shade: `${SHADE}://${key}/${system}/{z}/{x}/{y}`,
    contours: `${CONTOUR}://${key}/${system}/{z}/{x}/{y}`,
    forget: () => void grounds.delete(key),
  };
}

function asked(url: string): { ground: Ground | undefined; system: System; tile: TileAt } {
  const [key, system, zoom, x, y] = url.slice(url.indexOf('://') + 3).split('/');
  const tile = { zoom: Number(zoom), x: Number(x), y: Number(y) };
  return { ground: grounds.get(key), system: system as System, tile };
}

function shadeTile(url: string): Promise<ImageBitmap> {
  const { ground, tile } = asked(url);
  const heights = ground ? tileHeights(ground.grid, tile, 'edge') : new Float32Array(TILE_PX * TILE_PX);
  const image = new ImageData(terrarium(heights), TILE_PX, TILE_PX);
  return createImageBitmap(image, { premultiplyAlpha: 'none', colorSpaceConversion: 'none' });
}

async function contourTile(url: string, abort: AbortController): Promise<ArrayBuffer> {
  const { ground, system, tile } = asked(url);
  if (!ground || !touches(ground.grid, tile)) return NO_TILE;
  const { arrayBuffer } = await ground.contours.fetchContourTile(
    tile.zoom,
    tile.x,
    tile.y,
    {
      levels: [...levelsAt(tile.zoom, system)],
      multiplier: system === 'metric' ? 1 : FEET_PER_METRE,
      contourLayer: CONTOUR_LAYER,
      elevationKey: 'height',
      levelKey: 'level',
      buffer: 1,
    },
    abort,
  );
  return arrayBuffer;
}
