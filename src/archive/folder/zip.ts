import { strToU8, Unzip, UnzipInflate, UnzipPassThrough, Zip, ZipDeflate } from 'fflate';
import type { Problem, Reading } from '../../problem.ts';
import { say } from '../../words/words.ts';
import type { Filed } from '../filed.ts';
import type { GradedTrack } from '../gradedTrack.ts';
import { ZIP_LIMITS } from '../limits.ts';
import { filesOf } from './files.ts';
import { FolderReading } from './folderReading.ts';

export type ZipLimits = Readonly<Record<keyof typeof ZIP_LIMITS, number>>;

/** Packed bytes that are unpacked at a time: 16 MB at most come out of them. */
const PIECE = 2 ** 14;

/** Graded tracks as a folder of GPX and JSON files, packed (APPNOTE 6.3.10); `onProgress` is told the share that is in. */
export function zipOf(
  tracks: readonly GradedTrack[],
  onProgress: (share: number) => void = () => {},
): Uint8Array<ArrayBuffer>[] {
  const parts: Uint8Array<ArrayBuffer>[] = [];
  const zip = new Zip((error, part) => {
    if (error) throw error;
    parts.push(part);
  });
  const taken = new Set<string>();
  tracks.forEach((graded, i) => {
    for (const { name, bytes } of filesOf(graded, taken)) {
      const entry = new ZipDeflate(name, { level: 6 });
      zip.add(entry);
      entry.push(bytes, true);
    }
    onProgress((i + 1) / tracks.length);
  });
  zip.end();
  return parts;
}

/** Reads a zip of GPX, trips, graded tracks and GeoJSON; null only where it is none. What is wrong is listed. */
export async function readZip(
  bytes: Uint8Array,
  onProgress: (share: number) => void = () => {},
  limits: ZipLimits = ZIP_LIMITS,
): Promise<Reading<Filed>> {
  if (!starts(bytes, 'PK\x03\x04') && !starts(bytes, 'PK\x05\x06')) return refused();
  const folder = new FolderReading();
  const unpacking = new Unpacking(folder, limits);
  for (let at = 0; at < bytes.length && !unpacking.stopped; at += PIECE) {
    unpacking.push(bytes.subarray(at, at + PIECE), at + PIECE >= bytes.length);
    for (const { name, content } of unpacking.whole.splice(0)) await folder.add(name, content);
    onProgress(Math.min(1, (at + PIECE) / bytes.length));
  }
  unpacking.end();
  return folder.answer();
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

function refused(): Reading<Filed> {
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
