import type { OfPeople } from '../archive/anonymous.ts';
import { withOnly } from '../archive/anonymous.ts';
import type { Taken, TakeTracks } from '../archive/filed.ts';
import type { GradedTrack } from '../archive/gradedTrack.ts';
import { ARCHIVE_LIMITS, ZIP_LIMITS } from '../archive/limits.ts';
import type { Problem, Reading } from '../problem.ts';
import type { ElevationGrid } from '../route/elevation.ts';
import type { Track, TrackModel } from '../route/track.ts';
import { say } from '../words/words.ts';

type OnProgress = (share: number) => void;

/** Each format with its library is fetched when a file asks for it. */
const formats = {
  blockFile: () => import('../archive/geopackage/blockFile.ts'),
  geoPackageOut: () => import('../archive/geopackage/write.ts'),
  geoPackageIn: () => import('../archive/geopackage/read.ts'),
  geoJsonOut: () => import('../archive/out/archiveGeoJson.ts'),
  jsonIn: () => import('../archive/jsonIn.ts'),
  files: () => import('../archive/folder/files.ts'),
  folder: () => import('../archive/folder/folderReading.ts'),
  zip: () => import('../archive/folder/zip.ts'),
  publishing: () => import('../archive/publish/publishing.ts'),
  hostZip: () => import('../archive/publish/hostZip.ts'),
  archive: () => import('../archive/gradedStore.ts'),
  shelved: () => import('../archive/shelved.ts'),
  copies: () => import('../archive/exchange.ts'),
  history: () => import('./history.ts'),
  geoTiff: () => import('../route/geoTiff.ts'),
  hgt: () => import('../route/hgt.ts'),
  asciiGrid: () => import('../route/asciiGrid.ts'),
  modelAlong: () => import('../route/modelAlong.ts'),
};

/** What the worker of open formats does; what it is given crosses over to it, and so does the answer. */
export const FORMATS = {
  geoPackage: async (wanted: ArchiveOut, onProgress: OnProgress): Promise<WrittenOut> => {
    const { BlockFile } = await formats.blockFile();
    const { writeGeoPackage } = await formats.geoPackageOut();
    const reading = new ArchiveReading(wanted, onProgress);
    const file = new BlockFile(readBlob);
    await writeGeoPackage(file, reading.tracks(), Date.now());
    return { file: file.blob('application/geopackage+sqlite3'), problems: reading.problems };
  },

  geoJson: async (wanted: ArchiveOut, onProgress: OnProgress): Promise<WrittenOut> => {
    const { archiveGeoJson } = await formats.geoJsonOut();
    const reading = new ArchiveReading(wanted, onProgress);
    const file = await putAway(archiveGeoJson(reading.tracks()), 'application/geo+json');
    return { file, problems: reading.problems };
  },

  zip: async (wanted: ArchiveOut, onProgress: OnProgress): Promise<WrittenOut> => {
    const { zipOf } = await formats.zip();
    const reading = new ArchiveReading(wanted, onProgress);
    return { file: await putAway(zipOf(reading.tracks()), 'application/zip'), problems: reading.problems };
  },

  /** Of a track whose history is damaged: its plain record, where that can be read, and the history as it lies here. */
  whatIsLeft: async (id: string): Promise<WrittenOut> => {
    const { zipOf } = await formats.zip();
    const { takeBare } = await formats.archive();
    const { historyBytes } = await formats.shelved();
    const { COPIES_EXTENSION, copiesBlob, copyBlob } = await formats.copies();
    const bare = await takeBare([id]);
    const history = await historyBytes(id);
    const copy = new Uint8Array(await copiesBlob([copyBlob(history.value ?? [])]).arrayBuffer());
    const file = { name: `${say.gradedTracks.sheet.damagedHistory}${COPIES_EXTENSION}`, bytes: copy };
    return {
      file: await putAway(zipOf(bare.value ?? [], [file]), 'application/zip'),
      problems: [...bare.problems, ...history.problems],
    };
  },

  /** Into a new folder inside the one that was chosen, so that nothing there is written over; how many files. */
  folder: async ({ wanted, folder, name }: FolderOut, onProgress: OnProgress): Promise<FolderWritten> => {
    const { filesOf } = await formats.files();
    const reading = new ArchiveReading(wanted, onProgress);
    const into = await folder.getDirectoryHandle(name, { create: true });
    const taken = new Set<string>();
    let fileCount = 0;
    for await (const graded of reading.tracks())
      for (const { name: file, bytes } of filesOf(graded, taken)) {
        await writeInto(into, file, bytes);
        fileCount++;
      }
    return { name, fileCount, problems: reading.problems };
  },

  /** The tracks are read from the archive of this device, few at a time: all of them together may be many. */
  publish: async ({ ids, folder }: PublishOut, onProgress: OnProgress): Promise<PublishedOut> => {
    const { Publishing } = await formats.publishing();
    const { takeBare } = await formats.archive();
    const publishing = new Publishing();
    let unreadCount = 0;
    for (let i = 0; i < ids.length; i += READ_AT_ONCE) {
      const some = ids.slice(i, i + READ_AT_ONCE);
      const tracks = (await takeBare(some)).value ?? [];
      unreadCount += some.length - tracks.length;
      tracks.forEach((track) => publishing.add(track));
      onProgress(((i + some.length) / ids.length) * PACKED_SHARE);
    }
    const { records, index, trackCount, nowhere } = publishing.files();
    const files = [records, index];
    if (trackCount > 0 && folder !== null)
      for (const { name, pieces } of files) await writeInto(folder, name, new Blob([...pieces]));
    const isZip = trackCount > 0 && folder === null;
    const zip = isZip ? (await formats.hostZip()).hostZip(files) : null;
    const told = files.map(({ name, size }) => ({ name, size }));
    return { trackCount, unreadCount, nowhere, files: told, zip };
  },

  read: async (file: File, onProgress: OnProgress, take: TakeTracks): Promise<Reading<Taken>> => {
    if (file.size > ARCHIVE_LIMITS.fileBytes)
      return refused(say.formats.tooLarge(file.size, ARCHIVE_LIMITS.fileBytes), say.formats.splitIt);
    if (/\.zip$/i.test(file.name)) return (await formats.zip()).takeZip(file, take, onProgress);
    if (!/\.gpkg$/i.test(file.name)) return (await formats.jsonIn()).takeJson(file, take, onProgress);
    const { BlockFile } = await formats.blockFile();
    const { takeGeoPackage } = await formats.geoPackageIn();
    return takeGeoPackage(BlockFile.ofBlob(file, readBlob), take, onProgress);
  },

  readFolder: async (
    folder: FileSystemDirectoryHandle,
    onProgress: OnProgress,
    take: TakeTracks,
  ): Promise<Reading<Taken>> => {
    const { FolderReading } = await formats.folder();
    const reading = new FolderReading(take);
    const files: { readonly path: string; readonly file: File }[] = [];
    await filesIn(folder, '', files, 0);
    let size = 0;
    for (const [i, { path, file }] of files.entries()) {
      size += file.size;
      if (file.size > ZIP_LIMITS.entryBytes || size > ZIP_LIMITS.bytes) {
        reading.error(path, say.formats.tooLarge(file.size, ZIP_LIMITS.entryBytes), say.formats.zip.stopped);
        break;
      }
      await reading.add(path, new Uint8Array(await file.arrayBuffer()));
      onProgress((i + 1) / files.length);
    }
    return reading.answer();
  },

  elevation: async (file: File, onProgress: OnProgress): Promise<Reading<ElevationGrid>> => {
    if (/\.tiff?$/i.test(file.name)) return (await formats.geoTiff()).readGeoTiff(file, onProgress);
    if (file.size > ARCHIVE_LIMITS.fileBytes)
      return refused(say.formats.tooLarge(file.size, ARCHIVE_LIMITS.fileBytes), say.formats.elevation.cut);
    const bytes = new Uint8Array(await file.arrayBuffer());
    return /\.hgt$/i.test(file.name)
      ? (await formats.hgt()).readHgt(file.name, bytes)
      : (await formats.asciiGrid()).readAsciiGrid(bytes);
  },

  alongTrack: async ({ track, grid, name }: AlongTrack, onProgress: OnProgress): Promise<TrackModel | null> =>
    (await formats.modelAlong()).modelAlong(track, grid, name, onProgress),
};

export interface AlongTrack {
  readonly track: Track;
  readonly grid: ElevationGrid;
  /** Of the model's file. */
  readonly name: string;
}

/** Which tracks of the archive are wanted, and what of people they are to carry. */
export interface ArchiveOut extends OfPeople {
  readonly ids: readonly string[];
}

export interface WrittenOut {
  readonly file: Blob;
  /** Of tracks that could not be read. */
  readonly problems: readonly Problem[];
}

export interface FolderWritten {
  /** Of the new folder. */
  readonly name: string;
  readonly fileCount: number;
  readonly problems: readonly Problem[];
}

export interface FolderOut {
  readonly wanted: ArchiveOut;
  readonly folder: FileSystemDirectoryHandle;
  readonly name: string;
}

export interface PublishOut {
  readonly ids: readonly string[];
  /** Where the files go; null for a zip. */
  readonly folder: FileSystemDirectoryHandle | null;
}

export interface PublishedOut {
  /** Where it is 0, nothing was written. */
  readonly trackCount: number;
  readonly unreadCount: number;
  /** Names of tracks without a place, which were left out. */
  readonly nowhere: readonly string[];
  /** The records first, which must be on the host before the index names them. */
  readonly files: readonly { readonly name: string; readonly size: number }[];
  readonly zip: Blob | null;
}

/** Tracks of the archive that are held at a time, and the share of the work that packing them is. */
const READ_AT_ONCE = 4;
const PACKED_SHARE = 0.95;

/** Tracks read from the archive of this device few at a time: all of them together may be many. */
class ArchiveReading {
  readonly problems: Problem[] = [];
  readonly #wanted: ArchiveOut;
  readonly #onProgress: OnProgress;

  constructor(wanted: ArchiveOut, onProgress: OnProgress) {
    this.#wanted = wanted;
    this.#onProgress = onProgress;
  }

  async *tracks(): AsyncGenerator<GradedTrack> {
    const { ids, photos } = this.#wanted;
    const atOnce = photos ? 1 : READ_AT_ONCE;
    for (let i = 0; i < ids.length; i += atOnce) {
      const some = ids.slice(i, i + atOnce);
      for (const graded of await (photos ? this.#whole(some[0]) : this.#bare(some)))
        yield withOnly(graded, this.#wanted);
      this.#onProgress((i + some.length) / ids.length);
    }
  }

  async #bare(ids: readonly string[]): Promise<readonly GradedTrack[]> {
    const { takeBare } = await formats.archive();
    const { value, problems } = await takeBare(ids);
    this.problems.push(...problems);
    return value ?? [];
  }

  /** With the images, which only the history has. */
  async #whole(id: string): Promise<readonly GradedTrack[]> {
    const { take } = await formats.archive();
    await (await formats.history()).startHistory();
    const { value, problems } = await take(id);
    this.problems.push(...problems);
    return value ? [value.graded] : [];
  }
}

/** Only a worker can read so. */
function readBlob(blob: Blob): ArrayBuffer {
  return new FileReaderSync().readAsArrayBuffer(blob);
}

/** Bytes that are given to the browser together, to be kept out of the memory of this worker. */
const PUT_AWAY = 2 ** 20;

async function putAway(pieces: AsyncIterable<string | Uint8Array<ArrayBuffer>>, type: string): Promise<Blob> {
  const parts: Blob[] = [];
  let here: BlobPart[] = [];
  let size = 0;
  for await (const piece of pieces) {
    here.push(piece);
    size += piece.length;
    if (size < PUT_AWAY) continue;
    parts.push(new Blob(here));
    here = [];
    size = 0;
  }
  return new Blob([...parts, ...here], { type });
}

/** All of a file or nothing of it: what was there before stays until then (WHATWG, File System Standard). */
async function writeInto(
  folder: FileSystemDirectoryHandle,
  name: string,
  bytes: Blob | Uint8Array<ArrayBuffer>,
) {
  const stream = await (await folder.getFileHandle(name, { create: true })).createWritable();
  await stream.write(bytes);
  await stream.close();
}

/** Folders inside one another that are looked into. */
const DEPTH = 4;

async function filesIn(
  folder: FileSystemDirectoryHandle,
  path: string,
  into: { readonly path: string; readonly file: File }[],
  depth: number,
): Promise<void> {
  for await (const entry of folder.values()) {
    if (into.length >= ZIP_LIMITS.entries || entry.name.startsWith('.')) continue;
    if (entry.kind === 'file') {
      if (/\.(gpx|json|geojson)$/i.test(entry.name))
        into.push({ path: path + entry.name, file: await entry.getFile() });
    } else if (depth < DEPTH) await filesIn(entry, `${path}${entry.name}/`, into, depth + 1);
  }
}

function refused(what: string, done: string): Reading<never> {
  return { value: null, problems: [{ severity: 'error', where: say.formats.theFile, what, done, times: 1 }] };
}

type Work = typeof FORMATS;

export type FormatsAnswer<K extends keyof Work> = Awaited<ReturnType<Work[K]>>;

/** What the worker is sent, and what it says meanwhile and at the end. */
export interface FormatsAsk {
  readonly name: keyof Work;
  readonly given: unknown;
}

/** `tracks` are taken before the worker goes on, which `FormatsTaken` tells it. */
export type FormatsSaid =
  | { readonly share: number }
  | { readonly tracks: readonly GradedTrack[] }
  | { readonly answer: unknown }
  | { readonly failed: string };

export interface FormatsTaken {
  readonly taken: true;
}
