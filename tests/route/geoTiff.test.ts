import { writeArrayBuffer } from 'geotiff';
import { describe, expect, test } from 'vitest';
import { readGeoTiff, TIFF_LIMITS } from '../../src/route/geoTiff.ts';

const WHERE = {
  ModelTiepoint: [0, 0, 0, 10, 50, 0],
  ModelPixelScale: [0.001, 0.001, 0],
  GTModelTypeGeoKey: 2,
  GeographicTypeGeoKey: 4326,
};

function tiff(heights: ArrayLike<number>, width: number, more: Record<string, unknown> = {}): ArrayBuffer {
  const height = heights.length / width;
  return writeArrayBuffer(Float32Array.from(heights), { width, height, ...WHERE, ...more });
}

const read = (bytes: ArrayBuffer) => readGeoTiff(new Blob([bytes]));
const said = async (bytes: ArrayBuffer) => (await read(bytes)).problems.map(({ what }) => what).join(' ');

describe('a GeoTIFF', () => {
  test('of four heights is a grid of four nodes', async () => {
    const { value } = await read(tiff([1, 2, 3, 4], 2));
    expect([...value!.elevationM]).toEqual([1, 2, 3, 4]);
    expect(value!.west).toBeCloseTo(10.0005, 9);
    expect(value!.south).toBeCloseTo(50 - 0.0015, 9);
  });

  test('that is none, or is cut off, is refused with a sentence', async () => {
    const whole = tiff([1, 2, 3, 4], 2);
    for (const bytes of [new ArrayBuffer(0), new ArrayBuffer(5_000), whole.slice(0, 60)]) {
      const { value, problems } = await read(bytes);
      expect(value).toBeNull();
      expect(problems).toHaveLength(1);
    }
  });

  test('whose last block was cut off has no heights there, not zero', async () => {
    const whole = tiff([1, 2, 3, 4], 2);
    const { value, problems } = await read(whole.slice(0, whole.byteLength - 4));
    expect(value).toBeNull();
    expect(problems).toHaveLength(1);
  });

  test('in a system that is not read, without a place, or askew, is refused', async () => {
    expect(
      await said(tiff([1, 2, 3, 4], 2, { GTModelTypeGeoKey: 1, ProjectedCSTypeGeoKey: 27700 })),
    ).toContain('27700');
    expect(await said(tiff([1, 2, 3, 4], 2, { ModelPixelScale: [0, 0, 0] }))).toContain('where it lies');
  });

  test('that says it has a directory in a circle, or values beyond its end, is refused', async () => {
    const circle = tiff([1, 2, 3, 4], 2).slice(0);
    const view = new DataView(circle);
    const little = view.getUint16(0) === 0x4949;
    const first = view.getUint32(4, little);
    const entries = view.getUint16(first, little);
    view.setUint32(first + 2 + 12 * entries, first, little);
    expect(await said(circle)).toContain('cannot be true');
    const beyond = tiff([1, 2, 3, 4], 2).slice(0);
    new DataView(beyond).setUint32(first + 2 + 4, 0xfffffff0, little);
    expect(await said(beyond)).toContain('cannot be true');
  });

  test('that claims more heights than are read, with no overview, is refused before any are read', async () => {
    const bytes = tiff([1, 2, 3, 4], 2).slice(0);
    const view = new DataView(bytes);
    const little = view.getUint16(0) === 0x4949;
    const first = view.getUint32(4, little);
    for (let i = 0; i < view.getUint16(first, little); i++) {
      const at = first + 2 + 12 * i;
      const tag = view.getUint16(at, little);
      if (tag === 256 || tag === 257) {
        view.setUint16(at + 2, 4, little);
        view.setUint32(at + 8, 60_000, little);
      }
    }
    expect(await said(bytes)).toContain(`${TIFF_LIMITS.nodes / 1e6} million`);
  });
});
