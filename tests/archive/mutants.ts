import fc from 'fast-check';
import { strToU8 } from 'fflate';
import { readFileSync } from 'node:fs';
import { writeArrayBuffer } from 'geotiff';
import { filesOf } from '../../src/archive/folder/files.ts';
import { readZip, zipOf } from '../../src/archive/folder/zip.ts';
import { readGeoJson } from '../../src/archive/geoJsonIn.ts';
import { readGeoPackage } from '../../src/archive/geopackage/read.ts';
import { geoPackageOf } from '../../src/archive/geopackage/write.ts';
import { archiveGeoJson } from '../../src/archive/out/archiveGeoJson.ts';
import { outText } from '../../src/archive/out/formats.ts';
import { readTrip, tripToJson } from '../../src/archive/share.ts';
import type { Reading } from '../../src/problem.ts';
import { readGeoTiff } from '../../src/route/geoTiff.ts';
import { readGpx } from '../../src/route/gpx.ts';
import { anyGradedTrack } from './gradedTracks.ts';
import { piecesOf } from './pieces.ts';
import { anyTrip } from './trips.ts';

/** A format that is read from anybody's hand: whole files of it, and its reader. */
export interface Format {
  readonly name: string;
  readonly seeds: readonly Uint8Array[];
  /** What else to do to it than to any bytes: keep everything in its place, or change values of JSON. */
  readonly also?: 'in place' | 'JSON';
  readonly read: (bytes: Uint8Array) => Promise<Reading<unknown>>;
}

/** Every format with small whole files, the same each time. */
export async function formats(): Promise<Format[]> {
  const tracks = fc.sample(anyGradedTrack(), { numRuns: 3, seed: 11 });
  const trips = fc.sample(anyTrip(), { numRuns: 3, seed: 12 });
  const gpx = (name: string) => readFileSync(new URL(`../route/in/${name}`, import.meta.url));
  const text = (bytes: Uint8Array) => new TextDecoder().decode(bytes);
  return [
    {
      name: 'GPX',
      seeds: [
        ...['plain.gpx', 'segments.gpx', 'exponents.gpx', 'version-1-0.gpx', 'prefixed.gpx'].map(gpx),
        ...trips.map((trip) => strToU8(outText(trip, 'gpx', 'metric'))),
      ],
      read: (bytes) => readGpx(bytes),
    },
    {
      name: 'trip',
      also: 'JSON',
      seeds: trips.map((trip) => strToU8(tripToJson(trip))),
      read: (bytes) => Promise.resolve(readTrip(text(bytes))),
    },
    {
      name: 'GeoTIFF',
      also: 'in place',
      seeds: tiffs(),
      read: (bytes) => readGeoTiff(new Blob([bytes.slice()])),
    },
    {
      name: 'GeoPackage',
      also: 'in place',
      seeds: [await geoPackageOf(tracks.slice(0, 1), 0), await geoPackageOf(tracks, 0)],
      read: (bytes) => readGeoPackage(bytes),
    },
    {
      name: 'zip',
      seeds: [
        Buffer.concat(await piecesOf(zipOf(tracks.slice(0, 1)))),
        Buffer.concat(await piecesOf(zipOf(tracks))),
      ],
      read: (bytes) => readZip(bytes),
    },
    {
      name: 'GeoJSON',
      also: 'JSON',
      seeds: [
        strToU8((await piecesOf(archiveGeoJson(tracks))).join('')),
        filesOf(tracks[0], new Set())[0].bytes,
      ],
      read: (bytes) => Promise.resolve(readGeoJson(text(bytes))),
    },
  ];
}

function tiffs(): Uint8Array[] {
  const where = {
    ModelTiepoint: [0, 0, 0, 10, 50, 0],
    ModelPixelScale: [0.001, 0.001, 0],
    GeographicTypeGeoKey: 4326,
    GTModelTypeGeoKey: 2,
  };
  const utm = {
    ModelTiepoint: [0, 0, 0, 500_000, 5_500_000, 0],
    ModelPixelScale: [10, 10, 0],
    ProjectedCSTypeGeoKey: 32633,
    GTModelTypeGeoKey: 1,
  };
  const heights = Array.from({ length: 20 * 16 }, (_, i) => 300 + (i % 23));
  return [where, utm].flatMap((place) =>
    [Float32Array.from(heights), Int16Array.from(heights)].map(
      (values) => new Uint8Array(writeArrayBuffer(values, { width: 20, height: 16, ...place })),
    ),
  );
}

/** Numbers in [0, 1) from a seed (mulberry32, public domain, Tommy Ettinger). */
export function randomFrom(seed: number): () => number {
  let state = seed | 0;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** Numbers that readers stumble over. */
const EDGES = [
  0, 1, 0x7f, 0x80, 0xff, 0x7fff, 0x8000, 0xffff, 0x7fffffff, 0x80000000, 0xfffffffe, 0xffffffff,
];

/** Pieces of text that mean something to one format or another. */
const WORDS = [
  'null',
  '-1',
  '1e999',
  '1e308',
  'NaN',
  '{',
  '}',
  '[',
  ']',
  '"',
  ',',
  '<trkseg>',
  '</trkseg>',
  '<!ENTITY a "b">',
  '&a;',
  '<![CDATA[',
  ']]>',
  '\0',
  '\ud800',
  '../',
  'PK\x03\x04',
  'true',
  '[[[[[[[[[[',
  '{"a":{"a":{"a":',
  '"__proto__":',
  '\\u0000',
].map((word) => new TextEncoder().encode(word));

/** One file of a format with one to eight things wrong with it, always the same for the same number. */
export function mutant({ seeds, also }: Format, number: number): Uint8Array {
  const next = randomFrom(number);
  const below = (n: number) => Math.floor(next() * n);
  const gently = also !== undefined && below(4) > 0;
  if (gently && also === 'JSON') return jsonMutant(seeds[below(seeds.length)], below);
  let bytes = Uint8Array.from(seeds[below(seeds.length)]);
  for (let left = 1 + below(8); left > 0; left--) {
    const at = below(bytes.length + 1);
    const length = 1 + below(below(4) === 0 ? 2_000 : 16);
    const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
    switch (below(gently ? 4 : 9)) {
      case 0:
        if (at < bytes.length) bytes[at] ^= 1 << below(8);
        break;
      case 1:
        if (at < bytes.length) bytes[at] = below(256);
        break;
      case 2:
        if (at + 4 <= bytes.length) view.setUint32(at, EDGES[below(EDGES.length)], below(2) === 0);
        break;
      case 3:
        if (at + 2 <= bytes.length) view.setUint16(at, EDGES[below(EDGES.length)] & 0xffff, below(2) === 0);
        break;
      case 4:
        bytes = joined(bytes.subarray(0, at), bytes.subarray(at + length));
        break;
      case 5:
        bytes = joined(bytes.subarray(0, at), bytes.subarray(below(at + 1), at), bytes.subarray(at));
        break;
      case 6:
        bytes = joined(bytes.subarray(0, at), WORDS[below(WORDS.length)], bytes.subarray(at));
        break;
      case 7: {
        const other = seeds[below(seeds.length)];
        const from = below(other.length);
        bytes = joined(
          bytes.subarray(0, at),
          other.subarray(from, from + length),
          bytes.subarray(at + length),
        );
        break;
      }
      default:
        if (below(4) === 0) bytes = bytes.slice(0, at);
        else if (at < bytes.length) bytes.fill(below(256), at, at + length);
    }
  }
  return bytes;
}

/** Values that mean something else than what stood there. */
const VALUES: readonly unknown[] = [
  null,
  true,
  -1,
  0,
  1e308,
  1e-320,
  181,
  '',
  'x',
  '\ud800',
  [],
  {},
  [[]],
  [null],
  { length: 5 },
  'x'.repeat(3_000),
  { toString: 1 },
  Array.from({ length: 300 }, () => 0),
  'rutline-trip',
  '__proto__',
];

/** Whole JSON in which a few values are not what they were. */
function jsonMutant(seed: Uint8Array, below: (n: number) => number): Uint8Array {
  const root: unknown[] = [JSON.parse(new TextDecoder().decode(seed))];
  for (let left = 1 + below(6); left > 0; left--) {
    let [holder, key]: [Record<string, unknown>, string] = [root as never, '0'];
    for (let depth = below(12); depth > 0; depth--) {
      const inside = holder[key];
      const keys = typeof inside === 'object' && inside !== null ? Object.keys(inside) : [];
      if (keys.length === 0) break;
      [holder, key] = [inside as Record<string, unknown>, keys[below(keys.length)]];
    }
    if (below(4) === 0) delete holder[key];
    else holder[key] = below(8) === 0 ? root[0] : VALUES[below(VALUES.length)];
  }
  try {
    return strToU8(JSON.stringify(root[0] ?? null));
  } catch {
    // A value that holds itself cannot be written.
    return seed;
  }
}

/** Never more than a megabyte: to double a file eight times is no news. */
function joined(...parts: readonly Uint8Array[]): Uint8Array<ArrayBuffer> {
  return Uint8Array.from(Buffer.concat(parts).subarray(0, 1_000_000));
}

/** What is wrong with the answer of a reader, as a sentence; null where it is a value or a problem, as it must be. */
export function faultOf({ value, problems }: Reading<unknown>): string | null {
  if (value === null && problems.length === 0) return 'neither a value nor a problem';
  const mute = problems.find(({ what, done, where }) => !what || !done || typeof where !== 'string');
  return mute ? `a problem that says nothing: ${JSON.stringify(mute)}` : null;
}
