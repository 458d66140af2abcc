import { gunzipSync, gzipSync } from 'fflate';
import type { RangeResponse, Source } from 'pmtiles';
import { PMTiles, tileIdToZxy, zxyToTileId } from 'pmtiles';
import { describe, expect, test } from 'vitest';
import { gradedRecord } from '../../src/archive/gradedRecord.ts';
import type { GradedTrack } from '../../src/archive/gradedTrack.ts';
import { levelsOf } from '../../src/archive/levels.ts';
import type { Published } from '../../src/archive/publish/lookInto.ts';
import { lookInto } from '../../src/archive/publish/lookInto.ts';
import { INDEX_NAME, PUBLISHED_FORMAT, ZOOM } from '../../src/archive/publish/published.ts';
import type { PublishedRow } from '../../src/archive/publish/published.ts';
import { indexOf } from '../../src/archive/publish/publishedIndex.ts';
import { Publishing } from '../../src/archive/publish/publishing.ts';
import { tileFile } from '../../src/archive/publish/tileFile.ts';
import { tileOf } from '../../src/archive/publish/webTile.ts';
import type { Box } from '../../src/archive/trackRow.ts';
import { recordToJson } from '../../src/archive/share.ts';
import { wholeTrack } from './replicas.ts';

/** Bytes as a web host gives them by range, counted. */
class Served implements Source {
  read = 0;
  constructor(readonly bytes: Uint8Array<ArrayBuffer>) {}

  getKey = () => 'served';

  getBytes(at: number, length: number): Promise<RangeResponse> {
    const data = this.bytes.slice(at, at + length).buffer;
    this.read += data.byteLength;
    return Promise.resolve({ data });
  }
}

function isGzip(data: ArrayBuffer): boolean {
  const [first, second] = new Uint8Array(data);
  return first === 0x1f && second === 0x8b;
}

/** The track of the tests, at another place and under another name. */
function trackAt(id: string, lng: number, lat: number): GradedTrack {
  const { track, surveyed, ...rest } = wholeTrack();
  const [dLng, dLat] = [lng - surveyed[0].obstacle.lng, lat - surveyed[0].obstacle.lat];
  return {
    ...rest,
    id,
    name: `Track ${id}`,
    track: track && {
      ...track,
      lng: track.lng.map((at) => at + dLng),
      lat: track.lat.map((at) => at + dLat),
    },
    waypoints: [],
    surveyed: surveyed.map((one) => ({ ...one, obstacle: { ...one.obstacle, lng, lat } })),
  };
}

test('the pmtiles library reads what was written: header, metadata and every tile, through leaves', async () => {
  const ids = Array.from({ length: 5_000 }, (_, i) => 5_592_405 + (i * (i + 1)) / 2);
  const tiles = ids.map((id) => ({ id, bytes: Uint8Array.of(id % 251, id % 7) }));
  const file = tileFile(tiles, [ZOOM, ZOOM], [1, 2, 3, 4], { name: 'x' });
  const served = new Served(file);
  // What the tiles of this test hold is not packed, and left as it is.
  const reader = new PMTiles(served, undefined, (data) =>
    Promise.resolve(isGzip(data) ? gunzipSync(new Uint8Array(data)).buffer : data),
  );
  expect(await reader.getHeader()).toMatchObject({
    specVersion: 3,
    minZoom: ZOOM,
    maxZoom: ZOOM,
    numAddressedTiles: 5_000,
    minLon: 1,
    minLat: 2,
    maxLon: 3,
    maxLat: 4,
    clustered: true,
  });
  expect(await reader.getMetadata()).toEqual({ name: 'x' });
  for (const { id, bytes } of tiles.filter((_, i) => i % 97 === 0 || i > 4_990)) {
    const found = await reader.getZxy(...tileIdToZxy(id));
    expect([...new Uint8Array(found!.data)]).toEqual([...bytes]);
  }
  expect(await reader.getZxy(...tileIdToZxy(ids[7] + 1))).toBeUndefined();
});

function published(tracks: readonly GradedTrack[]) {
  const publishing = new Publishing();
  tracks.forEach((track) => publishing.add(track));
  const files = publishing.files();
  const bytes = new Uint8Array(files.records.size);
  files.records.pieces.reduce((at, piece) => (bytes.set(piece, at), at + piece.length), 0);
  return { ...files, indexBytes: files.index.pieces[0], recordBytes: bytes };
}

function opened(index: Uint8Array<ArrayBuffer>, records = new Uint8Array(0)): Promise<Published> {
  return lookInto(new Served(index), () => new Served(records));
}

const HERE: Box = [9.9, 45.9, 10.1, 46.1];

test('a track is found where it lies and taken whole, with nobody in it', async () => {
  const tracks = [trackAt('a', 10, 46), trackAt('b', 10.01, 46.01), trackAt('c', 12, 46)];
  const { indexBytes, recordBytes, nowhere, index, records } = published(tracks);
  expect(nowhere).toEqual([]);
  expect(index.name).toBe(INDEX_NAME);
  expect(records.name).toMatch(/^[0-9a-f]{32}\.records$/);
  const served = new Served(recordBytes);
  const archive = await lookInto(new Served(indexBytes), (name) => {
    expect(name).toBe(records.name);
    return served;
  });
  expect(archive.trackCount).toBe(3);
  const { rows } = await archive.inBox(HERE);
  expect(rows.map(({ name }) => name).sort()).toEqual(['Track a', 'Track b']);
  expect(rows[0].levels).toEqual(levelsOf(tracks[0]));

  const { value, problems } = await archive.take(rows.find(({ id }) => id === 'b')!);
  expect(problems).toEqual([]);
  expect(value!.surveyed[0].visits[0].stretch).toEqual(tracks[1].surveyed[0].visits[0].stretch);
  expect(value!.surveyed[0].obstacle.lines).toEqual(tracks[1].surveyed[0].obstacle.lines);
  const text = recordToJson(value);
  for (const one of ['Ann', '"image"', ...[wholeTrack().note].filter(Boolean)])
    expect(text).not.toContain(one);
  expect(served.read).toBeLessThan(recordBytes.length / 2);
});

test('of a visit the day goes out, and no time of it', () => {
  const [one] = wholeTrack().surveyed;
  const [visit] = one.visits;
  const atMs = Date.UTC(2025, 4, 3, 23, 17, 5);
  const track = { ...trackAt('a', 10, 46), surveyed: [{ ...one, visits: [{ ...visit, atMs }] }] };
  const { recordBytes } = published([track]);
  const text = new TextDecoder().decode(gunzipSync(recordBytes));
  expect(text).not.toContain(String(atMs));
  expect(text).toContain(`"atMs":${Date.UTC(2025, 4, 3, 12)}`);
});

test('records are named by all that is in them, so that no index is read with those of another time', () => {
  const named = (...tracks: readonly GradedTrack[]) => {
    const publishing = new Publishing();
    tracks.forEach((track) => publishing.add(track));
    return publishing.files().records.name;
  };
  const [one, two] = [trackAt('a', 10, 46), trackAt('b', 11, 46)];
  const names = [named(one), named(one, two), named(two), named(one, { ...two, area: 'elsewhere' })];
  expect(new Set(names).size).toBe(names.length);
  expect(named(one, two)).toBe(names[1]);
});

test('an area too wide to name each track is told in crowds, which lead to every one of them', async () => {
  const tracks = Array.from({ length: 40 }, (_, i) => trackAt(`${i}`, (i % 8) * 3, Math.floor(i / 8) * 4));
  const archive = await opened(published(tracks).indexBytes);
  const found = new Set<string>();
  const look = async (box: Box, deep: number): Promise<number> => {
    expect(deep).toBeLessThan(12);
    const { rows, crowds, tooWide } = await archive.inBox(box);
    expect(tooWide).toBe(false);
    rows.forEach(({ id }) => found.add(id));
    for (const crowd of crowds) {
      expect(await look(crowd.box, deep + 1)).toBeGreaterThan(0);
    }
    return rows.length + crowds.length;
  };
  const { crowds } = await archive.inBox([-180, -80, 180, 80]);
  expect(crowds.reduce((sum, { count }) => sum + count, 0)).toBe(40);
  expect(crowds[0].name).toMatch(/^Track \d+$/);
  await look(archive.box, 0);
  expect([...found].sort()).toEqual(tracks.map(({ id }) => id).sort());
});

test('a long track is found wherever it passes, and told once', async () => {
  const { track, surveyed, ...rest } = trackAt('long', 10, 46);
  const at = Float64Array.from({ length: track!.length }, (_, i) => i / (track!.length - 1));
  const long = {
    ...rest,
    surveyed,
    track: { ...track!, lng: at.map((part) => 10 + 1.5 * part), lat: at.map((part) => 46 + part * part) },
  };
  const archive = await opened(published([long]).indexBytes);
  for (const part of [0.02, 0.3, 0.5, 0.8, 0.99]) {
    const [lng, lat] = [10 + 1.5 * part, 46 + part * part];
    const { rows } = await archive.inBox([lng - 0.02, lat - 0.02, lng + 0.02, lat + 0.02]);
    expect(rows.map(({ id }) => id)).toEqual(['long']);
  }
});

test('what is read of one area does not grow with the archive', async () => {
  const row = await rowOf(published([trackAt('0', 10, 46)]).indexBytes);
  const indexes = [600, 6_000].map((count) => {
    const side = Math.ceil(Math.sqrt(count));
    const placed = Array.from({ length: count }, (_, i) => {
      const [west, south] = [5 + (i % side) * 0.1, 40 + Math.floor(i / side) * 0.1];
      const box: Box = [west, south, west + 0.02, south + 0.02];
      const tiles = [tileOf(west + 0.01, south + 0.01, ZOOM)];
      return { row: { ...row, id: `${i}`, name: `Track ${i}`, box }, tiles };
    });
    return indexOf(placed, 'x.records');
  });
  const cost = async (bytes: Uint8Array<ArrayBuffer>, area: Box, least: number) => {
    const index = new Served(bytes);
    const archive = await lookInto(index, () => index);
    const { rows, crowds } = await archive.inBox(area);
    expect(rows.length + crowds.length).toBeGreaterThanOrEqual(least);
    return index.read;
  };
  const [small, large] = indexes;
  expect(large.length).toBeGreaterThan(8 * small.length);
  for (const [area, least] of [
    [[5.5, 40.5, 5.7, 40.7], 4],
    [[-180, -80, 180, 80], 1],
  ] as const)
    expect(await cost(large, area, least)).toBeLessThan(1.25 * (await cost(small, area, least)));
});

async function rowOf(index: Uint8Array<ArrayBuffer>): Promise<PublishedRow> {
  return (await (await opened(index)).inBox(HERE)).rows[0];
}

describe('what cannot be read is told apart', () => {
  const { indexBytes, recordBytes } = published([trackAt('a', 10, 46), trackAt('b', 10.01, 46)]);
  const indexWith = (metadata: object) => tileFile([], [0, ZOOM], [1, 2, 3, 4], metadata);
  const changed = (bytes: Uint8Array, at: number) => bytes.map((one, i) => (i === at ? one ^ 0x55 : one));

  test.each([
    ['nothing', new Uint8Array(0), 'noArchive'],
    ['a page of the web', new TextEncoder().encode(`<!doctype html>${' '.repeat(500)}`), 'noArchive'],
    ['tiles of something else', indexWith({ name: 'x' }), 'noArchive'],
    ['a newer archive', indexWith({ format: PUBLISHED_FORMAT, version: 3, records: 'x.records' }), 'newer'],
    [
      'records that lie elsewhere',
      indexWith({ format: PUBLISHED_FORMAT, version: 2, records: '../x.records' }),
      'brokenIndex',
    ],
    ['an index that was cut off', indexBytes.slice(0, 200), 'brokenIndex'],
  ])('%s', async (_name, bytes, word) => {
    await expect(opened(bytes)).rejects.toMatchObject({ word });
  });

  test('a tile with a single bit changed', async () => {
    const archive = await opened(changed(indexBytes, indexBytes.length - 20));
    await expect(archive.inBox(HERE)).rejects.toMatchObject({ word: 'brokenIndex' });
  });

  test('a record with a single bit changed, one that was cut off, one that is another track’s', async () => {
    const row = await rowOf(indexBytes);
    for (const records of [changed(recordBytes, row.record[0] + 40), recordBytes.slice(0, row.record[0] + 9)])
      await expect((await opened(indexBytes, records)).take(row)).rejects.toMatchObject({
        word: 'brokenRecord',
      });
    const archive = await opened(indexBytes, recordBytes);
    await expect(archive.take({ ...row, id: 'other', hash: null })).rejects.toMatchObject({
      word: 'brokenRecord',
    });
    expect((await archive.take(row)).value!.id).toBe(row.id);
  });

  test('a record of a newer format is a problem that says so', async () => {
    const record = { ...gradedRecord(trackAt('a', 10, 46)), version: 99 };
    const bytes = gzip(JSON.stringify(record));
    const { value, problems } = await (
      await opened(indexBytes, bytes)
    ).take({ id: 'a', record: [0, bytes.length], hash: null });
    expect(value).toBeNull();
    expect(problems[0].what).toContain('99');
  });

  test('what unpacks to more than a device has room for is not unpacked', async () => {
    const bomb = gzip('['.padEnd(8 * 2 ** 20));
    const [x, y] = tileOf(10, 46, ZOOM);
    const id = zxyToTileId(ZOOM, x, y);
    const metadata = { format: PUBLISHED_FORMAT, version: 2, records: 'x.records' };
    const archive = await opened(tileFile([{ id, bytes: bomb }], [0, ZOOM], [1, 2, 3, 4], metadata));
    expect(bomb.length).toBeLessThan(20_000);
    await expect(archive.inBox(HERE)).rejects.toMatchObject({ word: 'brokenIndex' });
  });

  test('rows that are none are left out, and those that are keep only what rows have', async () => {
    const [x, y] = tileOf(10, 46, ZOOM);
    const row = await rowOf(indexBytes);
    const rows = [
      null,
      7,
      { ...row, id: 5 },
      { ...row, box: [1, 2, 3] },
      { ...row, box: [1, 2, 3, null] },
      { ...row, record: [-1, 5] },
      { ...row, record: [0.5, 5] },
      { ...row, lengthM: 'far', lastVisitMs: {}, levels: { a: {}, b: 2 }, name: 'x'.repeat(9_000), more: 1 },
    ];
    const bytes = gzip(JSON.stringify(rows));
    const metadata = { format: PUBLISHED_FORMAT, version: 2, records: 'x.records' };
    const id = zxyToTileId(ZOOM, x, y);
    const archive = await opened(tileFile([{ id, bytes }], [0, ZOOM], [1, 2, 3, 4], metadata));
    const found = (await archive.inBox(HERE)).rows;
    expect(found).toEqual([
      { ...row, lengthM: 0, lastVisitMs: null, levels: { b: 2 }, name: 'x'.repeat(300) },
    ]);
  });
});

test('an archive of the first version, without hashes and crowds, is read too', async () => {
  const { recordBytes, indexBytes } = published([trackAt('a', 10, 46)]);
  const { hash, ...old } = await rowOf(indexBytes);
  expect(hash).toMatch(/^[0-9a-f]{32}$/);
  const [x, y] = tileOf(10, 46, ZOOM);
  const bytes = gzip(JSON.stringify([old]));
  const metadata = { format: PUBLISHED_FORMAT, version: 1, records: 'x.records', tracks: 1 };
  const index = tileFile([{ id: zxyToTileId(ZOOM, x, y), bytes }], [ZOOM, ZOOM], [9, 45, 11, 47], metadata);
  const archive = await opened(index, recordBytes);
  expect(await archive.inBox([9, 45, 11, 47])).toEqual({ rows: [], crowds: [], tooWide: true });
  const { rows } = await archive.inBox(HERE);
  expect((await archive.take(rows[0])).value!.name).toBe('Track a');
});

function gzip(text: string): Uint8Array<ArrayBuffer> {
  return Uint8Array.from(gzipSync(new TextEncoder().encode(text)));
}
