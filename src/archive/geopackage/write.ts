import type { Database } from '@sqlite.org/sqlite-wasm';
import type { GradedTrack } from '../gradedTrack.ts';
import { BlockFile } from './blockFile.ts';
import { boxOf, linesBlob, pointBlob } from './geometry.ts';
import type { Row, Table } from './layers.ts';
import { TABLES } from './layers.ts';
import { newDatabase } from './sqlite.ts';
import { indexOf, STANDARD_TABLES, WGS84 } from './standard.ts';

/**
 * Writes graded tracks into an empty file as one GeoPackage (OGC 12-128r18), one after the other: layers of tracks, obstacles
 * and lines, tables of visits and outcomes. `writtenMs` is when, milliseconds since 1970.
 */
export async function writeGeoPackage(
  file: BlockFile,
  tracks: Iterable<GradedTrack> | AsyncIterable<GradedTrack>,
  writtenMs: number,
): Promise<void> {
  const db = await newDatabase(file);
  try {
    db.exec(`BEGIN; ${STANDARD_TABLES}`);
    const layers = TABLES.map((table) => new Filling(db, table));
    for await (const graded of tracks) layers.forEach((layer) => layer.add(graded));
    const written = new Date(writtenMs).toISOString();
    layers.forEach((layer) => layer.end(written));
    db.exec('COMMIT');
  } finally {
    db.close();
  }
}

/** The same as bytes. */
export async function geoPackageOf(
  tracks: readonly GradedTrack[],
  writtenMs: number,
): Promise<Uint8Array<ArrayBuffer>> {
  const file = new BlockFile();
  await writeGeoPackage(file, tracks, writtenMs);
  return file.bytes();
}

/** One table while rows go into it. */
class Filling {
  readonly #db: Database;
  readonly #table: Table;
  readonly #insert;
  readonly #box: [number, number, number, number] = [Infinity, -Infinity, Infinity, -Infinity];

  constructor(db: Database, table: Table) {
    const { table: name, geometry, columns } = table;
    const all = [...(geometry === null ? [] : [['geom', geometry]]), ...columns];
    db.exec(
      `CREATE TABLE "${name}" ("fid" INTEGER PRIMARY KEY AUTOINCREMENT NOT NULL, ${all
        .map(([column, type]) => `"${column}" ${type}`)
        .join(', ')});`,
    );
    if (geometry !== null) db.exec(indexOf(name));
    this.#db = db;
    this.#table = table;
    this.#insert = db.prepare(
      `INSERT INTO "${name}" (${all.map(([column]) => `"${column}"`).join(', ')}) VALUES (${all
        .map(() => '?')
        .join(', ')})`,
    );
  }

  add(graded: GradedTrack): void {
    for (const row of this.#table.rowsOf(graded)) {
      const values = this.#table.geometry === null ? row.values : [this.#geometryOf(row), ...row.values];
      this.#insert.bind(values).stepReset();
    }
  }

  #geometryOf({ paths }: Row): Uint8Array | null {
    if (paths.length === 0) return null;
    const [west, east, south, north] = boxOf(paths);
    this.#box[0] = Math.min(this.#box[0], west);
    this.#box[1] = Math.max(this.#box[1], east);
    this.#box[2] = Math.min(this.#box[2], south);
    this.#box[3] = Math.max(this.#box[3], north);
    return this.#table.geometry === 'POINT'
      ? pointBlob(paths[0].lng[0], paths[0].lat[0], WGS84)
      : linesBlob(paths, WGS84);
  }

  /** Enters the table into the standard's contents, with the box round all that is in it. */
  end(written: string): void {
    this.#insert.finalize();
    const { table, description, geometry } = this.#table;
    const [west, east, south, north] = this.#box;
    const box = west <= east ? [west, south, east, north] : [null, null, null, null];
    this.#db.exec({
      sql: 'INSERT INTO gpkg_contents VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)',
      bind: [
        table,
        geometry === null ? 'attributes' : 'features',
        table,
        description,
        written,
        ...box,
        geometry === null ? null : WGS84,
      ],
    });
    if (geometry !== null)
      this.#db.exec({
        sql: 'INSERT INTO gpkg_geometry_columns VALUES (?, ?, ?, ?, ?, 0)',
        bind: [table, 'geom', geometry, WGS84, table === 'tracks' ? 2 : 0],
      });
  }
}
