import { gzipSync } from 'fflate';
import { zxyToTileId } from 'pmtiles';
import type { Box } from '../trackRow.ts';
import type { CrowdEntry, PublishedRow } from './published.ts';
import { CROWD_STEPS, CROWD_ZOOMS, PUBLISHED_FORMAT, PUBLISHED_VERSION, ZOOM } from './published.ts';
import type { NumberedTile } from './tileFile.ts';
import { tileFile } from './tileFile.ts';
import type { Tile } from './webTile.ts';
import { tileOf } from './webTile.ts';

/** A row and the tiles that tell it, the first of them that of its middle. */
export interface Placed {
  readonly row: PublishedRow;
  readonly tiles: readonly Tile[];
}

/** The file that is asked first. `recordsName` is the file of the records, beside it. */
export function indexOf(placed: readonly Placed[], recordsName: string): Uint8Array<ArrayBuffer> {
  const tiles = [...rowTiles(placed), ...CROWD_ZOOMS.flatMap((zoom) => crowdTiles(placed, zoom))];
  const metadata = {
    format: PUBLISHED_FORMAT,
    version: PUBLISHED_VERSION,
    records: recordsName,
    tracks: placed.length,
  };
  return tileFile(tiles, [CROWD_ZOOMS[0], ZOOM], boxAround(placed), metadata);
}

function rowTiles(placed: readonly Placed[]): NumberedTile[] {
  const tiles = new Map<number, PublishedRow[]>();
  for (const { row, tiles: along } of placed)
    for (const [x, y] of along) listIn(tiles, zxyToTileId(ZOOM, x, y)).push(row);
  return packedTiles(tiles);
}

/** How many tracks have their middle in each of the eight by eight parts of a tile, the parts without any left out. */
function crowdTiles(placed: readonly Placed[], zoom: number): NumberedTile[] {
  const parts = new Map<string, { readonly tile: number; readonly rows: PublishedRow[] }>();
  for (const { row } of placed) {
    const [lng, lat] = middleOf(row.box);
    const key = tileOf(lng, lat, zoom + CROWD_STEPS).join('/');
    const part = parts.get(key) ?? { tile: zxyToTileId(zoom, ...tileOf(lng, lat, zoom)), rows: [] };
    part.rows.push(row);
    parts.set(key, part);
  }
  const tiles = new Map<number, CrowdEntry[]>();
  for (const { tile, rows } of parts.values()) {
    const middles = rows.map(({ box }) => middleOf(box));
    const mean = (i: 0 | 1) => middles.reduce((sum, middle) => sum + middle[i], 0) / rows.length;
    listIn(tiles, tile).push([rows.length, rounded(mean(0)), rounded(mean(1)), rows[0].name]);
  }
  return packedTiles(tiles);
}

function listIn<T>(lists: Map<number, T[]>, id: number): T[] {
  const list = lists.get(id) ?? [];
  lists.set(id, list);
  return list;
}

function packedTiles(tiles: ReadonlyMap<number, readonly unknown[]>): NumberedTile[] {
  return [...tiles].map(([id, list]) => ({
    id,
    bytes: gzipSync(new TextEncoder().encode(JSON.stringify(list)), { mtime: 0 }),
  }));
}

function middleOf([west, south, east, north]: Box): [lng: number, lat: number] {
  return [(west + east) / 2, (south + north) / 2];
}

/** To some 10 m. */
function rounded(deg: number): number {
  return Math.round(deg * 1e4) / 1e4;
}

function boxAround(placed: readonly Placed[]): Box {
  let [west, south, east, north] = [180, 90, -180, -90];
  for (const { row } of placed) {
    west = Math.min(west, row.box[0]);
    south = Math.min(south, row.box[1]);
    east = Math.max(east, row.box[2]);
    north = Math.max(north, row.box[3]);
  }
  return placed.length === 0 ? [-180, -85, 180, 85] : [west, south, east, north];
}
