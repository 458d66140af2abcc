import { expect, test } from 'vitest';
import type { Trip } from '../../src/archive/trip.ts';
import { checkObstacle } from '../../src/terrain/check.ts';
import { PRESETS, presetNamed } from '../../src/terrain/preset.ts';
import {
  addBypass,
  addOffset,
  changeObstacle,
  freeName,
  pinObstacle,
  pinOnward,
  removeLine,
  removeObstacle,
  withStretch,
} from '../../src/ui/obstacleEdit.ts';

const EMPTY: Trip = {
  id: 't',
  name: '',
  note: '',
  radioChannel: '',
  direction: 'as recorded',
  track: null,
  waypoints: [],
  obstacles: [],
  heldGrips: [],
  vehicles: [],
};
const ford = presetNamed('ford')!;
const pinned = [300, 100, 200].reduce(
  (trip, stationM) => pinObstacle(trip, { lng: 7, lat: 45, stationM }, ford, `at${stationM}`),
  EMPTY,
);
const [first] = pinned.obstacles;

test('obstacles stand in the order of the track, however they were pinned', () => {
  expect(pinned.obstacles.map(({ id }) => id)).toEqual(['at100', 'at200', 'at300']);
  const moved = changeObstacle(pinned, 'at100', (obstacle) => ({ ...obstacle, stationM: 250 }));
  expect(moved.obstacles.map(({ id }) => id)).toEqual(['at200', 'at100', 'at300']);
  expect(removeObstacle(moved, 'at100').obstacles).toHaveLength(2);
});

test.each(PRESETS)(
  '$name, just pinned, has a main line, no measured slope, and nothing that counts as taped',
  (preset) => {
    const [obstacle] = pinObstacle(EMPTY, { lng: 7, lat: 45, stationM: 0 }, preset, 'x').obstacles;
    expect(obstacle.lines.map(({ kind }) => kind)).toEqual(['main']);
    expect(obstacle.stretch.plane.slopeRad).toBeNull();
    expect(Object.values(obstacle.stretch.hows).filter((how) => how !== 'by eye')).toEqual([]);
    expect(checkObstacle(obstacle, 'x')).toEqual([]);
  },
);

test('without a track, obstacles stand in the order of pinning, each as far on as it lies from the one before', () => {
  const places = [
    { lng: 7, lat: 45 },
    { lng: 7, lat: 45.001 },
    { lng: 7, lat: 45.0005 },
    { lng: 7, lat: 45.0005 },
  ];
  const trip = places.reduce(
    (before, { lng, lat }, i) => pinObstacle(before, pinOnward(before.obstacles, lng, lat), ford, `pin${i}`),
    EMPTY,
  );
  expect(trip.obstacles.map(({ id }) => id)).toEqual(['pin0', 'pin1', 'pin2', 'pin3']);
  // 0.001° of latitude at 45° is 111.13 m (WGS 84, meridian radius of curvature).
  const stations = trip.obstacles.map(({ stationM }) => stationM);
  expect(stations[0]).toBe(0);
  expect(stations[1]).toBeCloseTo(111.13, 1);
  expect(stations[2]).toBeCloseTo(166.7, 1);
  expect(stations[3]).toBe(stations[2]);
});

test('lines are added with names of their own; the main line cannot be removed', () => {
  const more = addBypass(addOffset(addOffset(first, 'o1'), 'o2'), 'b');
  expect(more.lines.map(({ name }) => name)).toEqual(['Main line', 'Offset line', 'Offset line 2', 'Bypass']);
  expect(removeLine(more, 'o1').lines).toHaveLength(3);
  expect(removeLine(more, more.lines[0].id).lines).toHaveLength(4);
});

test('a bypass starts with nothing known of its slope and camber', () => {
  const bypass = addBypass(first, 'b').lines[1];
  expect(bypass.kind === 'bypass' && bypass.stretch.plane).toEqual({ slopeRad: null, camberRad: null });
});

test('the ground of a bypass changes without that of the obstacle', () => {
  const two = addBypass(first, 'b');
  const longer = withStretch(two, 'b', { ...first.stretch, lengthM: 33 });
  expect(longer.stretch).toBe(first.stretch);
  expect(longer.lines[1]).toMatchObject({ stretch: { lengthM: 33 } });
});

test('a name that is taken gets the next free number', () => {
  expect(freeName('Ford', ['Ledge'])).toBe('Ford');
  expect(freeName('Ford', ['Ford', 'Ford 2', 'Ford 4'])).toBe('Ford 3');
});
