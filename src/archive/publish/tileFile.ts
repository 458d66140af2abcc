import { gzipSync } from 'fflate';
import type { Box } from '../trackRow.ts';

/** What one tile holds, packed, under its number on the Hilbert curve (PMTiles Version 3 Specification, section 4.1). */
export interface NumberedTile {
  readonly id: number;
  readonly bytes: Uint8Array;
}

interface Entry {
  readonly id: number;
  readonly at: number;
  readonly length: number;
  /** Tiles that an entry stands for; 0 where it points to a leaf. */
  readonly run: number;
}

/** Section 3: the size of the header, and within how many bytes of the file it and the root directory must lie. */
const HEADER_BYTES = 127;
const ROOT_WITHIN = 16_384;

/** Tiles to a leaf: about 2 KB, however many leaves there are. */
const LEAF_ENTRIES = 512;

const GZIP = 2;

/**
 * A file of tiles, as the PMTiles Version 3 Specification has it, that is read by ranges: header and root, one leaf, and the
 * tile.
 * @param zooms the least and the greatest
 * @param metadata any record; it is kept as JSON
 */
export function tileFile(
  tiles: readonly NumberedTile[],
  [leastZoom, mostZoom]: readonly [least: number, most: number],
  box: Box,
  metadata: object,
): Uint8Array<ArrayBuffer> {
  const sorted = [...tiles].sort((a, b) => a.id - b.id);
  let at = 0;
  const entries = sorted.map(({ id, bytes }): Entry => {
    const entry = { id, at, length: bytes.length, run: 1 };
    at += bytes.length;
    return entry;
  });
  const { root, leaves } = directoriesOf(entries);
  const meta = packed(new TextEncoder().encode(JSON.stringify(metadata)));
  const parts = [root, meta, leaves, ...sorted.map(({ bytes }) => bytes)];
  const starts = [HEADER_BYTES, root.length, meta.length, leaves.length];
  starts.forEach((_, i) => i > 0 && (starts[i] += starts[i - 1]));

  const file = new Uint8Array(starts[3] + at);
  const view = new DataView(file.buffer);
  file.set(new TextEncoder().encode('PMTiles'));
  view.setUint8(7, 3);
  const [rootAt, metaAt, leavesAt, tilesAt] = starts;
  const lengths = [rootAt, root.length, metaAt, meta.length, leavesAt, leaves.length, tilesAt, at];
  [...lengths, tiles.length, tiles.length, tiles.length].forEach((value, i) =>
    view.setBigUint64(8 + 8 * i, BigInt(value), true),
  );
  [1, GZIP, GZIP, 0, leastZoom, mostZoom].forEach((value, i) => view.setUint8(96 + i, value));
  box.forEach((deg, i) => view.setInt32(102 + 4 * i, Math.round(deg * 1e7), true));
  view.setUint8(118, leastZoom);
  const [west, south, east, north] = box;
  view.setInt32(119, Math.round(((west + east) / 2) * 1e7), true);
  view.setInt32(123, Math.round(((south + north) / 2) * 1e7), true);

  let to = HEADER_BYTES;
  for (const part of parts) {
    file.set(part, to);
    to += part.length;
  }
  return file;
}

/** A root alone where that fits its place, else one that points to leaves. */
function directoriesOf(entries: readonly Entry[]): {
  readonly root: Uint8Array;
  readonly leaves: Uint8Array;
} {
  const most = ROOT_WITHIN - HEADER_BYTES;
  if (entries.length <= LEAF_ENTRIES) return { root: directory(entries), leaves: new Uint8Array(0) };
  for (let size = LEAF_ENTRIES; ; size *= 2) {
    const leaves: Uint8Array[] = [];
    const roots: Entry[] = [];
    let at = 0;
    for (let i = 0; i < entries.length; i += size) {
      const leaf = directory(entries.slice(i, i + size));
      roots.push({ id: entries[i].id, at, length: leaf.length, run: 0 });
      leaves.push(leaf);
      at += leaf.length;
    }
    const root = directory(roots);
    if (root.length <= most) return { root, leaves: joined(leaves) };
  }
}

/** Section 4.2: how many, then all ids as steps, all runs, all lengths, all places; 0 is "right behind the one before". */
function directory(entries: readonly Entry[]): Uint8Array {
  const numbers = [entries.length];
  entries.forEach(({ id }, i) => numbers.push(i === 0 ? id : id - entries[i - 1].id));
  entries.forEach(({ run }) => numbers.push(run));
  entries.forEach(({ length }) => numbers.push(length));
  entries.forEach(({ at }, i) => {
    const before = i === 0 ? null : entries[i - 1];
    numbers.push(before && at === before.at + before.length ? 0 : at + 1);
  });
  return packed(Uint8Array.from(numbers.flatMap(varint)));
}

/** Seven bits a byte, the lowest first, the highest bit set while more follow. */
function varint(value: number): number[] {
  const bytes: number[] = [];
  let rest = value;
  for (; rest >= 128; rest = Math.floor(rest / 128)) bytes.push((rest % 128) + 128);
  return [...bytes, rest];
}

function packed(bytes: Uint8Array): Uint8Array {
  return gzipSync(bytes, { mtime: 0 });
}

function joined(parts: readonly Uint8Array[]): Uint8Array {
  const whole = new Uint8Array(parts.reduce((sum, { length }) => sum + length, 0));
  parts.reduce((at, part) => (whole.set(part, at), at + part.length), 0);
  return whole;
}
