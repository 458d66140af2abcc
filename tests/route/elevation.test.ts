import { readFileSync } from 'node:fs';
import { gzipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { readAsciiGrid } from '../../src/route/asciiGrid.ts';
import type { ElevationGrid } from '../../src/route/elevation.ts';
import { eastOf, groundCamberRad, groundSlopeRad, heightAt, northOf } from '../../src/route/elevation.ts';
import { metresPerDegree } from '../../src/route/ellipsoid.ts';
import { readHgt } from '../../src/route/hgt.ts';
import { rad } from '../../src/units.ts';

const STEP = 0.001;

/** A plane that rises eastward and northward by the given metres per metre. */
function plane(east: number, north: number): ElevationGrid {
  const metres = metresPerDegree(-30);
  const elevationM = Float32Array.from({ length: 5 * 4 }, (_, i) => {
    const column = i % 5;
    const row = Math.floor(i / 5);
    return 500 + column * STEP * metres.east * east + (3 - row) * STEP * metres.north * north;
  });
  return { west: 10, south: -30, lngStepDeg: STEP, latStepDeg: STEP, columns: 5, rows: 4, elevationM };
}

const bytes = (text: string) => new TextEncoder().encode(text);

describe('heights of a grid', () => {
  const grid = { ...plane(0, 0), elevationM: Float32Array.from({ length: 20 }, (_, i) => i) };

  it('are those of the nodes at the nodes, north row first', () => {
    expect(heightAt(grid, 10, northOf(grid))).toBeCloseTo(0, 6);
    expect(heightAt(grid, eastOf(grid), northOf(grid))).toBeCloseTo(4, 4);
    expect(heightAt(grid, 10, -30)).toBeCloseTo(15, 4);
    expect(heightAt(grid, eastOf(grid), -30)).toBeCloseTo(19, 4);
  });

  it('are bilinear between', () => {
    expect(heightAt(grid, 10.0005, -30 + 2.5 * STEP)).toBeCloseTo((0 + 1 + 5 + 6) / 4, 6);
    expect(heightAt(grid, 10.00025, -30)).toBeCloseTo(15.25, 6);
  });

  it('are not known outside or beside a hole', () => {
    expect(heightAt(grid, 9.99, -29.999)).toBeNaN();
    expect(heightAt(grid, 10.001, -29.9)).toBeNaN();
    expect(heightAt(grid, NaN, -30)).toBeNaN();
    const holed = { ...grid, elevationM: grid.elevationM.map((z) => (z === 6 ? NaN : z)) };
    expect(heightAt(holed, 10.0005, -30 + 2.5 * STEP)).toBeNaN();
    expect(heightAt(holed, 10.0035, -30 + 2.5 * STEP)).not.toBeNaN();
  });
});

describe('slope of the ground', () => {
  const grid = plane(0.2, 0.1);
  const at = [10.002, -29.9985] as const;

  it('climbs and falls with the bearing', () => {
    expect(groundSlopeRad(grid, ...at, rad(90))).toBeCloseTo(Math.atan(0.2), 4);
    expect(groundSlopeRad(grid, ...at, rad(270))).toBeCloseTo(-Math.atan(0.2), 4);
    expect(groundSlopeRad(grid, ...at, 0)).toBeCloseTo(Math.atan(0.1), 4);
  });

  it('has camber positive where the left side is high', () => {
    expect(groundCamberRad(grid, ...at, rad(180))).toBeCloseTo(Math.atan(0.2), 4);
    expect(groundCamberRad(grid, ...at, 0)).toBeCloseTo(-Math.atan(0.2), 4);
    expect(groundCamberRad(grid, ...at, rad(90))).toBeCloseTo(Math.atan(0.1), 4);
  });

  it('is not known at the edge', () => {
    expect(groundSlopeRad(grid, 10.0002, -29.9985, 0)).toBeNaN();
  });
});

describe('an ASCII grid', () => {
  const text =
    'ncols 3\nnrows 2\nxllcorner 20\nyllcorner 40\ncellsize 0.5\nNODATA_value -9999\n1 2.5 3\n-4 -9999 6\n';

  it('is read with cell centres as nodes and holes as unknown', () => {
    const { value, problems } = readAsciiGrid(bytes(text));
    expect(problems).toEqual([]);
    expect(value).toMatchObject({ west: 20.25, south: 40.25, columns: 3, rows: 2, lngStepDeg: 0.5 });
    expect([...value!.elevationM]).toEqual([1, 2.5, 3, -4, NaN, 6]);
  });

  it('is read packed, with centres, other line ends and dx, dy', () => {
    const other = text
      .replace('xllcorner 20', 'XLLCENTER 0')
      .replace('cellsize 0.5', 'dx 0.5\ndy 0.25')
      .replaceAll('\n', '\r\n');
    const { value, problems } = readAsciiGrid(gzipSync(bytes(other)));
    expect(problems).toEqual([]);
    expect(value).toMatchObject({ west: 0, south: 40.125, lngStepDeg: 0.5, latStepDeg: 0.25 });
  });

  it('says where it breaks off and keeps what came before', () => {
    const { value, problems } = readAsciiGrid(bytes(text.replace('-4 -9999 6', '-4 what 6')));
    expect(problems).toMatchObject([{ severity: 'error', where: 'height 5 of 6' }]);
    expect([...value!.elevationM]).toEqual([1, 2.5, 3, -4, NaN, NaN]);
  });

  it.each([
    ['empty', bytes('')],
    ['a picture', Uint8Array.from({ length: 300 }, (_, i) => (i * 7) % 256)],
    ['damaged gzip', gzipSync(bytes(text)).fill(0, 12, 30)],
    ['in metres', bytes(text.replace('xllcorner 20', 'xllcorner 320000'))],
    ['too large', bytes(text.replace('ncols 3', 'ncols 30000').replace('nrows 2', 'nrows 30000'))],
    ['without a cell size', bytes(text.replace('cellsize 0.5\n', ''))],
  ])('that is %s is refused with a sentence', (_, file) => {
    const { value, problems } = readAsciiGrid(file);
    expect(value).toBeNull();
    expect(problems).toHaveLength(1);
  });
});

describe('an HGT tile', () => {
  it('is read big-endian from the north-west, its name giving the south-west node', () => {
    const tile = new Uint8Array(1201 * 1201 * 2);
    const view = new DataView(tile.buffer);
    view.setInt16(0, 1234);
    view.setInt16(2 * 5, -32768);
    view.setInt16(2 * (1201 * 1201 - 1), -7);
    const { value } = readHgt('tiles/S34E088.hgt', tile);
    expect(value).toMatchObject({ west: 88, south: -34, columns: 1201, rows: 1201 });
    expect(heightAt(value!, 88, -33)).toBe(1234);
    expect(value!.elevationM[5]).toBeNaN();
    expect(heightAt(value!, 89, -34)).toBe(-7);
  });

  it('of another size or name is refused with a sentence', () => {
    expect(readHgt('S34E088.hgt', new Uint8Array(10)).problems).toHaveLength(1);
    expect(readHgt('tile.hgt', new Uint8Array(1201 * 1201 * 2)).problems).toHaveLength(1);
  });
});

describe('the demonstration ground', () => {
  const { value, problems } = readAsciiGrid(readFileSync('public/demo/ember-range.asc.gz'));

  it('is whole, and lies under its track', () => {
    expect(problems).toEqual([]);
    expect(value!.elevationM.every((z) => z > 600 && z < 1400)).toBe(true);
    const gpx = readFileSync('public/demo/hobnail-spur.gpx', 'utf8');
    const points = [...gpx.matchAll(/<trkpt lat="(\S+)" lon="(\S+)"><ele>([^<]+)/g)];
    expect(points.length).toBeGreaterThan(4000);
    const off = points.map((p) => Math.abs(heightAt(value!, Number(p[2]), Number(p[1])) - Number(p[3])));
    expect(Math.max(...off)).toBeLessThan(12);
  });
});
