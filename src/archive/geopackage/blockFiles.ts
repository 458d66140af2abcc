import type { Database, Sqlite3Result, Sqlite3Static, WasmPointer } from '@sqlite.org/sqlite-wasm';
import type { BlockFile } from './blockFile.ts';

/** What SQLite calls the system of these files by. */
const NAME = 'blocks';

/** What is written at once, bytes; a page of a database is as long. */
const SECTOR: number = 4096;

/** Functions of the usual system, which the types of the library leave out. */
type Usual = Readonly<Record<'$xRandomness' | '$xSleep' | '$xCurrentTime', WasmPointer>>;

/**
 * Lets SQLite have its databases in block files (SQLite, "The SQLite OS Interface or VFS"). Each is one database of its own,
 * which nobody else has open: locks always succeed, and there is no journal to be found beside it.
 */
export class BlockFiles {
  readonly #sqlite: Sqlite3Static;
  readonly #named = new Map<string, BlockFile>();
  readonly #open = new Map<WasmPointer, BlockFile>();
  #names = 0;
  /** Fetches of files that were closed. */
  #past = 0;

  constructor(sqlite: Sqlite3Static) {
    const { capi, wasm, vfs } = sqlite;
    this.#sqlite = sqlite;
    const io = new capi.sqlite3_io_methods();
    Object.assign(io, { $iVersion: 1 });
    const done = () => capi.SQLITE_OK;
    vfs.installVfs({
      io: {
        struct: io,
        methods: {
          xClose: (file) => {
            this.#past += this.#open.get(file)?.fetches ?? 0;
            this.#open.delete(file);
            return capi.SQLITE_OK;
          },
          xRead: (file, buffer, count, at) =>
            this.#tried(capi.SQLITE_IOERR_READ, () => {
              const into = wasm.heap8u().subarray(Number(buffer), Number(buffer) + count);
              const read = this.#open.get(file)!.read(Number(at), into);
              return read < count ? capi.SQLITE_IOERR_SHORT_READ : capi.SQLITE_OK;
            }),
          xWrite: (file, buffer, count, at) =>
            this.#tried(capi.SQLITE_IOERR_WRITE, () => {
              const bytes = wasm.heap8u().subarray(Number(buffer), Number(buffer) + count);
              this.#open.get(file)!.write(Number(at), bytes);
              return capi.SQLITE_OK;
            }),
          xTruncate: (file, size) =>
            this.#tried(capi.SQLITE_IOERR_TRUNCATE, () => {
              this.#open.get(file)!.truncate(Number(size));
              return capi.SQLITE_OK;
            }),
          xFileSize: (file, size) => {
            wasm.poke64(size, BigInt(this.#open.get(file)!.size));
            return capi.SQLITE_OK;
          },
          xSync: done,
          xLock: done,
          xUnlock: done,
          xCheckReservedLock: (_file, held) => {
            wasm.poke32(held, 0);
            return capi.SQLITE_OK;
          },
          xFileControl: () => capi.SQLITE_NOTFOUND,
          xSectorSize: () => SECTOR as Sqlite3Result,
          xDeviceCharacteristics: () => 0,
        },
      },
    });
    const handle = new capi.sqlite3_file();
    const system = new capi.sqlite3_vfs();
    const usual = new capi.sqlite3_vfs(capi.sqlite3_vfs_find(null)) as unknown as Usual;
    Object.assign(system, {
      $iVersion: 1,
      $szOsFile: handle.structInfo.sizeof,
      $mxPathname: 64,
      $xRandomness: usual.$xRandomness,
      $xSleep: usual.$xSleep,
      $xCurrentTime: usual.$xCurrentTime,
    });
    handle.dispose();
    vfs.installVfs({
      vfs: {
        struct: system,
        name: NAME,
        methods: {
          xOpen: (_system, name, file, flags, given) => {
            const named = this.#named.get(wasm.cstrToJs(name) ?? '');
            if (named === undefined) return capi.SQLITE_CANTOPEN;
            this.#open.set(file, named);
            const struct = new capi.sqlite3_file(file);
            struct.$pMethods = io.pointer;
            struct.dispose();
            if (given) wasm.poke32(given, flags);
            return capi.SQLITE_OK;
          },
          xAccess: (_system, _name, _flags, there) => {
            wasm.poke32(there, 0);
            return capi.SQLITE_OK;
          },
          xDelete: done,
          xFullPathname: (_system, name, length, full) =>
            wasm.cstrncpy(full, name, length) < length ? capi.SQLITE_OK : capi.SQLITE_CANTOPEN,
        },
      },
    });
  }

  /** Blocks that were fetched for any of them. */
  get fetches(): number {
    return [...this.#open.values()].reduce((sum, { fetches }) => sum + fetches, this.#past);
  }

  /** Opens the database in a file. */
  database(file: BlockFile, flags: 'c' | 'r'): Database {
    const name = `/${this.#names++}`;
    this.#named.set(name, file);
    try {
      return new this.#sqlite.oo1.DB({ filename: name, flags, vfs: NAME });
    } finally {
      this.#named.delete(name);
    }
  }

  /** An exception must not pass through SQLite, as one of a file that was changed meanwhile. */
  #tried(failed: Sqlite3Result, work: () => Sqlite3Result): Sqlite3Result {
    try {
      return work();
    } catch {
      return failed;
    }
  }
}
