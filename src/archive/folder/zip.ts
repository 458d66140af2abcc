import { strToU8, Unzip, UnzipInflate, UnzipPassThrough, Zip, ZipDeflate } from 'fflate';
import type { Problem, Reading } from '../../problem.ts';
import { say } from '../../words/words.ts';
import type { Filed, Taken, TakeTracks } from '../filed.ts';
import { filedBy } from '../filed.ts';
import type { GradedTrack } from '../gradedTrack.ts';
import { ZIP_LIMITS } from '../limits.ts';
import type { NamedFile } from './files.ts';
import { filesOf } from './files.ts';
import { FolderReading } from './folderReading.ts';

export type ZipLimits = Readonly<Record<keyof typeof ZIP_LIMITS, number>>;

/** Packed bytes that are unpacked at a time: 16 MB at most come out of them. */
const PIECE = 2 ** 14;

/** Packed bytes that are looked at together. */
const READ = 2 ** 20;

/** The files of graded tracks as a folder, and others after them, packed (APPNOTE 6.3.10), piece by piece. */
export async function* zipOf(
  tracks: Iterable<GradedTrack> | AsyncIterable<GradedTrack>,
  others: Iterable<NamedFile> = [],
): AsyncGenerator<Uint8Array<ArrayBuffer>> {
  const parts: Uint8Array<ArrayBuffer>[] = [];
  const zip = new Zip((error, part) => {
    if (error) throw error;
    parts.push(part);
  });
  const add = ({ name, bytes }: NamedFile): void => {
    const entry = new ZipDeflate(name, { level: 6 });
    zip.add(entry);
    entry.push(bytes, true);
  };
  const taken = new Set<string>();
  for await (const graded of tracks) {
    filesOf(graded, taken).forEach(add);
    yield* parts.splice(0);
  }
  for (const other of others) add(other);
  zip.end();
  yield* parts;
}

/** Reads a zip of GPX, trips, graded tracks and GeoJSON; null only where it is none. What is wrong is listed. */
export function readZip(bytes: Uint8Array, limits: ZipLimits = ZIP_LIMITS): Promise<Reading<Filed>> {
  return filedBy((take) => takeZip(new Blob([bytes.slice()]), take, () => {}, limits));
}

/** The same, its tracks taken as they are read. */
export async function takeZip(
  file: Blob,
  take: TakeTracks,
  onProgress: (share: number) => void = () => {},
  limits: ZipLimits = ZIP_LIMITS,
): Promise<Reading<Taken>> {
  const head = await bytesIn(file, 0, 4);
  if (!starts(head, 'PK\x03\x04') && !starts(head, 'PK\x05\x06')) return refused();
  const folder = new FolderReading(take);
  const unpacking = new Unpacking(folder, limits);
  for (let from = 0; from < file.size && !unpacking.stopped; from += READ) {
    const bytes = await bytesIn(file, from, from + READ);
    for (let at = 0; at < bytes.length && !unpacking.stopped; at += PIECE) {
      unpacking.push(bytes.subarray(at, at + PIECE), from + at + PIECE >= file.size);
      for (const { name, content } of unpacking.whole.splice(0)) await folder.add(name, content);
      onProgress(Math.min(1, (from + at + PIECE) / file.size));
    }
  }
  unpacking.end();
  return folder.answer();
}

async function bytesIn(file: Blob, from: number, to: number): Promise<Uint8Array> {
  return new Uint8Array(await file.slice(from, to).arrayBuffer());
}

/** Unpacks as bytes come, within limits. */
class Unpacking {
  /** Files that are complete and not yet taken. */
  readonly whole: { readonly name: string; readonly content: Uint8Array }[] = [];
  stopped = false;
  readonly #folder: FolderReading;
  readonly #unzip = new Unzip();
  #packed = 0;
  #unpacked = 0;
  #entries = 0;
  #open: string | null = null;

  constructor(folder: FolderReading, limits: ZipLimits) {
    this.#folder = folder;
    this.#unzip.register(UnzipInflate);
    this.#unzip.register(UnzipPassThrough);
    this.#unzip.onfile = (file) => {
      if (this.stopped) return;
      if (++this.#entries > limits.entries)
        return this.#stop(file.name, say.formats.zip.tooMany(limits.entries));
      if (file.name.endsWith('/')) return;
      if (leadsOut(file.name)) {
        this.#folder.error(file.name, say.formats.zip.badName, say.formats.leftOut);
        return;
      }
      const parts: Uint8Array[] = [];
      let size = 0;
      const packedBefore = this.#packed;
      file.ondata = (error, part, final) => {
        if (this.stopped) return;
        if (error) return this.#stop(file.name, say.formats.zip.noZip);
        size += part.length;
        this.#unpacked += part.length;
        const packed = this.#packed - packedBefore + PIECE;
        if (size > limits.graceBytes && size > limits.ratio * packed)
          return this.#stop(file.name, say.formats.zip.bomb);
        if (size > limits.entryBytes || this.#unpacked > limits.bytes)
          return this.#stop(file.name, say.formats.zip.tooMuch(Math.min(limits.entryBytes, limits.bytes)));
        parts.push(part);
        if (!final) return;
        this.#open = null;
        this.whole.push({ name: file.name, content: joined(parts, size) });
      };
      try {
        file.start();
        this.#open = file.name;
      } catch {
        this.#folder.error(file.name, say.formats.zip.locked, say.formats.leftOut);
      }
    };
  }

  push(piece: Uint8Array, final: boolean): void {
    try {
      this.#unzip.push(piece, final);
    } catch {
      this.#stop(this.#open ?? say.formats.theFile, say.formats.zip.noZip);
    }
    this.#packed += piece.length;
  }

  /** A file that was begun and never ended was cut off. */
  end(): void {
    if (!this.stopped && this.#open !== null) this.#stop(this.#open, say.formats.zip.noZip);
  }

  #stop(name: string, what: string): void {
    this.stopped = true;
    this.#folder.error(name, what, say.formats.zip.stopped);
  }
}

/** Names are the zip's own, and may say anything. */
function leadsOut(name: string): boolean {
  return /(^|[/\\])\.\.([/\\]|$)|^[/\\]|^[a-z]:|\\|\0/i.test(name);
}

function joined(parts: readonly Uint8Array[], size: number): Uint8Array {
  const whole = new Uint8Array(size);
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}

function starts(bytes: Uint8Array, text: string): boolean {
  return strToU8(text, true).every((byte, i) => bytes[i] === byte);
}

function refused(): Reading<never> {
  const { theFile, zip, chooseAgain } = say.formats;
  const problem: Problem = {
    severity: 'error',
    where: theFile,
    what: zip.noZip,
    done: chooseAgain,
    times: 1,
  };
  return { value: null, problems: [problem] };
}
