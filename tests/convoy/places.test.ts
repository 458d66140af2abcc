import { expect, test } from 'vitest';
import { placesOn } from '../../src/convoy/places.ts';
import { Points } from '../../src/route/points.ts';
import { presetNamed, stretchFrom } from '../../src/terrain/preset.ts';
import type { Obstacle } from '../../src/terrain/obstacle.ts';

const ledge: Obstacle = {
  id: 'a',
  name: 'Step',
  preset: 'ledge',
  lng: 0,
  lat: 45.002,
  stationM: 222,
  stretch: stretchFrom(presetNamed('ledge')!),
  lines: [{ id: 'main', kind: 'main', name: 'main line', offsetM: 0 }],
  note: '',
  photos: [],
};

/** Due north from 45° for 500 m, one in ten up, where elevations are known. */
function climb(known: boolean) {
  const points = new Points();
  for (let i = 0; i <= 50; i++) points.push(0, 45 + i * 9e-5, known ? 100 + i : NaN, NaN);
  return points.take('track', 'climb', '');
}

test('an obstacle is given the slope of the track at its station', () => {
  const [{ obstacle, trackSlope }] = placesOn(climb(true), [ledge]);
  expect(obstacle).toBe(ledge);
  expect(Math.tan(trackSlope!.slopeRad)).toBeCloseTo(0.1, 3);
  expect(trackSlope!.plusMinusRad).toBeGreaterThan(0);
});

test('none where there is no track, no elevation, or no track that far', () => {
  expect(placesOn(null, [ledge])[0].trackSlope).toBeNull();
  expect(placesOn(climb(false), [ledge])[0].trackSlope).toBeNull();
  expect(placesOn(climb(true), [{ ...ledge, stationM: 9000 }])[0].trackSlope).toBeNull();
});
