import { expect, test } from 'vitest';
import { agesOf, isStaleAt } from '../../src/archive/ages.ts';
import { ARCHIVE_LIMITS } from '../../src/archive/limits.ts';
import { ANN, wholeTrack } from './replicas.ts';

test('an obstacle is as old as its newest visit, and stale after the stated time', () => {
  const graded = wholeTrack();
  const [one] = graded.surveyed;
  const newer = { ...one.visits[0], id: 'v1', atMs: ANN.atMs + 5000, by: 'Ben' };
  const track = { ...graded, surveyed: [{ ...one, visits: [...one.visits, newer] }] };
  const due = newer.atMs + ARCHIVE_LIMITS.staleMs;
  const [age] = agesOf(track, due);
  expect(age).toEqual({
    obstacleId: 'o1',
    atMs: newer.atMs,
    by: 'Ben',
    ageMs: ARCHIVE_LIMITS.staleMs,
    isStale: false,
  });
  expect(agesOf(track, due + 1)[0].isStale).toBe(true);
});

test('a visit of the future is no measurement of today, but for clocks that are a little ahead', () => {
  expect(isStaleAt(ANN.atMs + 3_600_000, ANN.atMs)).toBe(false);
  expect(isStaleAt(ANN.atMs + 3 * 86_400_000, ANN.atMs)).toBe(true);
});
