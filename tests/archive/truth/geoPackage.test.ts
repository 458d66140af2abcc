import fc from 'fast-check';
import { copyFileSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { readGeoPackage } from '../../../src/archive/geopackage/read.ts';
import { geoPackageOf } from '../../../src/archive/geopackage/write.ts';
import type { GradedTrack } from '../../../src/archive/gradedTrack.ts';
import { readGpx } from '../../../src/route/gpx.ts';
import { faultsOfGeoPackage, gdal, needGdal, scratchFolder } from '../../gdal.ts';
import { INJECTIONS } from '../../injections.ts';
import { anyGradedTrack } from '../gradedTracks.ts';
import { saying } from '../hostileTracks.ts';

/**
 * Against GDAL (gdal.org, 3.6.2 in Debian 12), which reads and writes GeoPackages by code of its own, and the checker that
 * it comes with, `validate_gpkg.py`, which asks requirement after requirement of OGC 12-128.
 */

const folder = scratchFolder();
const file = join(folder, 'archive.gpkg');
let tracks: readonly GradedTrack[];

interface Found {
  readonly features: readonly {
    readonly geometry: { readonly type: string; readonly coordinates: unknown } | null;
    readonly properties: Readonly<Record<string, unknown>>;
  }[];
}

function layer(name: string, of = file, ...more: string[]): Found['features'] {
  const text = gdal(
    'ogr2ogr',
    '-f',
    'GeoJSON',
    '/vsistdout/',
    '-lco',
    'COORDINATE_PRECISION=15',
    ...more,
    of,
    name,
  );
  return (JSON.parse(text) as Found).features;
}

beforeAll(async () => {
  needGdal();
  tracks = fc.sample(anyGradedTrack(), { numRuns: 12, seed: 7 });
  writeFileSync(file, await geoPackageOf(tracks, Date.UTC(2026, 10, 25)));
}, 300_000);

/** GDAL writes some numbers into GeoJSON with 15 significant digits only; the last of them is left out here. */
function toDigits(value: unknown): unknown {
  return typeof value === 'number' ? Number(value.toPrecision(14)) : value;
}

describe('what we write', () => {
  test('has no fault that the checker knows of', () => {
    expect(faultsOfGeoPackage(file)).toBe('');
  });

  test('has the triggers that GDAL itself makes, word for word', () => {
    const theirs = join(folder, 'theirs.gpkg');
    gdal('ogr2ogr', '-f', 'GPKG', theirs, file, 'tracks');
    const triggers = (of: string) =>
      gdal('ogrinfo', '-q', of, '-dialect', 'SQLITE', '-sql', TRIGGERS)
        .split('\n')
        .filter((line) => line.includes('CREATE'))
        .map((line) => line.replace(/\s+/g, '').toLowerCase());
    expect(triggers(file)).toHaveLength(6);
    expect(triggers(file)).toEqual(triggers(theirs));
  });

  test('is read with all its places, rows and values', () => {
    const found = layer('tracks');
    expect(found.map(({ properties }) => properties.track_id)).toEqual(tracks.map(({ id }) => id));
    found.forEach(({ geometry }, i) => {
      const { track } = tracks[i];
      if (track === null) return expect(geometry).toBeNull();
      const points = (geometry?.coordinates as number[][][]).flat();
      expect(geometry?.type).toBe('MultiLineString');
      const west = Math.min(...points.map(([lng]) => lng));
      expect(west).toBeCloseTo(Math.min(...track.lng), 12);
      expect(points.length).toBeGreaterThanOrEqual(track.length);
    });
    const obstacles = tracks.flatMap(({ surveyed }) => surveyed);
    const places = layer('obstacles');
    expect(places.map(({ properties }) => toDigits(properties.slope_rad))).toEqual(
      obstacles.map(({ obstacle }) => toDigits(obstacle.stretch.plane.slopeRad)),
    );
    places.forEach(({ geometry }, i) => {
      const [lng, lat] = geometry?.coordinates as number[];
      expect(lng).toBeCloseTo(obstacles[i].obstacle.lng, 12);
      expect(lat).toBeCloseTo(obstacles[i].obstacle.lat, 12);
    });
    expect(layer('visits')).toHaveLength(obstacles.flatMap(({ visits }) => visits).length);
    expect(layer('outcomes').map(({ properties }) => properties.did)).toEqual(
      obstacles.flatMap(({ outcomes }) => outcomes.map(({ did }) => did)),
    );
  });

  test('has names that try to be something else as they were written', async () => {
    const hostile = join(folder, 'hostile.gpkg');
    // GDAL ends a text at a character of zero, and half a character has no bytes in UTF-8.
    const texts = Object.values(INJECTIONS).filter((text) => !/[\0\uD800-\uDFFF]/u.test(text));
    const named = texts.map((text, i) => saying(text, `track ${i}`));
    writeFileSync(hostile, await geoPackageOf(named, 0));
    expect(faultsOfGeoPackage(hostile)).toBe('');
    const columns = { tracks: 'area', obstacles: 'name', outcomes: 'told_by' };
    for (const [table, column] of Object.entries(columns))
      expect(layer(table, hostile).map(({ properties }) => properties[column])).toEqual(texts);
    const visited = layer('visits', hostile).map(({ properties }) => properties.measured_by);
    expect(new Set(visited)).toEqual(new Set(texts));
  });

  test('is searched by its index', () => {
    const inside = ({ obstacle: { lng, lat } }: GradedTrack['surveyed'][number]) =>
      lng >= -0.5 && lng <= 0.5 && lat >= 44.5 && lat <= 45.5;
    const wanted = tracks.flatMap(({ surveyed }) => surveyed.filter(inside));
    const found = layer('obstacles', file, '-spat', '-0.5', '44.5', '0.5', '45.5');
    expect(wanted.length).toBeGreaterThan(0);
    expect(found).toHaveLength(wanted.length);
  });

  test('may be changed by others, whose triggers keep the index true, and is still read', async () => {
    const changed = join(folder, 'changed.gpkg');
    copyFileSync(file, changed);
    const sql = (text: string) => gdal('ogrinfo', changed, '-sql', text);
    sql('UPDATE obstacles SET geom = (SELECT geom FROM obstacles WHERE fid = 1) WHERE fid = 2');
    sql('UPDATE obstacles SET fid = 9000 WHERE fid = 3');
    sql('DELETE FROM obstacles WHERE fid = 4');
    const rows = gdal('ogrinfo', '-q', changed, '-sql', INDEX_FAULTS);
    expect(rows).toContain('faults (Integer) = 0');
    expect(faultsOfGeoPackage(changed)).toBe('');
    expect((await readGeoPackage(readFileSync(changed))).value?.tracks).toEqual(tracks);
  });
});

const TRIGGERS =
  "SELECT sql FROM sqlite_master WHERE type = 'trigger' AND name LIKE 'rtree_tracks_%' ORDER BY name";

const INDEX_FAULTS = `SELECT
  (SELECT count(*) FROM obstacles WHERE fid NOT IN (SELECT id FROM rtree_obstacles_geom)) +
  (SELECT count(*) FROM rtree_obstacles_geom WHERE id NOT IN (SELECT fid FROM obstacles)) +
  (SELECT count(*) FROM obstacles o JOIN rtree_obstacles_geom r ON r.id = o.fid
   WHERE abs(ST_MinX(o.geom) - r.minx) > 1e-4 OR abs(ST_MaxY(o.geom) - r.maxy) > 1e-4) AS faults`;

describe('what GDAL writes', () => {
  test.each([
    ['degrees', []],
    ['UTM', ['-t_srs', 'EPSG:32759']],
  ])('of a GPX file, in %s, is read as the same tracks', async (_, options) => {
    const gpx = new URL('../../e2e/in/two-tracks.gpx', import.meta.url).pathname;
    const made = join(folder, `foreign-${options.length}.gpkg`);
    gdal('ogr2ogr', '-f', 'GPKG', ...options, made, gpx);
    const { value, problems } = await readGeoPackage(readFileSync(made));
    const own = (await readGpx(readFileSync(gpx))).value!.tracks;
    expect(value?.tracks.map(({ name }) => name)).toEqual(own.map(({ name }) => name));
    value?.tracks.forEach(({ track }, i) => {
      expect(track?.length).toBe(own[i].length);
      // 1e-8 of a degree is a millimetre.
      track?.lng.forEach((lng, j) => expect(Math.abs(lng - own[i].lng[j])).toBeLessThan(1e-8));
      track?.lat.forEach((lat, j) => expect(Math.abs(lat - own[i].lat[j])).toBeLessThan(1e-8));
    });
    expect(problems.some(({ what }) => what.includes('another program'))).toBe(true);
  });
});
