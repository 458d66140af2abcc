/** What every GeoPackage holds, as the standard has it: OGC 12-128r18 (GeoPackage 1.3.1), annex C and F.3. */

/** WGS 84, longitude and latitude in degrees. */
export const WGS84 = 4326;

const WGS84_TEXT =
  'GEOGCS["WGS 84",DATUM["WGS_1984",SPHEROID["WGS 84",6378137,298.257223563,AUTHORITY["EPSG","7030"]],AUTHORITY["EPSG","6326"]],PRIMEM["Greenwich",0,AUTHORITY["EPSG","8901"]],UNIT["degree",0.0174532925199433,AUTHORITY["EPSG","9122"]],AUTHORITY["EPSG","4326"]]';

/** 'GPKG' in ASCII, and 1.3.0 as the standard writes versions (1.1.2, requirement 2). */
export const APPLICATION_ID = 0x47504b47;
export const USER_VERSION = 10300;

export const STANDARD_TABLES = `
PRAGMA application_id = ${APPLICATION_ID};
PRAGMA user_version = ${USER_VERSION};
CREATE TABLE gpkg_spatial_ref_sys (
  srs_name TEXT NOT NULL,
  srs_id INTEGER NOT NULL PRIMARY KEY,
  organization TEXT NOT NULL,
  organization_coordsys_id INTEGER NOT NULL,
  definition TEXT NOT NULL,
  description TEXT
);
INSERT INTO gpkg_spatial_ref_sys VALUES
  ('Undefined cartesian SRS', -1, 'NONE', -1, 'undefined', 'undefined cartesian coordinate reference system'),
  ('Undefined geographic SRS', 0, 'NONE', 0, 'undefined', 'undefined geographic coordinate reference system'),
  ('WGS 84 geodetic', ${WGS84}, 'EPSG', ${WGS84}, '${WGS84_TEXT}', 'longitude and latitude in degrees');
CREATE TABLE gpkg_contents (
  table_name TEXT NOT NULL PRIMARY KEY,
  data_type TEXT NOT NULL,
  identifier TEXT UNIQUE,
  description TEXT DEFAULT '',
  last_change DATETIME NOT NULL DEFAULT (strftime('%Y-%m-%dT%H:%M:%fZ','now')),
  min_x DOUBLE,
  min_y DOUBLE,
  max_x DOUBLE,
  max_y DOUBLE,
  srs_id INTEGER,
  CONSTRAINT fk_gc_r_srs_id FOREIGN KEY (srs_id) REFERENCES gpkg_spatial_ref_sys(srs_id)
);
CREATE TABLE gpkg_geometry_columns (
  table_name TEXT NOT NULL,
  column_name TEXT NOT NULL,
  geometry_type_name TEXT NOT NULL,
  srs_id INTEGER NOT NULL,
  z TINYINT NOT NULL,
  m TINYINT NOT NULL,
  CONSTRAINT pk_geom_cols PRIMARY KEY (table_name, column_name),
  CONSTRAINT uk_gc_table_name UNIQUE (table_name),
  CONSTRAINT fk_gc_tn FOREIGN KEY (table_name) REFERENCES gpkg_contents(table_name),
  CONSTRAINT fk_gc_srs FOREIGN KEY (srs_id) REFERENCES gpkg_spatial_ref_sys (srs_id)
);
CREATE TABLE gpkg_extensions (
  table_name TEXT,
  column_name TEXT,
  extension_name TEXT NOT NULL,
  definition TEXT NOT NULL,
  scope TEXT NOT NULL,
  CONSTRAINT ge_tce UNIQUE (table_name, column_name, extension_name)
);`;

/** Where the standard defines the index, for `gpkg_extensions` (F.3, table 41). */
const INDEX_DEFINITION = 'http://www.geopackage.org/spec120/#extension_rtree';

/**
 * The R*Tree index of a table that has its geometries in `geom` and its keys in `fid`, and the triggers by which any
 * program that changes a row keeps it true (F.3, "Loading the table" and "Triggers"). To be made before rows go in: the
 * triggers fill it.
 */
export function indexOf(table: string): string {
  const index = `"rtree_${table}_geom"`;
  const put = `INSERT OR REPLACE INTO ${index} VALUES (NEW."fid", ST_MinX(NEW."geom"), ST_MaxX(NEW."geom"), ST_MinY(NEW."geom"), ST_MaxY(NEW."geom"));`;
  const there = '(NEW."geom" NOTNULL AND NOT ST_IsEmpty(NEW."geom"))';
  const gone = '(NEW."geom" ISNULL OR ST_IsEmpty(NEW."geom"))';
  const trigger = (name: string, when: string, actions: string) =>
    `CREATE TRIGGER "rtree_${table}_geom_${name}" AFTER ${when} BEGIN ${actions} END;`;
  return [
    `CREATE VIRTUAL TABLE ${index} USING rtree(id, minx, maxx, miny, maxy);`,
    `INSERT INTO gpkg_extensions VALUES ('${table}', 'geom', 'gpkg_rtree_index', '${INDEX_DEFINITION}', 'write-only');`,
    trigger('insert', `INSERT ON "${table}" WHEN (new."geom" NOT NULL AND NOT ST_IsEmpty(NEW."geom"))`, put),
    trigger('update1', `UPDATE OF "geom" ON "${table}" WHEN OLD."fid" = NEW."fid" AND ${there}`, put),
    trigger(
      'update2',
      `UPDATE OF "geom" ON "${table}" WHEN OLD."fid" = NEW."fid" AND ${gone}`,
      `DELETE FROM ${index} WHERE id = OLD."fid";`,
    ),
    trigger(
      'update3',
      `UPDATE ON "${table}" WHEN OLD."fid" != NEW."fid" AND ${there}`,
      `DELETE FROM ${index} WHERE id = OLD."fid"; ${put}`,
    ),
    trigger(
      'update4',
      `UPDATE ON "${table}" WHEN OLD."fid" != NEW."fid" AND ${gone}`,
      `DELETE FROM ${index} WHERE id IN (OLD."fid", NEW."fid");`,
    ),
    trigger(
      'delete',
      `DELETE ON "${table}" WHEN old."geom" NOT NULL`,
      `DELETE FROM ${index} WHERE id = OLD."fid";`,
    ),
  ].join('\n');
}
