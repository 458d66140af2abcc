import type { Database } from '@sqlite.org/sqlite-wasm';
import type { Problem, Reading } from '../../problem.ts';
import { projectionOf } from '../../route/projection.ts';
import type { Projection } from '../../route/projection.ts';
import { say } from '../../words/words.ts';
import type { Filed, ForeignPath, Taken, TakeTracks } from '../filed.ts';
import { filedBy, gradedOfPaths, Handing } from '../filed.ts';
import { GRADED_FORMAT, gradedFrom } from '../gradedRecord.ts';
import { ARCHIVE_LIMITS, TRIP_LIMITS } from '../limits.ts';
import { printable, Reader } from '../reader.ts';
import { BlockFile } from './blockFile.ts';
import { geometryOf } from './geometry.ts';
import { RECORD } from './layers.ts';
import { foreignDatabase, hasStopped } from './sqlite.ts';

/** 'GPKG', and what versions before 1.2 wrote: 'GP10', 'GP11'. */
const APPLICATION_IDS = [0x47504b47, 0x47503130, 0x47503131];

/** Tables of the standard that say which layers there are. */
const STANDARD = ['gpkg_geometry_columns', 'gpkg_spatial_ref_sys'];

/** Layers that are looked at; a file of more is no recording of anybody's. */
const MOST_LAYERS = 1_000;

/** Columns under which programs keep what a line is called, and what is said of it. */
const NAMES = ['name', 'title', 'label', 'track_name'];
const NOTES = ['desc', 'description', 'note', 'notes', 'cmt', 'comment'];

/**
 * Reads a GeoPackage of ours or anybody's: graded tracks whole from their records, and other lines as tracks with nothing
 * surveyed. Null only where there is no such file, or it would take too long; all else is listed.
 */
export function readGeoPackage(bytes: Uint8Array): Promise<Reading<Filed>> {
  return filedBy((take) => takeGeoPackage(BlockFile.ofBytes(bytes), take));
}

/** The same, its tracks taken as they are read; those that were taken before it turned out to take too long stay so. */
export async function takeGeoPackage(
  file: BlockFile,
  take: TakeTracks,
  onProgress: (share: number) => void = () => {},
): Promise<Reading<Taken>> {
  const words = say.formats.geoPackage;
  if (file.size > ARCHIVE_LIMITS.fileBytes)
    return refused(say.formats.tooLarge(file.size, ARCHIVE_LIMITS.fileBytes), say.formats.splitIt);
  const head = new Uint8Array(MAGIC.length);
  file.read(0, head);
  if (!MAGIC.every((byte, i) => head[i] === byte)) return refused(words.noSqlite, words.exportAgain);
  let db: Database;
  try {
    db = await foreignDatabase(file);
  } catch (error) {
    return refused(words.cannotOpen(textOf(error)), words.exportAgain);
  }
  const reading = new GeoPackageReading(db, file.size, take, onProgress);
  try {
    await reading.read();
    return reading.answer();
  } catch (error) {
    const what = hasStopped() ? words.tooLong : words.cannotOpen(textOf(error));
    return {
      value: null,
      problems: [...reading.answer().problems, ...refused(what, words.exportAgain).problems],
    };
  } finally {
    db.close();
  }
}

/** How every SQLite file begins (SQLite file format, 1.3.1). */
const MAGIC = Array.from('SQLite format 3\0', (letter) => letter.charCodeAt(0));

interface LineLayer {
  readonly table: string;
  readonly geometryColumn: string;
  readonly type: string;
  readonly projection: Projection | null;
  readonly srs: string;
}

class GeoPackageReading {
  readonly #db: Database;
  readonly #tracks: Handing;
  readonly #onProgress: (share: number) => void;
  readonly #reader = new Reader();
  readonly #ids = new Set<string>();
  /** Tables of whose schema nothing is called by a check. */
  readonly #checkable = new Set<string>();
  /** Of lines of other programs. */
  #points = 0;
  /** Bytes of the file, and those of values that were seen. */
  readonly #size: number;
  #seen = 0;

  constructor(db: Database, size: number, take: TakeTracks, onProgress: (share: number) => void) {
    this.#db = db;
    this.#size = size;
    this.#tracks = new Handing(take);
    this.#onProgress = onProgress;
  }

  answer(): Reading<Taken> {
    return { value: { trackCount: this.#tracks.count, trips: [] }, problems: this.#reader.problems() };
  }

  async read(): Promise<void> {
    const words = say.formats.geoPackage;
    const [[application]] = this.#rows('PRAGMA application_id');
    if (!APPLICATION_IDS.includes(Number(application)))
      this.#reader.warning(say.formats.theFile, words.noApplicationId, say.formats.readAnyway);
    const missing = STANDARD.filter((table) => this.#columnsOf(table) === null);
    STANDARD.forEach((table) => this.#check(table));
    for (const table of missing) this.#reader.error(table, words.noTable, say.formats.nothingRead);
    if (missing.length > 0) return;
    const layers = this.#layers();
    for (const layer of layers) {
      try {
        await this.#readLayer(layer);
      } catch (error) {
        if (hasStopped()) throw error;
        this.#reader.error(
          say.formats.layer(printable(layer.table)),
          words.cannotRead(textOf(error)),
          words.compare,
        );
      }
    }
    await this.#tracks.over(true);
    if (this.#tracks.count === 0)
      this.#reader.error(say.formats.theFile, say.formats.noTracks, say.formats.nothingRead);
  }

  #rows(sql: string, bind: readonly (string | number)[] = []): unknown[][] {
    return this.#db.selectArrays(sql, bind.length > 0 ? [...bind] : undefined);
  }

  /**
   * Columns of a table whose values lie in the file; null where it is a view or asks code of its own. Neither those nor
   * what a schema works out from others is ever asked: one call of a function cannot be stopped.
   */
  #columnsOf(table: string): readonly string[] | null {
    const [entry] = this.#rows('SELECT type, sql FROM sqlite_schema WHERE name = ?', [table]);
    const sql = String(entry?.[1]);
    if (entry?.[0] !== 'table' || /^\s*create\s+virtual/i.test(sql)) return null;
    if (!/\b(check|generated|as)\b/i.test(sql)) this.#checkable.add(table);
    return this.#rows('SELECT name FROM pragma_table_info(?) LIMIT 2000', [table]).map(([name]) =>
      String(name),
    );
  }

  /** Reads all of a table's pages once more, and says what is wrong with them. */
  #check(table: string): void {
    if (!this.#checkable.has(table)) return;
    const [found] = this.#rows(`PRAGMA quick_check(${quoted(table)})`);
    const fault = printable(String(found?.[0]));
    if (fault !== 'ok')
      this.#reader.error(
        say.formats.layer(printable(table)),
        say.formats.geoPackage.damaged(fault),
        say.formats.geoPackage.compare,
      );
  }

  #layers(): LineLayer[] {
    const found = this.#rows(
      `SELECT g.table_name, g.column_name, g.geometry_type_name, s.organization, s.organization_coordsys_id
       FROM gpkg_geometry_columns g LEFT JOIN gpkg_spatial_ref_sys s ON s.srs_id = g.srs_id LIMIT ${MOST_LAYERS}`,
    );
    return found.flatMap(([table, column, type, organization, code]) => {
      if (typeof table !== 'string' || typeof column !== 'string') return [];
      const isEpsg = String(organization).toUpperCase() === 'EPSG';
      return {
        table,
        geometryColumn: column,
        type: String(type).toUpperCase(),
        projection: isEpsg ? projectionOf(Number(code)) : null,
        srs: printable(`${String(organization)}:${String(code)}`),
      };
    });
  }

  async #readLayer(layer: LineLayer): Promise<void> {
    const words = say.formats.geoPackage;
    const where = say.formats.layer(printable(layer.table));
    const columns = this.#columnsOf(layer.table);
    if (columns === null || !columns.includes(layer.geometryColumn)) {
      this.#reader.error(where, words.noTable, say.formats.leftOut);
      return;
    }
    // Ours, read off the records: not tracks in their own right.
    if (columns.includes('track_id') && columns.includes('obstacle_id') && this.#tracks.count > 0) return;
    this.#check(layer.table);
    if (columns.includes(RECORD) && (await this.#readRecords(layer.table))) return;
    if (!/LINESTRING|GEOMETRY/.test(layer.type)) {
      if (this.#rows(`SELECT 1 FROM ${quoted(layer.table)} LIMIT 1`).length > 0)
        this.#reader.warning(where, words.noLines(layer.type.toLowerCase()), say.formats.leftOut);
      return;
    }
    if (layer.projection === null) {
      this.#reader.error(where, say.formats.unknownSystem(layer.srs), say.formats.reproject);
      return;
    }
    await this.#readLines(layer, layer.projection, columns);
  }

  /** Whether there are any of ours in a table. */
  async #readRecords(table: string): Promise<boolean> {
    let found = false;
    const sql = `SELECT ${quoted(RECORD)} FROM ${quoted(table)} LIMIT ${ARCHIVE_LIMITS.tracks + 1}`;
    await this.#each(sql, ([text], row) => {
      const where = say.formats.row(printable(table), row + 1);
      if (typeof text !== 'string' || !text.includes(GRADED_FORMAT)) return;
      found = true;
      if (row >= ARCHIVE_LIMITS.tracks) {
        this.#reader.error(where, say.formats.tooManyTracks(ARCHIVE_LIMITS.tracks), say.formats.splitIt);
        return;
      }
      let record: unknown;
      try {
        record = JSON.parse(text);
      } catch {
        this.#reader.error(where, say.formats.noJson, say.formats.leftOut);
        return;
      }
      const { value, problems } = gradedFrom(record);
      this.#reader.add(problems.map((problem) => ({ ...problem, where: `${where}: ${problem.where}` })));
      if (value) this.#tracks.add({ ...value, id: this.#reader.id(value.id, where, this.#ids, 'track') });
    });
    return found;
  }

  async #readLines(layer: LineLayer, projection: Projection, columns: readonly string[]): Promise<void> {
    const words = say.formats.geoPackage;
    const where = say.formats.layer(printable(layer.table));
    const among = (names: readonly string[]) =>
      columns.find((column) => names.includes(column.toLowerCase()));
    const wanted = [layer.geometryColumn, among(NAMES), among(NOTES)];
    const chosen = wanted.map((column) => (column === undefined ? "''" : quoted(column)));
    const sql = `SELECT ${chosen.join(', ')} FROM ${quoted(layer.table)} LIMIT ${ARCHIVE_LIMITS.tracks + 1}`;
    const lost = { rows: 0, points: 0, others: 0, taken: 0 };
    await this.#each(sql, ([blob, name, note], row) => {
      if (row >= ARCHIVE_LIMITS.tracks) {
        lost.rows++;
        return;
      }
      const geometry = blob instanceof Uint8Array ? geometryOf(blob) : null;
      if (geometry?.kind !== 'lines') {
        lost.others++;
        return;
      }
      const points = geometry.paths.reduce((sum, { lng }) => sum + lng.length, 0);
      if (this.#points + points > ARCHIVE_LIMITS.points) {
        lost.rows++;
        return;
      }
      const called = printable(typeof name === 'string' && name !== '' ? name : `${layer.table} ${row + 1}`);
      const said = typeof note === 'string' ? note.slice(0, TRIP_LIMITS.textLength) : '';
      const made = gradedOfPaths(
        called,
        said,
        geometry.paths.map((path) => inDegrees(path, projection)),
      );
      if (made === null) {
        lost.others++;
        return;
      }
      lost.points += made.lost;
      lost.taken++;
      const id = made.graded.id;
      if (this.#ids.has(id)) return;
      this.#ids.add(id);
      this.#points += points;
      this.#tracks.add(made.graded);
    });
    if (lost.others > 0) this.#reader.error(where, words.noLine, say.formats.leftOut, lost.others);
    if (lost.points > 0)
      this.#reader.error(where, say.formats.noPlace, say.formats.pointsLeftOut, lost.points);
    if (lost.rows > 0)
      this.#reader.error(where, say.formats.tooManyTracks(ARCHIVE_LIMITS.tracks), say.formats.splitIt);
    if (lost.taken > 0) this.#reader.warning(where, words.foreign, words.foreignDone, lost.taken);
  }

  /** Tells each row, and hands over what came of it, some at a time. */
  async #each(sql: string, see: (values: readonly unknown[], row: number) => void): Promise<void> {
    const statement = this.#db.prepare(sql);
    try {
      for (let row = 0; statement.step(); row++) {
        const values = statement.get([]);
        see(values, row);
        for (const value of values)
          if (typeof value === 'string' || value instanceof Uint8Array) this.#seen += value.length;
        this.#onProgress(Math.min(1, this.#seen / this.#size));
        await this.#tracks.over();
      }
    } finally {
      statement.finalize();
    }
  }
}

function inDegrees(path: ForeignPath, { toDegrees, isDegrees }: Projection): ForeignPath {
  if (isDegrees) return path;
  const [lng, lat] = [new Float64Array(path.lng.length), new Float64Array(path.lng.length)];
  for (let i = 0; i < lng.length; i++) [lng[i], lat[i]] = toDegrees(path.lng[i], path.lat[i]);
  return { lng, lat, elevationM: path.elevationM };
}

function quoted(name: string): string {
  return `"${name.replaceAll('"', '""')}"`;
}

function textOf(error: unknown): string {
  return printable(error instanceof Error ? error.message : String(error));
}

function refused(what: string, done: string): { value: null; problems: Problem[] } {
  return { value: null, problems: [{ severity: 'error', where: say.formats.theFile, what, done, times: 1 }] };
}
