import geodesic from 'geographiclib-geodesic';
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { readTrip } from '../../../src/archive/share.ts';
import { sheetSvg } from '../../../src/draw/sheet.ts';
import { slopeOf } from '../../../src/route/slope.ts';

const trip = readTrip(
  readFileSync(new URL('../../../public/demo/outing.json', import.meta.url), 'utf8'),
).value!;
const track = trip.track!;

// C. F. F. Karney, Algorithms for geodesics, J. Geodesy 87, 2013, by geographiclib-geodesic 2.2.0 (npm).
test.each([0, 1, 2])('the map is true to scale in every direction, from obstacle %i on', (first) => {
  const svg = sheetSvg({
    track,
    segments: slopeOf(track).segments,
    pins: trip.obstacles.map(({ lng, lat }, i) => ({ number: i + 1, lng, lat })),
    reversed: false,
    system: 'metric',
    widthPx: 1400,
    heightPx: 1600,
  });
  const pins = [...svg.matchAll(/class="pin" cx="([-\d.]+)" cy="([-\d.]+)"/g)].map(([, x, y]) => [+x, +y]);
  const bars = [...svg.matchAll(/class="bar[^"]*"[^>]* width="([\d.]+)"/g)].map(([, width]) => Number(width));
  const [, words] = /class="size"[^>]*>([\d.]+) km</.exec(svg)!;
  const metresPerPx = (Number(words) * 1000) / bars.reduce((sum, width) => sum + width, 0);
  const one = trip.obstacles[first];
  trip.obstacles.slice(first + 1).forEach((other, i) => {
    const { s12 } = geodesic.Geodesic.WGS84.Inverse(one.lat, one.lng, other.lat, other.lng);
    const [a, b] = [pins[first], pins[first + 1 + i]];
    const drawnM = Math.hypot(a[0] - b[0], a[1] - b[1]) * metresPerPx;
    // Each place, and each quarter of the bar, is rounded to 0.1 px: 0.15 px and 0.1 % together.
    expect(Math.abs(drawnM - s12!)).toBeLessThan(0.15 * metresPerPx + 0.001 * s12!);
  });
});
