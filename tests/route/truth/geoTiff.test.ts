import { execFileSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import type { ElevationGrid } from '../../../src/route/elevation.ts';
import { heightAt } from '../../../src/route/elevation.ts';
import { readGeoTiff } from '../../../src/route/geoTiff.ts';
import { gdal, needGdal, scratchFolder } from '../../gdal.ts';

/**
 * Against GDAL (gdal.org, 3.6.2 in Debian 12): it makes the files, in the ways that people pack them, and reads heights off
 * them (gdallocationinfo) and turns places round (gdaltransform, PROJ) by code of its own.
 */

const folder = scratchFolder();
const ascii = join(folder, 'hills.asc');
const [COLUMNS, ROWS] = [300, 260];
const WEST = 12.9;

function at(name: string): string {
  return join(folder, `${name}.tif`);
}

async function grid(name: string): Promise<ElevationGrid> {
  const { value, problems } = await readGeoTiff(new Blob([readFileSync(at(name))]));
  expect(problems.filter(({ severity }) => severity === 'error')).toEqual([]);
  return value!;
}

/** What GDAL reads at pixels of a file; NaN where it says that there is none. */
function theirs(name: string, pixels: readonly (readonly [number, number])[], noData: number): number[] {
  const text = execFileSync('gdallocationinfo', ['-valonly', at(name)], {
    input: pixels.map((pixel) => pixel.join(' ')).join('\n'),
    encoding: 'utf8',
  });
  return text
    .trim()
    .split('\n')
    .map(Number)
    .map((value) => (value === noData ? NaN : value));
}

/** Where GDAL says that the middles of pixels lie, in degrees. */
function places(name: string, pixels: readonly (readonly [number, number])[]): (readonly [number, number])[] {
  const text = execFileSync('gdaltransform', ['-t_srs', 'EPSG:4326', at(name)], {
    input: pixels.map(([x, y]) => `${x + 0.5} ${y + 0.5}`).join('\n'),
    encoding: 'utf8',
  });
  return text
    .trim()
    .split('\n')
    .map((line) => line.split(' ').map(Number) as [number, number]);
}

beforeAll(() => {
  needGdal();
  const rows = Array.from({ length: ROWS }, (_, row) =>
    Array.from({ length: COLUMNS }, (_, column) =>
      row > 200 && column < 40
        ? -9999
        : (
            500 +
            180 * Math.sin(column / 23) +
            140 * Math.cos(row / 17) +
            ((column * 7 + row * 13) % 9)
          ).toFixed(2),
    ).join(' '),
  );
  writeFileSync(
    ascii,
    `ncols ${COLUMNS}\nnrows ${ROWS}\nxllcorner ${WEST}\nyllcorner 47.2\ncellsize 0.0003\nNODATA_value -9999\n${rows.join('\n')}\n`,
  );
}, 300_000);

const PIXELS = Array.from({ length: 60 }, (_, i) => [(i * 97) % COLUMNS, (i * 61) % ROWS] as const);

const TILED = ['-co', 'TILED=YES', '-co', 'BLOCKXSIZE=64', '-co', 'BLOCKYSIZE=64'];

describe('a grid in degrees', () => {
  test.each([
    ['float-strips', ['-ot', 'Float32']],
    ['int-tiles-lzw', ['-ot', 'Int16', ...TILED, '-co', 'COMPRESS=LZW']],
    ['int-tiles-lzw-differences', ['-ot', 'Int16', ...TILED, '-co', 'COMPRESS=LZW', '-co', 'PREDICTOR=2']],
    [
      'float-tiles-deflate-differences',
      ['-ot', 'Float32', ...TILED, '-co', 'COMPRESS=DEFLATE', '-co', 'PREDICTOR=3'],
    ],
    ['float-strips-lzw', ['-ot', 'Float32', '-co', 'COMPRESS=LZW']],
    ['double-strips-packbits', ['-ot', 'Float64', '-co', 'COMPRESS=PACKBITS']],
    [
      'big-endian-big',
      ['-ot', 'Float32', '-co', 'ENDIANNESS=BIG', '-co', 'BIGTIFF=YES', '-co', 'COMPRESS=DEFLATE'],
    ],
    ['points', ['-ot', 'Float32', '-mo', 'AREA_OR_POINT=Point']],
    ['sparse', ['-ot', 'Float32', ...TILED, '-co', 'SPARSE_OK=TRUE', '-co', 'COMPRESS=DEFLATE']],
  ])('%s', async (name, options) => {
    gdal('gdal_translate', '-q', '-a_srs', 'EPSG:4326', ...options, ascii, at(name));
    const own = await grid(name);
    expect([own.columns, own.rows]).toEqual([COLUMNS, ROWS]);
    const wanted = theirs(name, PIXELS, -9999);
    expect(wanted.some(Number.isNaN)).toBe(true);
    places(name, PIXELS).forEach(([lng, lat], i) => {
      const [x, y] = PIXELS[i];
      const node = own.elevationM[y * COLUMNS + x];
      if (Number.isNaN(wanted[i])) expect(node).toBeNaN();
      else expect(Math.abs(node - wanted[i])).toBeLessThan(1e-3);
      // 1e-9 of a degree is a tenth of a millimetre.
      expect(Math.abs(own.west + x * own.lngStepDeg - lng)).toBeLessThan(1e-9);
      expect(Math.abs(own.south + (ROWS - 1 - y) * own.latStepDeg - lat)).toBeLessThan(1e-9);
    });
  });

  test('in tenths of a metre, as GDAL says scale and offset', async () => {
    gdal(
      'gdal_translate',
      '-q',
      '-a_srs',
      'EPSG:4326',
      '-ot',
      'Float32',
      '-a_scale',
      '0.1',
      '-a_offset',
      '7',
      ascii,
      at('scaled'),
    );
    const [plain] = theirs('scaled', [PIXELS[3]], -9999);
    const own = await grid('scaled');
    expect(own.elevationM[PIXELS[3][1] * COLUMNS + PIXELS[3][0]]).toBeCloseTo(plain * 0.1 + 7, 3);
  });
});

describe('a grid in UTM', () => {
  test.each([
    ['north', 'EPSG:32633'],
    ['north-etrs', 'EPSG:25833'],
    ['neighbour', 'EPSG:32632'],
  ])('%s: heights at the middles of its cells', async (name, system) => {
    gdal('gdal_translate', '-q', '-a_srs', 'EPSG:4326', '-ot', 'Float32', ascii, at(`${name}-degrees`));
    gdal(
      'gdalwarp',
      '-q',
      '-overwrite',
      '-t_srs',
      system,
      '-tr',
      '25',
      '25',
      '-r',
      'bilinear',
      at(`${name}-degrees`),
      at(name),
    );
    const own = await grid(name);
    const size = JSON.parse(gdal('gdalinfo', '-json', at(name))) as { size: [number, number] };
    const pixels = Array.from(
      { length: 400 },
      (_, i) => [(i * 97) % size.size[0], (i * 61) % size.size[1]] as const,
    );
    const wanted = theirs(name, pixels, -9999);
    const off = places(name, pixels).flatMap(([lng, lat], i) => {
      const got = heightAt(own, lng, lat);
      return Number.isNaN(got) || Number.isNaN(wanted[i]) ? [] : [Math.abs(got - wanted[i])];
    });
    // The model is read off twice, so its bends are rounded: a node of this rough ground differs from its neighbours by up
    // to 8 m; a grid off by one cell would differ by that.
    expect(off.length).toBeGreaterThan(150);
    expect(off.reduce((sum, one) => sum + one, 0) / off.length).toBeLessThan(1.5);
  });

  test('on a plane, to the centimetre, in both hemispheres', async () => {
    for (const [name, system, y0] of [
      ['south-plane', 'EPSG:32756', 6_200_000],
      ['north-plane', 'EPSG:32633', 5_200_000],
    ] as const) {
      const plane = join(folder, `${name}.asc`);
      const side = 120;
      const rows = Array.from({ length: side }, (_, row) =>
        Array.from({ length: side }, (_, column) => (100 + 3 * column - 2 * row).toFixed(1)).join(' '),
      );
      writeFileSync(
        plane,
        `ncols ${side}\nnrows ${side}\nxllcorner 330000\nyllcorner ${y0}\ncellsize 20\n${rows.join('\n')}\n`,
      );
      gdal('gdal_translate', '-q', '-a_srs', system, '-ot', 'Float32', plane, at(name));
      const own = await grid(name);
      const pixels = Array.from(
        { length: 80 },
        (_, i) => [5 + ((i * 37) % 110), 5 + ((i * 53) % 110)] as const,
      );
      const wanted = theirs(name, pixels, NaN);
      places(name, pixels).forEach(([lng, lat], i) =>
        expect(Math.abs(heightAt(own, lng, lat) - wanted[i])).toBeLessThan(0.01),
      );
    }
  });
});

describe('a large one', () => {
  test('is read by its finest overview that is not too large, in the right place', async () => {
    gdal(
      'gdal_translate',
      '-q',
      '-a_srs',
      'EPSG:4326',
      '-ot',
      'Int16',
      '-outsize',
      '5000',
      '3400',
      '-r',
      'bilinear',
      ...TILED,
      '-co',
      'COMPRESS=DEFLATE',
      ascii,
      at('large'),
    );
    gdal('gdaladdo', '-q', '-r', 'average', at('large'), '2', '4');
    const own = await grid('large');
    expect([own.columns, own.rows]).toEqual([2500, 1700]);
    const pixels = [
      [1000, 800],
      [3000, 2000],
      [4800, 300],
    ] as const;
    const wanted = theirs('large', pixels, -9999);
    places('large', pixels).forEach(([lng, lat], i) =>
      expect(Math.abs(heightAt(own, lng, lat) - wanted[i])).toBeLessThan(2),
    );
  });
});
