import { expect, test } from 'vitest';
import { momentAt } from '../../src/route/moment.ts';
import { Points } from '../../src/route/points.ts';

/** Two recorded parts northward, some 111 m from point to point; the third point has no time. */
function recording() {
  const points = new Points();
  points.endSegment();
  [0, 10, NaN, 40].forEach((timeS, i) => points.push(7, 45 + i * 0.001, NaN, timeS));
  points.endSegment();
  [100, 110].forEach((timeS, i) => points.push(7, 45.01 + i * 0.001, NaN, timeS));
  return points.take('track', '', '');
}

const track = recording();
const d = track.distanceM;

test('a time between two points is a place between them, straight', () => {
  expect(momentAt(track, 0)).toEqual({ stationM: 0, withinM: 0 });
  const moment = momentAt(track, 4)!;
  expect(moment.stationM).toBeCloseTo(0.4 * d[1], 9);
  expect(moment.withinM).toBeCloseTo(d[1], 9);
  expect(momentAt(track, 110)!.stationM).toBe(d[5]);
});

test('points without a time are passed over, and the place is known that much worse', () => {
  const moment = momentAt(track, 25)!;
  expect(moment.stationM).toBeCloseTo((d[1] + d[3]) / 2, 9);
  expect(moment.withinM).toBeCloseTo(d[3] - d[1], 9);
});

test('before, after and in a gap there is no place', () => {
  expect([-1, 41, 99, 111].map((timeS) => momentAt(track, timeS))).toEqual([null, null, null, null]);
});
