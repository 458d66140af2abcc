import fc from 'fast-check';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { TAKEN_AT_ONCE } from '../../src/archive/filed.ts';
import { BLOCK, BlockFile } from '../../src/archive/geopackage/blockFile.ts';
import { takeGeoPackage } from '../../src/archive/geopackage/read.ts';
import { geoPackageOf, writeGeoPackage } from '../../src/archive/geopackage/write.ts';
import type { GradedTrack } from '../../src/archive/gradedTrack.ts';
import { anyGradedTrack } from './gradedTracks.ts';

/** What a browser keeps, of which a worker can have the bytes at once; that of Node cannot be asked so. */
class Kept {
  readonly bytes: Uint8Array;

  constructor(parts: readonly (Uint8Array | Kept)[]) {
    this.bytes = Buffer.concat(parts.map((part) => (part instanceof Kept ? part.bytes : part)));
  }

  get size(): number {
    return this.bytes.length;
  }

  slice(from: number, to?: number): Kept {
    return new Kept([this.bytes.slice(from, to)]);
  }
}

const readBlob = (blob: Blob) => Uint8Array.from((blob as unknown as Kept).bytes).buffer;

afterEach(() => {
  vi.unstubAllGlobals();
});

const BLOCKS = 12;
/** Of those, how many stay in memory. */
const MOST = 4;

type Step =
  | { readonly is: 'write' | 'read'; readonly at: number; readonly length: number; readonly byte: number }
  | { readonly is: 'truncate'; readonly at: number };

const anyPlace = fc
  .tuple(fc.integer({ min: 0, max: BLOCKS - 1 }), fc.constantFrom(0, 1, 4096, BLOCK - 3))
  .map(([block, within]) => block * BLOCK + within);
const anyStep: fc.Arbitrary<Step> = fc.oneof(
  {
    weight: 20,
    arbitrary: fc.record({
      is: fc.constantFrom('write' as const, 'read' as const),
      at: anyPlace,
      length: fc.constantFrom(1, 7, 4096, BLOCK + 5),
      byte: fc.integer({ min: 1, max: 255 }),
    }),
  },
  { weight: 1, arbitrary: fc.record({ is: fc.constant('truncate' as const), at: anyPlace }) },
);

describe('a file in blocks', () => {
  test('holds what bytes in memory would, whatever was put away meanwhile', () => {
    vi.stubGlobal('Blob', Kept);
    let fetches = 0;
    fc.assert(
      fc.property(fc.array(anyStep, { minLength: 50, maxLength: 100 }), (steps) => {
        const file = new BlockFile(readBlob, MOST);
        const plain = new Uint8Array(BLOCKS * BLOCK + 2 * BLOCK);
        let size = 0;
        for (const step of steps) {
          if (step.is === 'truncate') {
            file.truncate(step.at);
            if (step.at < size) plain.fill(0, step.at, size);
            size = Math.min(size, step.at);
          } else if (step.is === 'write') {
            const bytes = new Uint8Array(step.length).fill(step.byte);
            file.write(step.at, bytes);
            plain.set(bytes, step.at);
            size = Math.max(size, step.at + step.length);
          } else {
            const into = new Uint8Array(step.length).fill(99);
            const count = file.read(step.at, into);
            expect(count).toBe(Math.max(0, Math.min(step.length, size - step.at)));
            expect(Buffer.compare(into, plain.subarray(step.at, step.at + step.length))).toBe(0);
          }
          expect(file.size).toBe(size);
        }
        const whole = (file.blob() as unknown as Kept).bytes;
        expect(Buffer.compare(whole, plain.subarray(0, size))).toBe(0);
        fetches += file.fetches;
      }),
      { numRuns: 12, seed: 26, endOnFailure: true },
    );
    expect(fetches).toBeGreaterThan(100);
  });

  test('makes the same GeoPackage as memory does, and gives its tracks back', async () => {
    const tracks = fc.sample(anyGradedTrack(), { numRuns: 4, seed: 27 });
    const plain = await geoPackageOf(tracks, 0);
    vi.stubGlobal('Blob', Kept);
    const file = new BlockFile(readBlob);
    await writeGeoPackage(file, tracks, 0);
    const blob = file.blob();
    expect(Buffer.compare((blob as unknown as Kept).bytes, plain)).toBe(0);
    const read: GradedTrack[] = [];
    const { problems } = await takeGeoPackage(BlockFile.ofBlob(blob, readBlob), (some) => {
      read.push(...some);
    });
    expect(problems).toEqual([]);
    expect(read.map(({ id }) => id)).toEqual(tracks.map(({ id }) => id));
  });

  test('whose file can no longer be read is said to be so, after the tracks that were read', async () => {
    const [one] = fc.sample(anyGradedTrack(), { numRuns: 1, seed: 28 });
    // More than SQLite keeps by itself, which is 16 MB.
    const tracks = Array.from({ length: 60 }, (_, i) => ({
      ...one,
      id: `${i}`,
      note: `${i}`.repeat(100_000),
    }));
    const bytes = await geoPackageOf(tracks, 0);
    vi.stubGlobal('Blob', Kept);
    const blob = new Kept([bytes]) as unknown as Blob;
    let left = Infinity;
    const reading = BlockFile.ofBlob(
      blob,
      (part) => {
        if (--left < 0) throw new DOMException('The file was changed.', 'NotReadableError');
        return readBlob(part);
      },
      MOST,
    );
    const all = Math.ceil(bytes.length / BLOCK);
    expect(all).toBeGreaterThan(2 * MOST);
    const ids: string[] = [];
    const { value, problems } = await takeGeoPackage(reading, (some) => {
      ids.push(...some.map(({ id }) => id));
      left = Math.min(left, 2);
    });
    expect(ids.length).toBeGreaterThan(0);
    expect(ids.length).toBeLessThan(tracks.length);
    expect(value?.trackCount ?? ids.length).toBe(ids.length);
    expect(problems.some(({ severity }) => severity === 'error')).toBe(true);
  });
});

test('tracks are given some at a time, and no more are read until those were taken', async () => {
  const [one] = fc.sample(anyGradedTrack(), { numRuns: 1, seed: 29 });
  const tracks = Array.from({ length: 2 * TAKEN_AT_ONCE + 1 }, (_, i) => ({ ...one, id: `${i}` }));
  const bytes = await geoPackageOf(tracks, 0);
  const counts: number[] = [];
  let taking = false;
  const { value } = await takeGeoPackage(BlockFile.ofBytes(bytes), async (some) => {
    expect(taking).toBe(false);
    taking = true;
    await new Promise((resolve) => setTimeout(resolve));
    counts.push(some.length);
    taking = false;
  });
  expect(counts).toEqual([TAKEN_AT_ONCE, TAKEN_AT_ONCE, 1]);
  expect(value?.trackCount).toBe(tracks.length);
});
