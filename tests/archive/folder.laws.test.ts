import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { filedBy } from '../../src/archive/filed.ts';
import { FolderReading } from '../../src/archive/folder/folderReading.ts';
import { readZip, zipOf } from '../../src/archive/folder/zip.ts';
import { filesOf } from '../../src/archive/folder/files.ts';
import { readGeoJson } from '../../src/archive/geoJsonIn.ts';
import { archiveGeoJson } from '../../src/archive/out/archiveGeoJson.ts';
import { anyGradedTrack } from './gradedTracks.ts';
import { piecesOf } from './pieces.ts';

const anyArchive = fc.uniqueArray(anyGradedTrack(), { minLength: 1, maxLength: 4, selector: ({ id }) => id });
const runs = { numRuns: 25, seed: 6310, endOnFailure: true };

describe('an archive comes back as it went in, and nothing is said of it', () => {
  test('from a zip', async () => {
    await fc.assert(
      fc.asyncProperty(anyArchive, async (tracks) => {
        const { value, problems } = await readZip(Buffer.concat(await piecesOf(zipOf(tracks))));
        expect(problems).toEqual([]);
        expect(value?.tracks).toEqual(tracks);
      }),
      runs,
    );
  });

  test('from a folder, whatever the order of its files', async () => {
    await fc.assert(
      fc.asyncProperty(anyArchive, async (tracks) => {
        const taken = new Set<string>();
        const files = tracks.flatMap((graded) => filesOf(graded, taken)).reverse();
        const { value } = await filedBy(async (take) => {
          const folder = new FolderReading(take);
          for (const { name, bytes } of files) await folder.add(name, bytes);
          return folder.answer();
        });
        expect([...(value?.tracks ?? [])].reverse()).toEqual(tracks);
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
