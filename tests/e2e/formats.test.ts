import fc from 'fast-check';
import { deflateSync } from 'node:zlib';
import { writeArrayBuffer } from 'geotiff';
import type { Browser, Page } from 'playwright-core';
import { beforeAll, expect, inject, test } from 'vitest';
import { geoPackageOf } from '../../src/archive/geopackage/write.ts';
import { anyGradedTrack } from '../archive/gradedTracks.ts';
import { beginTrip, launch, WIDE } from './desk.ts';

let browser: Browser;

beforeAll(async () => {
  browser = await launch();
});

test('a leader lays elevation and a background of their own, reloads, and opens an archive in an open format', async () => {
  const { context, page, faults } = await beginTrip(browser, inject('url'), WIDE, { draws: 'coarse map' });
  const files = page.locator('input[type=file]').first();

  await files.setInputFiles({ name: 'hills.tif', mimeType: 'image/tiff', buffer: hills() });
  await page.getByText('The map now shows the ground of hills.tif').waitFor();
  await files.setInputFiles({
    name: 'valley.pmtiles',
    mimeType: 'application/octet-stream',
    buffer: pmtiles(),
  });
  await page.getByText('The map now lies on valley.pmtiles').waitFor();

  await page.reload();
  await page.getByRole('button', { name: 'Map ground' }).click();
  const box = page.getByRole('group', { name: 'Map ground' });
  await box.getByText('hills.tif').waitFor();
  await box.getByText('valley.pmtiles').waitFor();
  expect(await box.getByText('Kept on this device').count()).toBe(2);
  expect(await fetchFails(page, 'https://elsewhere.example/')).toBe(true);
  await box.getByRole('button', { name: 'Remove Elevation' }).click();
  await box.getByText('hills.tif').waitFor({ state: 'detached' });

  await box.getByLabel('Address of map tiles').fill('http://tiles.example/{z}/{x}/{y}.png');
  await box.getByRole('button', { name: 'Use' }).click();
  await box.getByText('It must begin with https://').waitFor();
  await box.getByLabel('Address of map tiles').fill('https://tiles.example/{z}/{x}/{y}.png');
  // A host of that ending never answers (RFC 2606): that it is asked is what matters.
  const tile = page.waitForRequest(/^https:\/\/tiles\.example\/\d+\/\d+\/\d+\.png$/, { timeout: 60_000 });
  await box.getByRole('button', { name: 'Use' }).click();
  expect((await tile).method()).toBe('GET');
  expect(await fetchFails(page, 'https://elsewhere.example/')).toBe(true);

  const tracks = fc
    .sample(anyGradedTrack(), { numRuns: 12, seed: 5 })
    .filter(({ track }) => track !== null)
    .map((graded, i) => ({ ...graded, name: `Trial track ${i + 1}` }));
  const buffer = Buffer.from(await geoPackageOf(tracks, 0));
  await files.setInputFiles({ name: 'club.gpkg', mimeType: 'application/geopackage+sqlite3', buffer });
  await page.getByText(`${tracks.length} tracks in the archive.`).waitFor();
  await page.getByText('Trial track 1', { exact: true }).first().waitFor();
  expect(faults.filter((fault) => !/elsewhere\.example|net::ERR_/.test(fault))).toEqual([]);
  await context.close();
});

async function fetchFails(page: Page, address: string): Promise<boolean> {
  return page.evaluate(
    (at) =>
      new Promise<boolean>((resolve) => {
        document.addEventListener('securitypolicyviolation', () => resolve(true), { once: true });
        fetch(at).then(
          () => resolve(false),
          () => undefined,
        );
      }),
    address,
  );
}

function hills(): Buffer {
  const [width, height] = [60, 50];
  const heights = Float32Array.from({ length: width * height }, (_, i) => 400 + 40 * Math.sin(i / 9));
  const place = {
    ModelTiepoint: [0, 0, 0, 11.5, 47.4, 0],
    ModelPixelScale: [0.001, 0.001, 0],
    GTModelTypeGeoKey: 2,
    GeographicTypeGeoKey: 4326,
  };
  return Buffer.from(writeArrayBuffer(heights, { width, height, ...place }));
}

/** A picture of one grey pixel (PNG, ISO 15948). */
const PNG = png();

function png(): Buffer {
  const chunk = (type: string, data: Buffer) => {
    const body = Buffer.concat([Buffer.from(type, 'latin1'), data]);
    const [length, sum] = [Buffer.alloc(4), Buffer.alloc(4)];
    length.writeUInt32BE(data.length);
    sum.writeUInt32BE(crc(body));
    return Buffer.concat([length, body, sum]);
  };
  const head = Buffer.from([0, 0, 0, 1, 0, 0, 0, 1, 8, 0, 0, 0, 0]);
  return Buffer.concat([
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    chunk('IHDR', head),
    chunk('IDAT', deflateSync(Buffer.from([0, 170]))),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

function crc(bytes: Buffer): number {
  let sum = -1;
  for (const byte of bytes) {
    sum ^= byte;
    for (let bit = 0; bit < 8; bit++) sum = sum & 1 ? (sum >>> 1) ^ 0xedb88320 : sum >>> 1;
  }
  return ~sum >>> 0;
}

/** A PMTiles file of one picture, the whole world (PMTiles version 3 specification, 2022, sections 3 and 4). */
function pmtiles(): Buffer {
  const directory = Buffer.from([1, 0, 1, PNG.length, 1]);
  const metadata = Buffer.from('{}');
  const header = Buffer.alloc(127);
  header.write('PMTiles', 0, 'latin1');
  header[7] = 3;
  const [directoryAt, metadataAt] = [127, 127 + directory.length];
  const tilesAt = metadataAt + metadata.length;
  const places = [
    directoryAt,
    directory.length,
    metadataAt,
    metadata.length,
    tilesAt,
    0,
    tilesAt,
    PNG.length,
    1,
    1,
    1,
  ];
  places.forEach((value, i) => header.writeBigUInt64LE(BigInt(value), 8 + 8 * i));
  // Clustered; directories and tiles unpacked; PNG; zoom 0 to 0; the whole world.
  Buffer.from([1, 1, 1, 2, 0, 0]).copy(header, 96);
  [-180, -85, 180, 85].forEach((degrees, i) => header.writeInt32LE(degrees * 1e7, 102 + 4 * i));
  return Buffer.concat([header, directory, metadata, PNG]);
}
