import exifr from 'exifr';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { bareImage } from '../../src/terrain/bareImage.ts';
import { withExif } from '../exif.ts';

const JPEG = bytes(
  Buffer.from(
    '/9j/4AAQSkZJRgABAQAAAQABAAD/2wBDAAMCAgICAgMCAgIDAwMDBAYEBAQEBAgGBgUGCQgKCgkICQkKDA8MCgsOCwkJDRENDg8QEBEQCgwSExIQEw8QEBD/2wBDAQMDAwQDBAgEBAgQCwkLEBAQEBAQEBAQEBAQEBAQEBAQEBAQEBAQEBAQEBAQEBAQEBAQEBAQEBAQEBAQEBAQEBD/wAARCAAXACUDAREAAhEBAxEB/8QAFgABAQEAAAAAAAAAAAAAAAAAAAYI/8QAGBAAAwEBAAAAAAAAAAAAAAAAAAEVUmH/xAAXAQEBAQEAAAAAAAAAAAAAAAAACAYJ/8QAGhEAAgMBAQAAAAAAAAAAAAAAABYBAmJRUv/aAAwDAQACEQMRAD8AzDUWjKqGToq06FRaChkNOhUWgoZDToVFoKGQ06FRaChkNOiRqLRUqhkm9pj0Ki0FDIaY9CotBQyGmPQqLQUMhpj0Ki0FDIaY9ElTfSolSnIJyZrdkU30KlOQGa3ZFN9CpTkBmt2RTfQqU5AZrdkU30KlOQGa3ZP/2Q==',
    'base64',
  ),
);
const TAKEN = { lng: 12.5, lat: 44.25, time: '2026:05:01 10:20:30' };

function bytes(file: Uint8Array): Uint8Array<ArrayBuffer> {
  return Uint8Array.from(file);
}

function chunk(type: string, data: string): Buffer {
  const length = Buffer.alloc(4);
  length.writeUInt32BE(data.length);
  return Buffer.concat([length, Buffer.from(type + data, 'latin1'), Buffer.alloc(4)]);
}

function riff(...chunks: readonly (readonly [type: string, data: string])[]): Buffer {
  const parts = chunks.map(([type, data]) => {
    const head = Buffer.from(`${type}\0\0\0\0`, 'latin1');
    head.writeUInt32LE(data.length, 4);
    return Buffer.concat([head, Buffer.from(data.length % 2 === 0 ? data : `${data}\0`, 'latin1')]);
  });
  const head = Buffer.from('RIFF\0\0\0\0WEBP', 'latin1');
  head.writeUInt32LE(4 + Buffer.concat(parts).length, 4);
  return Buffer.concat([head, ...parts]);
}

test('a JPEG loses where and when it was taken, and nothing else', async () => {
  const file = bytes(withExif(JPEG, TAKEN));
  expect(await exifr.gps(Buffer.from(file))).toMatchObject({ longitude: 12.5, latitude: 44.25 });
  expect(bareImage(file)).toEqual(JPEG);
  expect(bareImage(JPEG)).toBe(JPEG);
});

test('a JPEG loses comments, and what stands after its end', () => {
  const comment = Buffer.concat([Buffer.from([0xff, 0xfe, 0, 6]), Buffer.from('home')]);
  const more = Buffer.concat([JPEG.subarray(0, 2), comment, JPEG.subarray(2), withExif(JPEG, TAKEN)]);
  expect(bareImage(bytes(more))).toEqual(JPEG);
});

test('a PNG loses its texts, time and Exif', () => {
  const head = Buffer.from('89504e470d0a1a0a', 'hex');
  const [size, data, end] = [chunk('IHDR', '0123456789abc'), chunk('IDAT', 'picture'), chunk('IEND', '')];
  const tells = ['eXIf', 'tEXt', 'zTXt', 'iTXt', 'tIME'].map((type) => chunk(type, 'lat 44.25'));
  expect(bareImage(bytes(Buffer.concat([head, size, ...tells, data, end])))).toEqual(
    bytes(Buffer.concat([head, size, data, end])),
  );
});

test('a WebP loses Exif and XMP, and no longer says that it has them', () => {
  const flags = (bits: string) => `${bits}\0\0\0\x24\0\0\x16\0\0`;
  const file = riff(['VP8X', flags('\x1c')], ['VP8L', 'picture'], ['EXIF', 'lat 44.25'], ['XMP ', '<x/>']);
  expect(bareImage(bytes(file))).toEqual(bytes(riff(['VP8X', flags('\x10')], ['VP8L', 'picture'])));
});

test('whatever stands in a file, it comes to an end and never grows', () => {
  const heads = ['ffd8ffe1', 'ffd8ffda000004', '89504e470d0a1a0a00000001', '52494646aaaaaaaa57454250'];
  fc.assert(
    fc.property(fc.constantFrom(...heads), fc.uint8Array({ maxLength: 200 }), (head, rest) => {
      const file = bytes(Buffer.concat([Buffer.from(head, 'hex'), rest]));
      expect(bareImage(file).length).toBeLessThanOrEqual(file.length);
    }),
    { seed: 5, numRuns: 500 },
  );
});
