import type { Database, Sqlite3Static } from '@sqlite.org/sqlite-wasm';
import init from '@sqlite.org/sqlite-wasm';
import type { BlockFile } from './blockFile.ts';
import { BlockFiles } from './blockFiles.ts';
import { boxOf, geometryOf } from './geometry.ts';

/** Opcodes of SQLite's machine between two looks at the budget. */
const STEP = 1_000;

/** Looks that one reading may take, and more for each 1,000 bytes of the file: a row of it costs some 20 opcodes. */
const LOOKS = 5_000;

/** Looks that a block counts for which is fetched: it takes as long. Read from beginning to end a file has four for each MB. */
const LOOKS_A_FETCH = 20;

interface Engine {
  readonly sqlite: Sqlite3Static;
  readonly files: BlockFiles;
  /** Address of the function that counts down and stops a statement at zero. */
  readonly countDown: number;
}

let started: Promise<Engine> | null = null;
let looksLeft = 0;

/** SQLite itself, compiled to WebAssembly; loaded once, when the first file needs it. */
function engine(): Promise<Engine> {
  started ??= init().then((sqlite) => {
    const files = new BlockFiles(sqlite);
    let fetches = 0;
    const count = () => {
      looksLeft -= 1 + LOOKS_A_FETCH * (files.fetches - fetches);
      fetches = files.fetches;
      return looksLeft < 0 ? 1 : 0;
    };
    return { sqlite, files, countDown: Number(sqlite.wasm.installFunction('i(p)', count)) };
  });
  return started;
}

/**
 * A new database in an empty file, that knows the functions the R*Tree triggers of the standard call. It is written from
 * end to end or thrown away, so nothing is noted by which it could be taken back.
 */
export async function newDatabase(file: BlockFile): Promise<Database> {
  const { files } = await engine();
  const db = files.database(file, 'c');
  db.exec('PRAGMA journal_mode=OFF; PRAGMA synchronous=OFF; PRAGMA temp_store=MEMORY');
  const options = { deterministic: true, innocuous: true, arity: 1 };
  const edges = ['ST_MinX', 'ST_MaxX', 'ST_MinY', 'ST_MaxY'];
  edges.forEach((name, edge) =>
    db.createFunction({ name, ...options, xFunc: (_context, blob) => boxOfBlob(blob)?.[edge] ?? null }),
  );
  db.createFunction({
    name: 'ST_IsEmpty',
    ...options,
    xFunc: (_context, blob) => (boxOfBlob(blob) === null ? 1 : 0),
  });
  return db;
}

function boxOfBlob(blob: unknown): readonly number[] | null {
  const geometry = blob instanceof Uint8Array ? geometryOf(blob) : null;
  const box = geometry && boxOf(geometry.paths);
  return box !== null && box[0] <= box[1] ? box : null;
}

/**
 * A database that somebody else wrote, to be read and no more: its views and triggers do nothing, its schema may call
 * nothing that reaches outside, no value is longer than the file, and all statements together have a budget of steps.
 */
export async function foreignDatabase(file: BlockFile): Promise<Database> {
  const { sqlite, files, countDown } = await engine();
  const { capi } = sqlite;
  const { size } = file;
  looksLeft = LOOKS + size / 1_000;
  // What the -wal file of a file in WAL mode held is not here, and without one it cannot be opened (SQLite file format, 1.3.3).
  if (size > 20) file.write(18, Uint8Array.of(1, 1));
  const db = files.database(file, 'r');
  try {
    const off = [
      capi.SQLITE_DBCONFIG_TRUSTED_SCHEMA,
      capi.SQLITE_DBCONFIG_ENABLE_VIEW,
      capi.SQLITE_DBCONFIG_ENABLE_TRIGGER,
      capi.SQLITE_DBCONFIG_DQS_DML,
    ] as const;
    for (const option of off) capi.sqlite3_db_config(db, option, 0, 0);
    capi.sqlite3_db_config(db, capi.SQLITE_DBCONFIG_DEFENSIVE, 1, 0);
    const limits = [
      [capi.SQLITE_LIMIT_LENGTH, 2 * size + 1_000_000],
      [capi.SQLITE_LIMIT_SQL_LENGTH, 100_000],
      [capi.SQLITE_LIMIT_COLUMN, 2_000],
      [capi.SQLITE_LIMIT_EXPR_DEPTH, 50],
      [capi.SQLITE_LIMIT_COMPOUND_SELECT, 5],
      [capi.SQLITE_LIMIT_VDBE_OP, 25_000],
      [capi.SQLITE_LIMIT_FUNCTION_ARG, 8],
      [capi.SQLITE_LIMIT_ATTACHED, 0],
      [capi.SQLITE_LIMIT_LIKE_PATTERN_LENGTH, 50],
    ] as const;
    for (const [limit, most] of limits) capi.sqlite3_limit(db, limit, most);
    capi.sqlite3_progress_handler(db, STEP, countDown, 0);
    db.exec('PRAGMA cell_size_check=ON; PRAGMA trusted_schema=OFF; PRAGMA query_only=ON');
    return db;
  } catch (error) {
    db.close();
    throw error;
  }
}

/** A reading that had taken too many steps was stopped. */
export function hasStopped(): boolean {
  return looksLeft < 0;
}
