import type { Trip } from '../archive/trip.ts';
import type { Problem } from '../problem.ts';
import { editTrack, fileTrip, takeTrack } from '../workers/archive.ts';
import { authorNow } from './author.ts';

/** What someone says when filing a trip. */
export interface FilingWish {
  /** Null: as a new graded track, or back where it was taken from. */
  readonly into: string | null;
  readonly by: string;
  /** When the ground was measured. */
  readonly atMs: number;
  readonly photos: boolean;
  /** Whether every obstacle was measured again, so that what was found the same is a visit, too. */
  readonly allMeasured: boolean;
  /** Where a new track lies, in words. */
  readonly area: string;
}

/** Files a trip as someone wishes; which track it is in then, null where it is in none. */
export async function fileAs(
  trip: Trip,
  { into, by, atMs, photos, allMeasured, area }: FilingWish,
): Promise<{ readonly trackId: string | null; readonly problems: readonly Problem[] }> {
  const filedTrip = photos ? trip : await withKnownPhotos(trip, into);
  const { value, problems } = await fileTrip(filedTrip, { by, atMs }, into, allMeasured);
  if (value === null || area.trim() === '') return { trackId: value?.id ?? null, problems };
  const { value: taken } = await takeTrack(value.id);
  if (taken?.graded.area !== '') return { trackId: value.id, problems };
  const problem = await editTrack({ ...taken.graded, area: area.trim() }, taken.heads, {
    ...authorNow(),
    by,
  });
  return { trackId: value.id, problems: problem === null ? problems : [...problems, problem] };
}

/** The trip without photos that the archive does not have already: to leave them out takes none of its own away. */
async function withKnownPhotos(trip: Trip, into: string | null): Promise<Trip> {
  const taken = into === null ? null : (await takeTrack(into)).value;
  const known = new Set(
    taken?.graded.surveyed.flatMap(({ obstacle }) => obstacle.photos.map(({ id }) => id)) ?? [],
  );
  const obstacles = trip.obstacles.map((obstacle) => ({
    ...obstacle,
    photos: obstacle.photos.filter(({ id }) => known.has(id)),
  }));
  return { ...trip, obstacles };
}
