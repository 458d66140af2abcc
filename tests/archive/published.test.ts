import { gunzipSync } from 'fflate';
import type { RangeResponse, Source } from 'pmtiles';
import { PMTiles, tileIdToZxy } from 'pmtiles';
import { expect, test } from 'vitest';
import { levelsOf } from '../../src/archive/levels.ts';
import type { GradedTrack } from '../../src/archive/gradedTrack.ts';
import { lookInto } from '../../src/archive/publish/lookInto.ts';
import { indexOf, recordsOf, ZOOM } from '../../src/archive/publish/published.ts';
import type { PublishedRow } from '../../src/archive/publish/published.ts';
import { tileFile } from '../../src/archive/publish/tileFile.ts';
import { tileOf } from '../../src/archive/publish/webTile.ts';
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
  const file = tileFile(tiles, ZOOM, [1, 2, 3, 4], { name: 'x' });
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

test('a track is found where it lies and taken whole, with nobody in it', async () => {
  const tracks = [trackAt('a', 10, 46), trackAt('b', 10.01, 46.01), trackAt('c', 12, 46)];
  const { bytes, rows, nowhere } = recordsOf(tracks, levelsOf);
  expect(nowhere).toEqual([]);
  const index = new Served(indexOf(rows, 'x.records'));
  const records = new Served(bytes);
  const published = await lookInto(index, () => records);
  const found = (await published.inBox([9.9, 45.9, 10.1, 46.1]))!;
  expect(found.map(({ name }) => name).sort()).toEqual(['Track a', 'Track b']);
  expect(found[0].levels).toEqual(levelsOf(tracks[0]));
  expect(await published.inBox([-180, -80, 180, 80])).toBeNull();

  const { value, problems } = await published.take(found.find(({ id }) => id === 'b')!);
  expect(problems).toEqual([]);
  expect(value!.surveyed[0].visits[0].stretch).toEqual(tracks[1].surveyed[0].visits[0].stretch);
  expect(value!.surveyed[0].obstacle.lines).toEqual(tracks[1].surveyed[0].obstacle.lines);
  const text = recordToJson(value);
  for (const one of ['Ann', '"image"', ...[wholeTrack().note].filter(Boolean)])
    expect(text).not.toContain(one);
  expect(records.read).toBeLessThan(bytes.length / 2);
});

test('what is read of one area does not grow with the archive', async () => {
  const [one] = recordsOf([trackAt('0', 10, 46)], levelsOf).rows;
  const cost = async (count: number) => {
    const side = Math.ceil(Math.sqrt(count));
    const rows = Array.from({ length: count }, (_, i): PublishedRow => {
      const [west, south] = [5 + (i % side) * 0.1, 40 + Math.floor(i / side) * 0.1];
      return { ...one, id: `${i}`, name: `Track ${i}`, box: [west, south, west + 0.02, south + 0.02] };
    });
    const index = new Served(indexOf(rows, 'x.records'));
    const published = await lookInto(index, () => index);
    const found = await published.inBox([5.5, 40.5, 5.7, 40.7]);
    expect(found!.length).toBeGreaterThanOrEqual(4);
    return { read: index.read, size: index.bytes.length };
  };
  const [small, large] = [await cost(600), await cost(6_000)];
  expect(large.size).toBeGreaterThan(8 * small.size);
  expect(large.read).toBeLessThan(1.25 * small.read);
});

test('positions lie in the tiles that the standard puts them in', () => {
  // OGC 17-083r4, WebMercatorQuad: level 1 has two by two tiles that meet at 0°, 0°, the first in the north-west.
  expect(tileOf(-0.001, 0.001, 1)).toEqual([0, 0]);
  expect(tileOf(0.001, -0.001, 1)).toEqual([1, 1]);
  expect(tileOf(-180, 90, 3)).toEqual([0, 0]);
  expect(tileOf(180, -90, 3)).toEqual([7, 7]);
});
