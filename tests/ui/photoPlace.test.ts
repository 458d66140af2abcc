import { describe, expect, test } from 'vitest';
import type { Trip } from '../../src/archive/trip.ts';
import { Points } from '../../src/route/points.ts';
import { presetNamed } from '../../src/terrain/preset.ts';
import { pinObstacle } from '../../src/ui/obstacleEdit.ts';
import { obstacleNear, placeOfPhoto, timeOf } from '../../src/ui/photoPlace.ts';
import type { PhotoTags } from '../../src/ui/photoTags.ts';

const points = new Points();
points.endSegment();
for (let i = 0; i < 20; i++) points.push(7, 45 + i * 0.0005, NaN, 1000 + 30 * i);
const track = points.take('track', '', '');
const TRIP: Trip = {
  id: 't',
  name: '',
  note: '',
  radioChannel: '',
  direction: 'as recorded',
  track,
  waypoints: [],
  obstacles: [],
  heldGrips: [],
  vehicles: [],
};
const NOTHING: PhotoTags = { lng: null, lat: null, clockS: null, zoneS: null, gpsS: null };
const CLOCK = { aheadS: 0, zoneOf: () => 7200 };

function place(tags: Partial<PhotoTags>, trip = TRIP, clock = CLOCK) {
  return placeOfPhoto({ ...NOTHING, ...tags }, trip, clock, 'metric');
}

describe('a photo is placed', () => {
  test('by its position before its time, at the foot on the track', () => {
    const found = place({ lng: 7.0005, lat: 45.002, gpsS: 1000 });
    expect(found).toMatchObject({ by: 'position', pin: { lng: 7 } });
    expect(found.by !== null && found.offM).toBeCloseTo(39.4, 0);
  });

  test('by its time, with the zone it tells, else that of the device, and less what the clock runs ahead', () => {
    const at = (tags: Partial<PhotoTags>, aheadS = 0) => {
      const found = place(tags, TRIP, { ...CLOCK, aheadS });
      return found.by === 'time' ? found.pin.stationM : null;
    };
    const there = track.distanceM[4];
    expect(at({ gpsS: 1120 })).toBeCloseTo(there, 6);
    expect(at({ clockS: 1120 + 3600, zoneS: 3600 })).toBeCloseTo(there, 6);
    expect(at({ clockS: 1120 + 7200 })).toBeCloseTo(there, 6);
    expect(at({ clockS: 1120 + 7200 + 90 }, 90)).toBeCloseTo(there, 6);
    expect(at({ gpsS: 1120 }, 90)).toBeCloseTo(there, 6);
  });

  test('not where it was far from the track, not recorded, or tells nothing, and that is said', () => {
    const why = (tags: Partial<PhotoTags>, trip = TRIP) => {
      const found = place(tags, trip);
      return found.by === null ? found.why : found.by;
    };
    expect(why({ lng: 7.1, lat: 45 })).toContain('7.88 km from the track');
    expect(why({ gpsS: 5000 })).toContain('not being recorded');
    expect(why({})).toContain('neither where nor when');
    expect(why({ gpsS: 1000 }, { ...TRIP, track: null })).toContain('needs a track');
    expect(why({ lng: 7.1, lat: 45 }, { ...TRIP, track: null })).toBe('position');
  });
});

test('a clock that tells its zone comes before the satellites, and those before a clock without', () => {
  const all = { ...NOTHING, clockS: 9000, zoneS: 3600, gpsS: 4000 };
  expect(timeOf(all, CLOCK)).toBe(5400);
  expect(timeOf({ ...all, zoneS: null }, CLOCK)).toBe(4000);
  expect(timeOf({ ...all, zoneS: null, gpsS: null }, CLOCK)).toBe(1800);
  expect(timeOf(NOTHING, CLOCK)).toBeNull();
});

test('a photo near an obstacle is offered to the nearest', () => {
  const ford = presetNamed('ford')!;
  const pin = (lat: number) => ({ lng: 7, lat, stationM: (lat - 45) * 111_000 });
  const { obstacles } = [45, 45.0002].reduce(
    (trip, lat) => pinObstacle(trip, pin(lat), ford, `at${lat}`),
    TRIP,
  );
  expect(obstacleNear(obstacles, pin(45.00015))?.id).toBe('at45.0002');
  expect(obstacleNear(obstacles, pin(45.0006))).toBeNull();
  expect(obstacleNear([], pin(45))).toBeNull();
});
