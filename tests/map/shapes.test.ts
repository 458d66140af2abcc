import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { readTrip } from '../../src/archive/share.ts';
import { trackShape } from '../../src/map/shapes.ts';
import { nearestOn, spansOf } from '../../src/route/station.ts';

const track = readTrip(readFileSync('public/demo/outing.json', 'utf8')).value!.track!;

it('a track is drawn with far fewer points, from end to end, and stays within half a metre of the recorded one', () => {
  for (const { from, to } of spansOf(track)) {
    const path = { lng: track.lng.subarray(from, to), lat: track.lat.subarray(from, to) };
    const { coordinates } = trackShape(path, {}).geometry;
    expect(coordinates.length).toBeLessThan((to - from) / 2);
    for (const [end, at] of [
      [coordinates[0], from],
      [coordinates[coordinates.length - 1], to - 1],
    ] as const) {
      expect(end[0]).toBeCloseTo(track.lng[at], 9);
      expect(end[1]).toBeCloseTo(track.lat[at], 9);
    }
    // Every recorded point lies near the drawn line.
    const lng = Float64Array.from(coordinates, ([x]) => x);
    const lat = Float64Array.from(coordinates, ([, y]) => y);
    const none = new Float64Array(lng.length).fill(NaN);
    const drawn = {
      ...track,
      length: lng.length,
      lng,
      lat,
      elevationM: none,
      timeS: none,
      distanceM: Float64Array.from(lng, (_, i) => i),
      segmentStart: Uint32Array.of(0),
    };
    for (let i = from; i < to; i += 7)
      expect(Math.abs(nearestOn(drawn, track.lng[i], track.lat[i]).acrossM)).toBeLessThan(0.55);
  }
});
