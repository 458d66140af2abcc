import { createReadStream } from 'node:fs';
import { open, readFile } from 'node:fs/promises';
import { readTrip } from '../archive/share.ts';
import type { Trip } from '../archive/trip.ts';
import type { Problem, Reading } from '../problem.ts';
import { readGpx } from '../route/gpx.ts';
import type { Recording } from '../route/track.ts';

/** A recording, plain or packed with gzip. */
export function gpxFrom(path: string): Promise<Reading<Recording>> {
  return whereReadable(path, () => readGpx(createReadStream(path)));
}

export function tripFrom(path: string): Promise<Reading<Trip>> {
  return whereReadable(path, async () => readTrip(await readFile(path, 'utf8')));
}

/** What kind of file it is, by its first character that is not blank: `{` begins a trip, anything else may be GPX. */
export function kindOf(path: string): Promise<Reading<'trip' | 'gpx'>> {
  return whereReadable(path, async () => {
    const file = await open(path);
    try {
      const { buffer, bytesRead } = await file.read(Buffer.alloc(64), 0, 64);
      const start = buffer.toString('utf8', 0, bytesRead).replace(/^\uFEFF/, '');
      return { value: start.trimStart().startsWith('{') ? 'trip' : 'gpx', problems: [] };
    } finally {
      await file.close();
    }
  });
}

async function whereReadable<T>(path: string, read: () => Promise<Reading<T>>): Promise<Reading<T>> {
  try {
    return await read();
  } catch (error) {
    const problem = unreadable(path, error);
    if (problem === null) throw error;
    return { value: null, problems: [problem] };
  }
}

/** An error of the file system as a problem; null for anything else, which is our own mistake. */
function unreadable(path: string, error: unknown): Problem | null {
  const { code, syscall } = error as NodeJS.ErrnoException;
  if (typeof syscall !== 'string') return null;
  const what =
    code === 'ENOENT'
      ? 'There is no such file.'
      : code === 'EISDIR'
        ? 'This is a folder.'
        : `The file cannot be read (${code}).`;
  return { severity: 'error', where: path, what, done: 'Check its name and place.', times: 1 };
}
