import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readGeoPackage } from '../../src/archive/geopackage/read.ts';
import { geoPackageOf } from '../../src/archive/geopackage/write.ts';
import { anyGradedTrack } from './gradedTracks.ts';

test('an archive comes back from a GeoPackage as it went in, and nothing is said of it', async () => {
  const archive = fc.uniqueArray(anyGradedTrack(), { minLength: 1, maxLength: 4, selector: ({ id }) => id });
  await fc.assert(
    fc.asyncProperty(archive, async (tracks) => {
      const { value, problems } = await readGeoPackage(await geoPackageOf(tracks, 0));
      expect(problems).toEqual([]);
      expect(value?.tracks).toEqual(tracks);
    }),
    { numRuns: 25, seed: 1281, endOnFailure: true },
  );
});
