import type { Filed } from '../archive/filed.ts';
import type { GradedTrack } from '../archive/gradedTrack.ts';
import type { Reading } from '../problem.ts';
import type { ElevationGrid } from '../route/elevation.ts';
import type { TrackModel } from '../route/track.ts';
import { say, spoken } from '../words/words.ts';
import type {
  AlongTrack,
  FormatsAnswer,
  FormatsAsk,
  FormatsSaid,
  FORMATS,
  PublishedOut,
} from './formatsWork.ts';

type OnProgress = (share: number) => void;

/** Does one thing in a worker of its own; cancelling ends the worker and rejects with the signal's reason. */
function ask<K extends keyof typeof FORMATS>(
  name: K,
  given: Parameters<(typeof FORMATS)[K]>[0],
  onProgress: OnProgress = () => {},
  signal?: AbortSignal,
): Promise<FormatsAnswer<K>> {
  return new Promise((resolve, reject) => {
    signal?.throwIfAborted();
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
    worker.onmessage = ({ data }: MessageEvent<FormatsSaid>) => {
      if ('share' in data) return onProgress(data.share);
      end();
      if ('answer' in data) resolve(data.answer as FormatsAnswer<K>);
      else reject(new Error(data.failed));
    };
    worker.onerror = (event) => {
      end();
      reject(new Error(event.message));
    };
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

/** Graded tracks as one GeoPackage; rejects where it could not be written. */
export function archiveToGeoPackage(
  tracks: readonly GradedTrack[],
  onProgress?: OnProgress,
  signal?: AbortSignal,
): Promise<Blob> {
  return ask('geoPackage', tracks, onProgress, signal);
}

export function archiveToGeoJson(
  tracks: readonly GradedTrack[],
  onProgress?: OnProgress,
  signal?: AbortSignal,
): Promise<Blob> {
  return ask('geoJson', tracks, onProgress, signal);
}

/** Graded tracks as a zip of GPX and JSON files. */
export function archiveToZip(
  tracks: readonly GradedTrack[],
  onProgress?: OnProgress,
  signal?: AbortSignal,
): Promise<Blob> {
  return ask('zip', tracks, onProgress, signal);
}

/** The same files into a new folder, named for the moment, inside the one that was chosen; answers how many. */
export function archiveToFolder(
  tracks: readonly GradedTrack[],
  folder: FileSystemDirectoryHandle,
  onProgress?: OnProgress,
  signal?: AbortSignal,
): Promise<number> {
  const name = `Rutline ${new Date().toISOString().slice(0, 19).replaceAll(':', '-')}`;
  return ask('folder', { tracks, folder, name }, onProgress, signal);
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

/** What a GeoPackage, zip or GeoJSON file holds, told apart by its name. */
export function readArchiveFile(
  file: File,
  onProgress?: OnProgress,
  signal?: AbortSignal,
): Promise<Reading<Filed>> {
  return read(ask('read', file, onProgress, signal), signal);
}

export function readArchiveFolder(
  folder: FileSystemDirectoryHandle,
  onProgress?: OnProgress,
  signal?: AbortSignal,
): Promise<Reading<Filed>> {
  return read(ask('readFolder', folder, onProgress, signal), signal);
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
