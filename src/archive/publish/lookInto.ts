import type { RangeResponse, Source } from 'pmtiles';
import { Compression, PMTiles, TileType } from 'pmtiles';
import type { Reading } from '../../problem.ts';
import { gradedFrom } from '../gradedRecord.ts';
import type { GradedTrack } from '../gradedTrack.ts';
import type { Box } from '../trackRow.ts';
import { hashOf } from './hash.ts';
import type { Crowd, PublishedRow } from './published.ts';
import { CROWD_ZOOMS, PUBLISHED_FORMAT, PUBLISHED_VERSION, ZOOM } from './published.ts';
import { crowdFrom, rowFrom } from './rowReading.ts';
import { Trouble } from './trouble.ts';
import { unpacked } from './unpacked.ts';
import type { Tile } from './webTile.ts';
import { tileOf } from './webTile.ts';

/** Tiles that are asked for at most: with rows, an area of some 50 km by 50 km; with crowds, a few screens full. */
const MOST_TILES = 64;
const MOST_CROWD_TILES = 12;

/** Tiles that are remembered. */
const KEPT_TILES = 256;

/** Bytes that a part of the index, and that a record may have unpacked; and either of them as it comes. */
const INDEX_BYTES = 2 ** 22;
const RECORD_BYTES = 2 ** 28;
const PACKED_BYTES = 2 ** 24;

/** A file that gives bytes of a range. */
export type Ranged = Source;

/** What an area holds. */
export interface FoundIn {
  /** Tracks of which some part may lie in it; none where it is told in crowds. */
  readonly rows: readonly PublishedRow[];
  readonly crowds: readonly Crowd[];
  /** It is too wide to be asked for at once, and the archive has nothing to tell it by. */
  readonly tooWide: boolean;
}

/** A published archive, of which only what is asked for is read. All that it does rejects with a `Trouble`. */
export interface Published {
  readonly trackCount: number;
  /** Around every track. */
  readonly box: Box;
  readonly inBox: (box: Box) => Promise<FoundIn>;
  /** The whole record of one of them, compared with its hash and checked as any file is. */
  readonly take: (row: Pick<PublishedRow, 'id' | 'record' | 'hash'>) => Promise<Reading<GradedTrack>>;
}

/**
 * Opens a published archive. `index` and `records` give bytes of a range, the second of the file whose name it is told;
 * what they reject with should be a `Trouble` too.
 */
export async function lookInto(index: Source, records: (name: string) => Source): Promise<Published> {
  const tiles = new PMTiles(bounded(index), undefined, unpackedPart);
  const { metadata, box } = await headOf(tiles);
  const { format, version, records: name, tracks } = metadata;
  if (format !== PUBLISHED_FORMAT) throw new Trouble('noArchive');
  if (typeof version === 'number' && version > PUBLISHED_VERSION) throw new Trouble('newer');
  if (typeof name !== 'string' || !/^[\w-]+\.records$/.test(name)) throw new Trouble('brokenIndex');
  const kept = new Map<string, Promise<readonly unknown[]>>();
  const tile = (zoom: number, [x, y]: Tile) => {
    const key = `${zoom}/${x}/${y}`;
    const asked = kept.get(key) ?? listIn(tiles, zoom, x, y);
    kept.delete(key);
    if (kept.size >= KEPT_TILES) kept.delete([...kept.keys()][0]);
    kept.set(key, asked);
    asked.catch(() => kept.delete(key));
    return asked;
  };
  const listed = async (zoom: number, area: readonly Tile[]) =>
    (await Promise.all(area.map((one) => tile(zoom, one)))).flat();

  return {
    trackCount: Number.isSafeInteger(tracks) ? (tracks as number) : 0,
    box,
    inBox: async (area) => {
      const near = tilesOver(area, ZOOM, 1, MOST_TILES);
      if (near !== null) {
        const rows = (await listed(ZOOM, near)).flatMap((entry) => rowFrom(entry) ?? []);
        const once = new Map(rows.filter((row) => meet(row.box, area)).map((row) => [row.id, row]));
        return { rows: [...once.values()], crowds: [], tooWide: false };
      }
      if (version === 1) return { rows: [], crowds: [], tooWide: true };
      const zoom = CROWD_ZOOMS.findLast((one) => tilesOver(area, one, 0, MOST_CROWD_TILES) !== null) ?? 0;
      const wide = tilesOver(area, zoom, 0, MOST_CROWD_TILES) ?? [];
      const crowds = (await listed(zoom, wide)).flatMap((entry) => crowdFrom(entry, zoom) ?? []);
      return { rows: [], crowds: crowds.filter((crowd) => meet(crowd.box, area)), tooWide: false };
    },
    take: async ({ id, record: [at, length], hash }) => {
      const { data } = await bounded(records(name)).getBytes(at, length);
      if (data.byteLength !== length || (hash !== null && hashOf([new Uint8Array(data)]) !== hash))
        throw new Trouble('brokenRecord');
      const value = await jsonIn(data, RECORD_BYTES).catch(() => Promise.reject(new Trouble('brokenRecord')));
      const reading = gradedFrom(value);
      if (reading.value !== null && reading.value.id !== id) throw new Trouble('brokenRecord');
      return reading;
    },
  };
}

interface Metadata {
  readonly format?: unknown;
  readonly version?: unknown;
  readonly records?: unknown;
  readonly tracks?: unknown;
}

async function headOf(tiles: PMTiles): Promise<{ readonly metadata: Metadata; readonly box: Box }> {
  const { minLon, minLat, maxLon, maxLat, tileType } = await tiles.getHeader().catch(orTrouble('noArchive'));
  // A file of pictures or of map features, as other programs make them.
  if (tileType !== TileType.Unknown) throw new Trouble('noArchive');
  const metadata = ((await tiles.getMetadata().catch(orTrouble('brokenIndex'))) ?? {}) as Metadata;
  return { metadata, box: [minLon, minLat, maxLon, maxLat] };
}

/** What the library throws of a file that is not as it should be, as the trouble that it is. */
function orTrouble(word: 'noArchive' | 'brokenIndex'): (error: unknown) => never {
  return (error) => {
    throw error instanceof Trouble ? error : new Trouble(word);
  };
}

async function listIn(tiles: PMTiles, zoom: number, x: number, y: number): Promise<readonly unknown[]> {
  const tile = await tiles.getZxy(zoom, x, y).catch(orTrouble('brokenIndex'));
  if (tile === undefined) return [];
  try {
    const list: unknown = JSON.parse(new TextDecoder().decode(tile.data));
    if (Array.isArray(list)) return list as readonly unknown[];
  } catch {
    throw new Trouble('brokenIndex');
  }
  throw new Trouble('brokenIndex');
}

/** The same source, of which no more is asked at once than a device has room for. */
function bounded(source: Source): Source {
  return {
    getKey: () => source.getKey(),
    getBytes: (at, length, signal, etag): Promise<RangeResponse> =>
      length <= PACKED_BYTES
        ? source.getBytes(at, length, signal, etag)
        : Promise.reject(new Trouble('brokenIndex')),
  };
}

async function unpackedPart(data: ArrayBuffer, compression: Compression): Promise<ArrayBuffer> {
  if (compression !== Compression.Gzip) throw new Trouble('brokenIndex');
  return (await unpacked(data, INDEX_BYTES)).buffer;
}

async function jsonIn(data: ArrayBuffer, mostBytes: number): Promise<unknown> {
  return JSON.parse(new TextDecoder().decode(await unpacked(data, mostBytes)));
}

/** The tiles of a zoom that an area lies in, and `around` of them to every side; null where they are more than `most`. */
function tilesOver(
  [west, south, east, north]: Box,
  zoom: number,
  around: number,
  most: number,
): readonly Tile[] | null {
  const last = 2 ** zoom - 1;
  const [x0, y0] = tileOf(west, north, zoom).map((at) => Math.max(0, at - around));
  const [x1, y1] = tileOf(east, south, zoom).map((at) => Math.min(last, at + around));
  if ((x1 - x0 + 1) * (y1 - y0 + 1) > most) return null;
  const over: Tile[] = [];
  for (let y = y0; y <= y1; y++) for (let x = x0; x <= x1; x++) over.push([x, y]);
  return over;
}

function meet(one: Box, other: Box): boolean {
  return one[0] <= other[2] && other[0] <= one[2] && one[1] <= other[3] && other[1] <= one[3];
}
