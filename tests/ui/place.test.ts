import { expect, test } from 'vitest';
import type { Place } from '../../src/ui/place.ts';
import { addressOf, placeOf, SCOUT } from '../../src/ui/place.ts';

const PLACES: readonly Place[] = [
  { desk: 'scout', sheet: 'track' },
  { desk: 'scout', sheet: 'obstacles', obstacleId: null },
  { desk: 'scout', sheet: 'obstacles', obstacleId: 'a/b c#?%' },
  { desk: 'scout', sheet: 'convoy', vehicleId: null },
  { desk: 'scout', sheet: 'convoy', vehicleId: 'ü' },
  { desk: 'brief', cell: null },
  { desk: 'brief', cell: { obstacleId: 'x', vehicleId: 'y/z' } },
  { desk: 'archive', part: 'trips' },
  { desk: 'archive', part: 'agreement' },
  { desk: 'archive', part: 'tracks', trackId: null, obstacleId: null },
  { desk: 'archive', part: 'tracks', trackId: 'a/b', obstacleId: null },
  { desk: 'archive', part: 'tracks', trackId: 'a', obstacleId: 'c d' },
  { desk: 'archive', part: 'published', trackId: null, obstacleId: null },
  { desk: 'archive', part: 'published', trackId: 'a/b', obstacleId: 'c d' },
  { desk: 'outcomes', obstacleId: null },
  { desk: 'outcomes', obstacleId: 'x' },
];

test.each(PLACES)('a place is found again by its address: %o', (place) => {
  expect(placeOf(addressOf(place))).toEqual(place);
});

test('an address that names no place is the Scout desk', () => {
  for (const address of ['', '#', '#/', '#/elsewhere', '#/%E0%A4%A']) expect(placeOf(address)).toEqual(SCOUT);
});

test('half a cell is the whole matrix', () => {
  expect(placeOf('#/brief/x')).toEqual({ desk: 'brief', cell: null });
});
