import fc from 'fast-check';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { deflateSync } from 'node:zlib';
import { writeArrayBuffer } from 'geotiff';
import type { Browser, Page } from 'playwright-core';
import { beforeAll, expect, inject, test } from 'vitest';
import { geoPackageOf } from '../../src/archive/geopackage/write.ts';
import type { GradedTrack } from '../../src/archive/gradedTrack.ts';
import { anyGradedTrack } from '../archive/gradedTracks.ts';
import { faultsOfGeoPackage, gdal, needGdal, scratchFolder } from '../gdal.ts';
import { beginTrip, launch, sitDown, WIDE } from './desk.ts';

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

  const tracks = clubTracks();
  const buffer = Buffer.from(await geoPackageOf(tracks, 0));
  await files.setInputFiles({ name: 'club.gpkg', mimeType: 'application/geopackage+sqlite3', buffer });
  await page.getByText(`${tracks.length} tracks in the archive.`).waitFor();
  await page.getByText('Trial track 1', { exact: true }).first().waitFor();
  expect(faults.filter((fault) => !/elsewhere\.example|net::ERR_/.test(fault))).toEqual([]);
  await context.close();
});

test('the archive leaves by the screen in each format, GDAL reads it, and another desk takes it in', async () => {
  needGdal();
  const tracks = clubTracks();
  const names = tracks.map(({ name }) => name).sort();
  const leader = await sitDown(browser, `${inject('url')}#/archive/tracks`);
  await take(leader.page, { name: 'club.gpkg', buffer: Buffer.from(await geoPackageOf(tracks, 0)) });
  expect(await listed(leader.page, names.length)).toEqual(names);
  const folder = scratchFolder();
  for (const button of ['GeoPackage', 'GeoJSON', 'Folder, as zip']) {
    const downloading = leader.page.waitForEvent('download');
    await leader.page.getByRole('button', { name: button, exact: true }).click();
    const download = await downloading;
    const file = join(folder, download.suggestedFilename());
    await download.saveAs(file);
    if (button === 'GeoPackage') {
      expect(faultsOfGeoPackage(file)).toBe('');
      expect(gdal('ogrinfo', '-so', file, 'tracks')).toContain(`Feature Count: ${tracks.length}`);
    }
    if (button === 'GeoJSON') {
      const places = tracks.reduce((sum, { surveyed }) => sum + surveyed.length, 0);
      const { features } = JSON.parse(readFileSync(file, 'utf8')) as { readonly features: unknown[] };
      expect(features.length).toBeGreaterThanOrEqual(tracks.length + places);
      expect(gdal('ogrinfo', '-so', '-al', file)).toContain(`Feature Count: ${features.length}\n`);
    }
    const other = await sitDown(browser, `${inject('url')}#/archive/tracks`);
    await take(other.page, { name: download.suggestedFilename(), buffer: readFileSync(file) });
    expect(await listed(other.page, names.length)).toEqual(names);
    expect(other.faults).toEqual([]);
    await other.context.close();
  }
  expect(leader.faults).toEqual([]);
  await leader.context.close();
});

function clubTracks(): GradedTrack[] {
  return fc
    .sample(anyGradedTrack(), { numRuns: 12, seed: 5 })
    .filter(({ track }) => track !== null)
    .map((graded, i) => ({ ...graded, name: `Trial track ${i + 1}` }));
}

async function take(page: Page, { name, buffer }: { name: string; buffer: Buffer }): Promise<void> {
  const file = { name, mimeType: 'application/octet-stream', buffer };
  await page.getByLabel('A file from another leader').setInputFiles(file);
}

/** Names of the graded tracks, once there are so many. */
async function listed(page: Page, count: number): Promise<string[]> {
  const names = page.getByRole('list', { name: 'Graded tracks' }).getByText(/^Trial track \d+$/);
  await expect.poll(() => names.count()).toBe(count);
  return (await names.allInnerTexts()).sort();
}

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
