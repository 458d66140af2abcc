import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { whereabouts } from '../../src/ui/whereabouts.svelte.ts';

type Found = (position: { coords: object; timestamp: number }) => void;
type Failed = (fault: { code: number; PERMISSION_DENIED: 1; TIMEOUT: 3 }) => void;

/** What watches the receiver, by its number. */
const watches = new Map<number, { found: Found; failed: Failed; options: PositionOptions }>();

function find(lat: number): void {
  const coords = { longitude: 10, latitude: lat, accuracy: 4 };
  for (const { found } of watches.values()) found({ coords, timestamp: Date.now() });
}

function fail(code: number): void {
  for (const { failed } of watches.values()) failed({ code, PERMISSION_DENIED: 1, TIMEOUT: 3 });
}

beforeEach(() => {
  vi.useFakeTimers();
  watches.clear();
  let next = 1;
  vi.stubGlobal('navigator', {
    geolocation: {
      watchPosition: (found: Found, failed: Failed, options: PositionOptions) => {
        watches.set(next, { found, failed, options });
        return next++;
      },
      clearWatch: (watch: number) => watches.delete(watch),
    },
  });
});
afterEach(() => {
  whereabouts.off();
  vi.unstubAllGlobals();
  vi.useRealTimers();
});

test('the receiver is watched from the press on, once and exactly, until it is pressed again', () => {
  expect(watches.size).toBe(0);
  whereabouts.on();
  whereabouts.on();
  expect([...watches.values()].map(({ options }) => options.enableHighAccuracy)).toEqual([true]);
  find(45);
  expect(whereabouts.here).toEqual({ lng: 10, lat: 45, accuracyM: 4, isOld: false });
  whereabouts.off();
  expect(watches.size).toBe(0);
  expect(vi.getTimerCount()).toBe(0);
  expect(whereabouts.here).toBeNull();
});

test('a hidden page leaves the receiver alone, and forgets the place; seen again it looks anew if it is wanted', () => {
  whereabouts.on();
  find(45);
  whereabouts.seen(false);
  expect([watches.size, whereabouts.here, vi.getTimerCount()]).toEqual([0, null, 0]);
  whereabouts.seen(true);
  expect(watches.size).toBe(1);
  whereabouts.off();
  whereabouts.seen(true);
  expect(watches.size).toBe(0);
});

test('a place grows old, until the next', () => {
  whereabouts.on();
  find(45);
  vi.advanceTimersByTime(29_000);
  expect(whereabouts.here?.isOld).toBe(false);
  vi.advanceTimersByTime(6000);
  expect(whereabouts.here?.isOld).toBe(true);
  find(46);
  expect(whereabouts.here).toMatchObject({ lat: 46, isOld: false });
});

test('what is refused ends it; what is not found is looked for further', () => {
  whereabouts.on();
  fail(3);
  expect([whereabouts.wanted, whereabouts.hindrance, watches.size]).toEqual([true, 'too long', 1]);
  fail(2);
  expect([whereabouts.hindrance, watches.size]).toEqual(['not told', 1]);
  find(45);
  expect(whereabouts.hindrance).toBeNull();
  fail(1);
  expect([whereabouts.wanted, whereabouts.hindrance, watches.size]).toEqual([false, 'refused', 0]);
  expect(whereabouts.here).toBeNull();

  vi.stubGlobal('navigator', {});
  whereabouts.on();
  expect([whereabouts.wanted, whereabouts.hindrance]).toEqual([false, 'no receiver']);
});
