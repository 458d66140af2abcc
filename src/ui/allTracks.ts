import type { GradedTrack } from '../archive/gradedTrack.ts';
import type { TrackRow } from '../archive/trackRow.ts';
import type { Problem } from '../problem.ts';
import { takeTracksBare } from '../workers/archive.ts';

/** Tracks that are read at a time. */
const AT_ONCE = 10;

/** Every track of some rows, read a few at a time, told as they come. */
export async function* allTracks(
  rows: readonly TrackRow[],
  signal: AbortSignal,
): AsyncGenerator<{
  readonly tracks: readonly GradedTrack[];
  readonly done: number;
  readonly problems: readonly Problem[];
}> {
  for (let i = 0; i < rows.length && !signal.aborted; i += AT_ONCE) {
    const { value, problems } = await takeTracksBare(rows.slice(i, i + AT_ONCE).map(({ id }) => id));
    yield { tracks: value ?? [], done: Math.min(rows.length, i + AT_ONCE), problems };
  }
}
