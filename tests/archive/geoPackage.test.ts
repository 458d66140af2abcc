import init from '@sqlite.org/sqlite-wasm';
import { describe, expect, test } from 'vitest';
import { linesBlob } from '../../src/archive/geopackage/geometry.ts';
import { readGeoPackage } from '../../src/archive/geopackage/read.ts';
import { STANDARD_TABLES, WGS84 } from '../../src/archive/geopackage/standard.ts';
import { geoPackageOf } from '../../src/archive/geopackage/write.ts';

const LINE = linesBlob(
  [{ lng: Float64Array.of(8, 8.1), lat: Float64Array.of(50, 50.1), elevationM: Float64Array.of(1, 2) }],
  WGS84,
);

/** A file of a stranger's, whose table of lines is made by `sql`. */
async function stranger(sql: string): Promise<Uint8Array> {
  const sqlite = await init();
  const db = new sqlite.oo1.DB(':memory:', 'c');
  db.exec(`${STANDARD_TABLES} ${sql};
    INSERT INTO gpkg_contents (table_name, data_type, identifier, srs_id) VALUES ('ways', 'features', 'ways', ${WGS84});
    INSERT INTO gpkg_geometry_columns VALUES ('ways', 'geom', 'LINESTRING', ${WGS84}, 0, 0);`);
  const hasTable = db.selectValue(
    "SELECT count(*) FROM sqlite_schema WHERE name = 'ways' AND type = 'table'",
  );
  if (hasTable) db.exec({ sql: 'INSERT INTO ways (geom, name) VALUES (?, ?)', bind: [LINE, 'Up the creek'] });
  const bytes = sqlite.capi.sqlite3_js_db_export(db);
  db.close();
  return bytes;
}

const PLAIN = 'CREATE TABLE ways (fid INTEGER PRIMARY KEY, geom BLOB, name TEXT)';

const said = (problems: readonly { readonly what: string }[]) => problems.map(({ what }) => what).join(' ');

describe('a stranger’s file', () => {
  test('gives its lines, with the name that stands beside them', async () => {
    const { value, problems } = await readGeoPackage(await stranger(PLAIN));
    expect(value?.tracks.map(({ name, track }) => [name, track?.length])).toEqual([['Up the creek', 2]]);
    expect(said(problems)).toContain('another program');
  });

  test('read twice gives the same ids', async () => {
    const ids = async () => (await readGeoPackage(await stranger(PLAIN))).value?.tracks.map(({ id }) => id);
    expect(await ids()).toEqual(await ids());
  });

  test('has its triggers and views left alone', async () => {
    const view = `CREATE VIEW ways AS WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n) SELECT i AS fid, i AS geom, i AS name FROM n`;
    const { value, problems } = await readGeoPackage(await stranger(view));
    expect(value?.tracks).toEqual([]);
    expect(said(problems)).toContain('a view');
  });

  test('whose contents are a view that never ends is refused', async () => {
    const endless = `DROP TABLE gpkg_spatial_ref_sys; CREATE VIEW gpkg_spatial_ref_sys AS
      WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n)
      SELECT 'x' AS srs_name, i AS srs_id, 'EPSG' AS organization, i AS organization_coordsys_id FROM n`;
    const bytes = await stranger(`${PLAIN}; PRAGMA foreign_keys = OFF; ${endless}`);
    const { value, problems } = await readGeoPackage(bytes);
    expect(value?.tracks).toEqual([]);
    expect(said(problems)).toContain('a view');
  });

  test('whose schema works out dear values is read without asking for them', async () => {
    const dear = `length(replace(hex(zeroblob(400000)), '00', hex(zeroblob(9))))`;
    const table = `CREATE TABLE ways (fid INTEGER PRIMARY KEY, geom BLOB, name TEXT, title TEXT AS (${dear}), CHECK (${dear} > 0 OR 1))`;
    const rows = `INSERT INTO ways (name) SELECT 'x' FROM n`;
    const many = 'WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < 2000)';
    const bytes = await stranger(`PRAGMA ignore_check_constraints = ON; ${table}; ${many} ${rows}`);
    const { value } = await readGeoPackage(bytes);
    expect(value?.tracks.map(({ name }) => name)).toEqual(['Up the creek']);
  });

  test('with a pointer that goes round in a circle comes to an end, and is said to be damaged', async () => {
    const bytes = (
      await stranger(`${PLAIN}; WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < 2000)
      INSERT INTO ways (name) SELECT hex(zeroblob(200)) FROM n`)
    ).slice();
    const page = new DataView(bytes.buffer);
    for (let at = 0; at < bytes.length; at += 4096)
      if (bytes[at] === 5)
        for (let cell = 0; cell < page.getUint16(at + 3); cell++)
          page.setUint32(at + page.getUint16(at + 12 + 2 * cell), at / 4096 + 1);
    const { problems } = await readGeoPackage(bytes);
    expect(said(problems)).toMatch(/damaged|too many steps|could not be/);
  });

  test('that is none is refused with a sentence', async () => {
    for (const bytes of [new Uint8Array(0), new TextEncoder().encode('SQLite format 3\0 and no more')]) {
      const { value, problems } = await readGeoPackage(bytes);
      expect(value).toBeNull();
      expect(problems).toHaveLength(1);
    }
  });
});

test('an archive of nothing is a file all the same', async () => {
  const { value, problems } = await readGeoPackage(await geoPackageOf([], 0));
  expect(value?.tracks).toEqual([]);
  expect(said(problems)).toContain('no track');
});
