import type { Problem, Reading } from '../problem.ts';
import { say } from '../words/words.ts';
import type { Filed, Taken, TakeTracks } from './filed.ts';
import { Handing } from './filed.ts';
import { walkFeatures } from './featureWalk.ts';
import { filedFromGeoJson, GeoJsonReading, ownIdOf } from './geoJsonIn.ts';
import { gradedFrom } from './gradedRecord.ts';
import { isTooLargeJson, kindOfJson, START_LENGTH } from './jsonKind.ts';
import { ARCHIVE_LIMITS } from './limits.ts';
import { tripFrom } from './tripRecord.ts';

/**
 * Reads one file of JSON, a graded track, a trip or GeoJSON, whatever it is called; its tracks are taken some at a time.
 * Null where it is none of them.
 */
export async function takeJson(
  file: Blob,
  take: TakeTracks,
  onProgress: (share: number) => void = () => {},
): Promise<Reading<Taken>> {
  const { noJson, nothingRead } = say.formats;
  const start = await file.slice(0, START_LENGTH).text();
  if (isTooLargeJson(start, file.size, ARCHIVE_LIMITS.geoJsonBytes))
    return takeFeatures(file, take, onProgress);
  let given: unknown;
  try {
    given = JSON.parse((await file.text()).replace(/^\uFEFF/, ''));
  } catch (error) {
    if (error instanceof SyntaxError || error instanceof RangeError) return refused(noJson, nothingRead);
    throw error;
  }
  const { value, problems } = filedFromJson(given);
  if (value === null) return { value, problems };
  const handing = new Handing(take);
  for (const track of value.tracks) {
    handing.add(track);
    await handing.over();
    onProgress(handing.count / value.tracks.length);
  }
  await handing.over(true);
  return { value: { trackCount: handing.count, trips: value.trips }, problems };
}

/** GeoJSON that is not held whole: walked through once for the tracks that it carries, and once more to read them. */
async function takeFeatures(
  file: Blob,
  take: TakeTracks,
  onProgress: (share: number) => void,
): Promise<Reading<Taken>> {
  const most = ARCHIVE_LIMITS.featureBytes;
  const owned = new Set<unknown>();
  const walk = await walkFeatures(
    file,
    most,
    (feature) => {
      const id = ownIdOf(feature);
      if (id !== null) owned.add(id);
    },
    (share) => onProgress(share / 2),
  );
  const { noJson, nothingRead, geoJson } = say.formats;
  if (walk === 'no JSON') return refused(noJson, nothingRead);
  if (walk === 'no collection') return refused(geoJson.noCollection, nothingRead);
  if (walk === 'too large a feature') return refused(geoJson.tooLargeFeature(most), geoJson.otherwise);
  const reading = new GeoJsonReading(owned);
  const handing = new Handing(take);
  await walkFeatures(
    file,
    most,
    async (feature, i) => {
      const track = reading.add(feature, i);
      if (track) handing.add(track);
      await handing.over();
    },
    (share) => onProgress(0.5 + share / 2),
  );
  await handing.over(true);
  return { value: { trackCount: handing.count, trips: [] }, problems: reading.problems() };
}

function filedFromJson(given: unknown): Reading<Filed> {
  switch (kindOfJson(given)) {
    case 'graded track': {
      const { value, problems } = gradedFrom(given);
      return { value: value && { tracks: [value], trips: [] }, problems };
    }
    case 'trip': {
      const { value, problems } = tripFrom(given);
      return { value: value && { tracks: [], trips: [value] }, problems };
    }
    case 'GeoJSON':
      return filedFromGeoJson(given);
    case null:
      return refused(say.formats.zip.notRead, say.formats.nothingRead);
  }
}

function refused(what: string, done: string): { value: null; problems: Problem[] } {
  return { value: null, problems: [{ severity: 'error', where: say.formats.theFile, what, done, times: 1 }] };
}
