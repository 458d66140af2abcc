import { gunzipSync } from 'fflate';
import type { Source } from 'pmtiles';
import { PMTiles } from 'pmtiles';
import type { Reading } from '../../problem.ts';
import { gradedFrom } from '../gradedRecord.ts';
import type { GradedTrack } from '../gradedTrack.ts';
import type { Box } from '../trackRow.ts';
import type { PublishedRow } from './published.ts';
import { PUBLISHED_FORMAT, ZOOM } from './published.ts';
import { tileOf } from './webTile.ts';

/** Tiles that are asked for at most: an area of some 50 km by 50 km. */
const MOST_TILES = 64;

/** Bytes that a record may have, packed and unpacked. */
const RECORD_BYTES = 2 ** 24;
const RECORD_BYTES_UNPACKED = 2 ** 28;

/** A published archive, of which only what is asked for is read. */
export interface Published {
  /**
   * Tracks that lie in an area; null where it is too large to be asked for at once. One that is longer than a tile and
   * only passes through it may be left out.
   */
  readonly inBox: (box: Box) => Promise<readonly PublishedRow[] | null>;
  /** The whole record of one of them, checked as any file is. */
  readonly take: (row: PublishedRow) => Promise<Reading<GradedTrack>>;
}

/**
 * Opens a published archive; rejects where it is none. `index` and `records` give bytes of a range, the second of the file
 * whose name it is told.
 */
export async function lookInto(index: Source, records: (name: string) => Source): Promise<Published> {
  const tiles = new PMTiles(index);
  const metadata = (await tiles.getMetadata()) as { readonly format?: unknown; readonly records?: unknown };
  const { format, records: name } = metadata;
  if (format !== PUBLISHED_FORMAT || typeof name !== 'string' || !/^[\w-]+\.records$/.test(name))
    throw new Error('no published archive');
  return {
    inBox: async (box) => {
      const [west, south, east, north] = box;
      const [x0, y0] = tileOf(west, north, ZOOM);
      const [x1, y1] = tileOf(east, south, ZOOM);
      if ((x1 - x0 + 3) * (y1 - y0 + 3) > MOST_TILES) return null;
      const found: PublishedRow[] = [];
      for (let y = Math.max(0, y0 - 1); y <= Math.min(2 ** ZOOM - 1, y1 + 1); y++)
        for (let x = Math.max(0, x0 - 1); x <= Math.min(2 ** ZOOM - 1, x1 + 1); x++) {
          const tile = await tiles.getZxy(ZOOM, x, y);
          if (tile) found.push(...rowsIn(tile.data).filter((row) => meet(row.box, box)));
        }
      return found;
    },
    take: async ({ record: [at, length] }) => {
      if (length > RECORD_BYTES) throw new Error('a record is too large');
      const { data } = await records(name).getBytes(at, length);
      return gradedFrom(JSON.parse(unpackedText(new Uint8Array(data))));
    },
  };
}

function rowsIn(data: ArrayBuffer): PublishedRow[] {
  const rows: unknown = JSON.parse(new TextDecoder().decode(data));
  return Array.isArray(rows) ? rows.filter(isRow) : [];
}

function isRow(value: unknown): value is PublishedRow {
  const { id, name, area, box, record } = (value ?? {}) as Partial<PublishedRow>;
  const areNumbers = (list: unknown, count: number) =>
    Array.isArray(list) && list.length === count && list.every(Number.isFinite);
  return (
    [id, name, area].every((text) => typeof text === 'string') && areNumbers(box, 4) && areNumbers(record, 2)
  );
}

function meet(one: Box, other: Box): boolean {
  return one[0] <= other[2] && other[0] <= one[2] && one[1] <= other[3] && other[1] <= one[3];
}

/** The last four bytes of gzip say how much it unpacks to (RFC 1952, section 2.3.1). */
function unpackedText(bytes: Uint8Array): string {
  const size = new DataView(bytes.buffer, bytes.byteOffset).getUint32(bytes.length - 4, true);
  if (size > RECORD_BYTES_UNPACKED) throw new Error('a record is too large');
  return new TextDecoder().decode(gunzipSync(bytes, { out: new Uint8Array(size) }));
}
