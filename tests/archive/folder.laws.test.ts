import fc from 'fast-check';
import { strFromU8, strToU8 } from 'fflate';
import { describe, expect, test } from 'vitest';
import type { Filed } from '../../src/archive/filed.ts';
import { asTrip, filedBy } from '../../src/archive/filed.ts';
import { FolderReading } from '../../src/archive/folder/folderReading.ts';
import { readZip, zipOf } from '../../src/archive/folder/zip.ts';
import type { NamedFile } from '../../src/archive/folder/files.ts';
import { filesOf } from '../../src/archive/folder/files.ts';
import { readGeoJson } from '../../src/archive/geoJsonIn.ts';
import { archiveGeoJson } from '../../src/archive/out/archiveGeoJson.ts';
import { tripToJson } from '../../src/archive/share.ts';
import { tripFrom } from '../../src/archive/tripRecord.ts';
import type { Reading } from '../../src/problem.ts';
import { say } from '../../src/words/words.ts';
import { anyGradedTrack } from './gradedTracks.ts';
import { piecesOf } from './pieces.ts';

const anyArchive = fc.uniqueArray(anyGradedTrack(), { minLength: 1, maxLength: 4, selector: ({ id }) => id });
const runs = { numRuns: 25, seed: 6310, endOnFailure: true };

/** What a folder of such files holds, read in their order. */
function inFolder(files: readonly NamedFile[], mostTracks?: number): Promise<Reading<Filed>> {
  return filedBy(async (take) => {
    const folder = new FolderReading(take, undefined, mostTracks);
    for (const { name, bytes } of files) await folder.add(name, bytes);
    return folder.answer();
  });
}

describe('an archive comes back as it went in, and nothing is said of it', () => {
  test('from a zip', async () => {
    await fc.assert(
      fc.asyncProperty(anyArchive, async (tracks) => {
        const { value, problems } = await readZip(Buffer.concat(await piecesOf(zipOf(tracks))));
        expect(problems).toEqual([]);
        expect(value).toEqual({ tracks, trips: [] });
      }),
      runs,
    );
  });

  test('from a folder, whatever the order of its files', async () => {
    await fc.assert(
      fc.asyncProperty(anyArchive, async (tracks) => {
        const taken = new Set<string>();
        const files = tracks.flatMap((graded) => filesOf(graded, taken)).reverse();
        const { value } = await inFolder(files);
        expect([...(value?.tracks ?? [])].reverse()).toEqual(tracks);
        expect(value?.trips).toEqual([]);
      }),
      runs,
    );
  });

  test('from GeoJSON', async () => {
    await fc.assert(
      fc.asyncProperty(anyArchive, async (tracks) => {
        const { value, problems } = readGeoJson((await piecesOf(archiveGeoJson(tracks))).join(''));
        expect(problems).toEqual([]);
        expect(value?.tracks).toEqual(tracks);
      }),
      runs,
    );
  });
});

test('as many tracks as may come do, whatever the order of their files; one more is left out and told', async () => {
  const tracks = fc
    .sample(anyGradedTrack(), { numRuns: 3, seed: 12 })
    .map((one, i) => ({ ...one, id: `${i}` }));
  const taken = new Set<string>();
  const files = tracks.map((graded) => filesOf(graded, taken));
  const orders = [files.flat(), files.flatMap((some) => [...some].reverse())];
  for (const order of orders) {
    const all = await inFolder(order, 3);
    expect(all.value).toEqual({ tracks, trips: [] });
    const two = await inFolder(order, 2);
    expect(two.value).toEqual({ tracks: tracks.slice(0, 2), trips: [] });
    expect(two.problems.filter(({ what }) => what === say.formats.tooManyTracks(2))).toHaveLength(3);
  }
});

describe('a trip that lies beside its graded track', () => {
  const [graded] = fc.sample(anyGradedTrack(), { numRuns: 1, seed: 12 });
  const [whole, trip, recorded] = filesOf(graded, new Set());

  test('opens on a desk as the track is today, with nobody in it', () => {
    expect(tripFrom(JSON.parse(strFromU8(trip.bytes)))).toEqual({ value: asTrip(graded), problems: [] });
  });

  test.each([false, true])('is a trip of its own once somebody changed it, last: %s', async (isLast) => {
    const changed = { ...asTrip(graded), note: 'Meet at the ford' };
    const file = { name: trip.name, bytes: strToU8(tripToJson(changed)) };
    const files = [file, whole, recorded];
    const { value } = await inFolder(isLast ? files.reverse() : files);
    expect(value).toEqual({ tracks: [graded], trips: [changed] });
  });

  test('stands in for a track that a newer version wrote', async () => {
    const newer = { name: whole.name, bytes: strToU8('{"format":"rutline-graded-track","version":99}') };
    const { value, problems } = await inFolder([newer, trip, recorded]);
    expect(value).toEqual({ tracks: [], trips: [asTrip(graded)] });
    expect(problems.length).toBeGreaterThan(0);
  });
});
