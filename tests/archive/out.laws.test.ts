import fc from 'fast-check';
import { expect, test } from 'vitest';
import { outText } from '../../src/archive/out/formats.ts';
import { decimalText } from '../../src/archive/out/xmlText.ts';
import { readGpx } from '../../src/route/gpx.ts';
import { heightsOf } from '../../src/route/heights.ts';
import { decimal } from '../../src/route/values.ts';
import { anyTrip } from './trips.ts';

test('what is written as GPX is read again as it was: every point, height, time and gap', async () => {
  await fc.assert(
    fc.asyncProperty(anyTrip(), async (trip) => {
      const bytes = new TextEncoder().encode(outText(trip, 'gpx', 'metric'));
      const { value } = await readGpx(bytes);
      if (trip.track === null) return;
      const back = value!.tracks.find(
        ({ kind, length }) => kind === trip.track!.kind && length === trip.track!.length,
      )!;
      expect(back.lng).toEqual(trip.track.lng);
      expect(back.lat).toEqual(trip.track.lat);
      expect(back.elevationM).toEqual(heightsOf(trip.track).elevationM);
      back.timeS.forEach((timeS, i) => {
        const was = trip.track!.timeS[i];
        if (Number.isNaN(was)) expect(timeS).toBeNaN();
        else expect(Math.abs(timeS - was)).toBeLessThanOrEqual(0.000_51);
      });
      if (trip.track.kind === 'track') expect(back.segmentStart).toEqual(trip.track.segmentStart);
    }),
    { seed: 21, numRuns: 100 },
  );
});

test('a decimal has no exponent and keeps its value', () => {
  fc.assert(
    fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (value) => {
      const text = decimalText(value);
      expect(text).toMatch(/^-?\d+(\.\d+)?$/);
      expect(decimal(text)).toBe(value + 0);
    }),
    { seed: 22 },
  );
});
