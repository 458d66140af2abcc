import 'fake-indexeddb/auto';
import { beforeAll, describe, expect, test } from 'vitest';
import { dateOnly } from '../../src/archive/dateOnly.ts';
import type { Visit } from '../../src/archive/gradedTrack.ts';
import * as store from '../../src/archive/gradedStore.ts';
import type { Author } from '../../src/archive/replica.ts';
import type { Trip } from '../../src/archive/trip.ts';
import { engine, TRIP } from './replicas.ts';

beforeAll(engine);

const HOUR_MS = 3_600_000;
const NOON_MS = new Date(2025, 4, 4, 12).getTime();

function by(name: string, atMs: number): Author {
  return { by: name, atMs };
}

/** The trip with its ground so much longer. */
function longer(trip: Trip, lengthM: number): Trip {
  const obstacles = trip.obstacles.map((one) => ({
    ...one,
    stretch: { ...one.stretch, lengthM: one.stretch.lengthM + lengthM },
  }));
  return { ...trip, obstacles };
}

let tracks = 0;

async function filedAt(atMs: number): Promise<string> {
  const id = `track-${tracks++}`;
  await store.file({ ...TRIP, id }, by('Ann', atMs));
  return id;
}

async function takenOut(id: string, tripId: string): Promise<Trip> {
  const convoy = { id: `${id}-${tripId}`, vehicles: TRIP.vehicles, direction: TRIP.direction };
  return (await store.takeOut(id, convoy)).value!;
}

/** The visits of the one obstacle, oldest first, and the length of its ground today. */
async function surveyedOf(id: string): Promise<{ visits: readonly Visit[]; todayM: number }> {
  const [{ obstacle, visits }] = (await store.take(id)).value!.graded.surveyed;
  return { visits, todayM: obstacle.stretch.lengthM };
}

const LENGTH_M = TRIP.obstacles[0].stretch.lengthM;

describe('a second measurement of one day', () => {
  test.each([
    ['at the same moment', NOON_MS, NOON_MS],
    ['filed as of noon, after one of the afternoon', NOON_MS + 2 * HOUR_MS, NOON_MS],
    ['on a day that was published', dateOnly(Date.UTC(2025, 4, 4)), NOON_MS - 3 * HOUR_MS],
  ])('is the later one: %s', async (_, firstMs, secondMs) => {
    for (let i = 0; i < 4; i++) {
      const id = await filedAt(firstMs);
      const trip = longer(await takenOut(id, 'again'), 1);
      await store.file(trip, by('Ben', secondMs));
      const { visits, todayM } = await surveyedOf(id);
      expect(visits.map((visit) => visit.by)).toEqual(['Ann', 'Ben']);
      expect(todayM).toBe(LENGTH_M + 1);
    }
  });

  test('is the later one, though the other came after the trip was taken out', async () => {
    const id = await filedAt(NOON_MS - 24 * HOUR_MS);
    const trip = longer(await takenOut(id, 'slow'), 2);
    await store.file(longer(await takenOut(id, 'quick'), 1), by('Ann', NOON_MS + HOUR_MS));
    await store.file(trip, by('Ben', NOON_MS));
    const { visits, todayM } = await surveyedOf(id);
    expect(visits.map((visit) => visit.by)).toEqual(['Ann', 'Ann', 'Ben']);
    expect(todayM).toBe(LENGTH_M + 2);
  });

  test('is the later one, from a trip of which nobody knows where it began', async () => {
    const id = await filedAt(NOON_MS + HOUR_MS);
    await store.file({ ...longer(TRIP, 3), id: `${id}-stranger` }, by('Ben', NOON_MS), id);
    const { visits, todayM } = await surveyedOf(id);
    expect(visits.map(({ atMs }) => atMs)).toEqual([NOON_MS + HOUR_MS, NOON_MS + HOUR_MS + 60_000]);
    expect(todayM).toBe(LENGTH_M + 3);
  });

  test('of another day stays at its own time', async () => {
    const id = await filedAt(NOON_MS);
    await store.file(longer(await takenOut(id, 'earlier'), 1), by('Ben', NOON_MS - 24 * HOUR_MS));
    const { visits, todayM } = await surveyedOf(id);
    expect(visits.map((visit) => visit.by)).toEqual(['Ben', 'Ann']);
    expect(todayM).toBe(LENGTH_M);
  });
});

test.each([0, 24])(
  'filed again as it was, a trip adds no visit, though dated %i hours back',
  async (hours) => {
    const id = await filedAt(NOON_MS);
    const trip = longer(await takenOut(id, 'again'), 1);
    const ben = by('Ben', NOON_MS - hours * HOUR_MS);
    expect((await store.file(trip, ben)).value?.newVisits).toBe(1);
    for (let i = 0; i < 2; i++) expect((await store.file(trip, ben)).value?.newVisits).toBe(0);
    expect((await surveyedOf(id)).visits).toHaveLength(2);
  },
);
