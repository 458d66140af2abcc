import type { Taken, TakeTracks } from '../archive/filed.ts';
import type { Reading } from '../problem.ts';
import type { ElevationGrid } from '../route/elevation.ts';
import type { TrackModel } from '../route/track.ts';
import { say, spoken } from '../words/words.ts';
import { restArchive } from './archive.ts';
import { restMatrixLanes } from './matrix.ts';
import type {
  AlongTrack,
  ArchiveOut,
  FolderWritten,
  FormatsAnswer,
  FormatsAsk,
  FormatsSaid,
  FormatsTaken,
  FORMATS,
  PublishedOut,
  WrittenOut,
} from './formatsWork.ts';

type OnProgress = (share: number) => void;

/**
 * Does one thing in a worker of its own, for which others make room as a file may be large; cancelling ends the worker and
 * rejects with the signal's reason.
 */
function ask<K extends keyof typeof FORMATS>(
  name: K,
  given: Parameters<(typeof FORMATS)[K]>[0],
  onProgress: OnProgress = () => {},
  signal?: AbortSignal,
  take: TakeTracks = () => {},
): Promise<FormatsAnswer<K>> {
  return new Promise((resolve, reject) => {
    signal?.throwIfAborted();
    restArchive();
    restMatrixLanes();
    const worker = new Worker(new URL('./formats.worker.ts', import.meta.url), {
      type: 'module',
      name: spoken,
    });
    const cancel = () => {
      worker.terminate();
      // eslint-disable-next-line @typescript-eslint/prefer-promise-reject-errors
      reject(signal?.reason);
    };
    signal?.addEventListener('abort', cancel, { once: true });
    const end = () => {
      signal?.removeEventListener('abort', cancel);
      worker.terminate();
    };
    const fail = (error: unknown) => {
      end();
      // eslint-disable-next-line @typescript-eslint/prefer-promise-reject-errors
      reject(error);
    };
    worker.onmessage = ({ data }: MessageEvent<FormatsSaid>) => {
      if ('share' in data) return onProgress(data.share);
      if ('tracks' in data) {
        Promise.resolve(take(data.tracks)).then(
          () => worker.postMessage({ taken: true } satisfies FormatsTaken),
          fail,
        );
        return;
      }
      end();
      if ('answer' in data) resolve(data.answer as FormatsAnswer<K>);
      else reject(new Error(data.failed));
    };
    worker.onerror = (event) => fail(new Error(event.message));
    worker.postMessage({ name, given } satisfies FormatsAsk);
  });
}

/** The same for reading: a worker that broke is a problem like any other; only cancelling rejects. */
async function read<T>(asked: Promise<Reading<T>>, signal?: AbortSignal): Promise<Reading<T>> {
  try {
    return await asked;
  } catch (error) {
    signal?.throwIfAborted();
    const { theFile, cannotRead, chooseAgain } = say.formats;
    const what = cannotRead(error instanceof Error ? error.message : String(error));
    return {
      value: null,
      problems: [{ severity: 'error', where: theFile, what, done: chooseAgain, times: 1 }],
    };
  }
}

/** Tracks of the archive as one GeoPackage; rejects where it could not be written. */
export function archiveToGeoPackage(
  wanted: ArchiveOut,
  onProgress?: OnProgress,
  signal?: AbortSignal,
): Promise<WrittenOut> {
  return ask('geoPackage', wanted, onProgress, signal);
}

export function archiveToGeoJson(
  wanted: ArchiveOut,
  onProgress?: OnProgress,
  signal?: AbortSignal,
): Promise<WrittenOut> {
  return ask('geoJson', wanted, onProgress, signal);
}

/** As a zip of GPX and JSON files. */
export function archiveToZip(
  wanted: ArchiveOut,
  onProgress?: OnProgress,
  signal?: AbortSignal,
): Promise<WrittenOut> {
  return ask('zip', wanted, onProgress, signal);
}

/**
 * What is left of a track whose history is damaged, as a zip: its plain record, which can be taken in again, and the
 * damaged history. Rejects where it could not be written.
 */
export function whatIsLeftOf(id: string): Promise<WrittenOut> {
  return ask('whatIsLeft', id);
}

/** The same files into a new folder, named for the moment, inside the one that was chosen. */
export function archiveToFolder(
  wanted: ArchiveOut,
  folder: FileSystemDirectoryHandle,
  onProgress?: OnProgress,
  signal?: AbortSignal,
): Promise<FolderWritten> {
  const name = `Rutline ${new Date().toISOString().slice(0, 19).replaceAll(':', '-')}`;
  return ask('folder', { wanted, folder, name }, onProgress, signal);
}

/**
 * Tracks of the archive, without people, as the two files that any web host can serve: into a folder, where files of an
 * earlier time stay, or as a zip where `folder` is null. Rejects where they could not be written.
 */
export function publishTracks(
  ids: readonly string[],
  folder: FileSystemDirectoryHandle | null,
  onProgress?: OnProgress,
  signal?: AbortSignal,
): Promise<PublishedOut> {
  return ask('publish', { ids, folder }, onProgress, signal);
}

/**
 * What a GeoPackage, zip or GeoJSON file holds, told apart by its name. Its tracks are given to `take` some at a time, and
 * no more are read until it has answered: what was taken before someone stops it stays taken.
 */
export function readArchiveFile(
  file: File,
  take: TakeTracks,
  onProgress?: OnProgress,
  signal?: AbortSignal,
): Promise<Reading<Taken>> {
  return read(ask('read', file, onProgress, signal, take), signal);
}

export function readArchiveFolder(
  folder: FileSystemDirectoryHandle,
  take: TakeTracks,
  onProgress?: OnProgress,
  signal?: AbortSignal,
): Promise<Reading<Taken>> {
  return read(ask('readFolder', folder, onProgress, signal, take), signal);
}

/** An elevation model: GeoTIFF, HGT or ASCII grid, told apart by its name. */
export function readElevation(
  file: File,
  onProgress?: OnProgress,
  signal?: AbortSignal,
): Promise<Reading<ElevationGrid>> {
  return read(ask('elevation', file, onProgress, signal), signal);
}

/** An elevation model read off along a track; null where it knows none of it. Rejects only when cancelled. */
export function readAlongTrack(
  along: AlongTrack,
  onProgress?: OnProgress,
  signal?: AbortSignal,
): Promise<TrackModel | null> {
  return ask('alongTrack', along, onProgress, signal);
}
