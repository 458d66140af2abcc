import { readFileSync } from 'node:fs';
import { beforeEach, expect, test } from 'vitest';
import { readTrip } from '../../src/archive/share.ts';
import {
  clearLeftover,
  clearOwn,
  joined,
  leaveBehind,
  leftovers,
  sameButTrack,
} from '../../src/ui/leftover.ts';

const trip = readTrip(readFileSync('tests/archive/in/version-2.json', 'utf8')).value!;

beforeEach(() => {
  const kept = new Map<string, string>();
  Object.assign(globalThis, {
    localStorage: {
      getItem: (key: string) => kept.get(key) ?? null,
      setItem: (key: string, text: string) => kept.set(key, text),
      removeItem: (key: string) => kept.delete(key),
      key: (i: number) => [...kept.keys()][i] ?? null,
      get length() {
        return kept.size;
      },
    },
  });
});

test('what is left behind holds neither track nor images, and gets both from what is stored', () => {
  leaveBehind(trip, true, [], 5);
  const [left] = leftovers();
  expect(localStorage.getItem(left.key)).not.toContain('iVBORw0KGgo');
  expect(left.trip.track).toBeNull();
  const { whole, lost } = joined(left, trip);
  expect(lost).toBe(0);
  expect(whole).toEqual(trip);
  expect(sameButTrack(whole, trip)).toBe(true);
});

test('a photo that was not stored is counted as lost', () => {
  leaveBehind(trip, true, [], 5);
  const { whole, lost } = joined(leftovers()[0], null);
  expect(lost).toBe(1);
  expect(whole.obstacles[0].photos).toEqual([]);
});

test('two windows leave their trips behind beside each other, and what cannot be read hides none', () => {
  leaveBehind({ ...trip, id: 'theirs' }, true, [], 9);
  localStorage.setItem('rutline.leftover/torn', '{"atMs":');
  leaveBehind(trip, true, [], 5);
  expect(leftovers().map((left) => left.trip.id)).toEqual([trip.id, 'theirs']);
  clearOwn(trip.id);
  const [theirs, ...others] = leftovers();
  expect([theirs.trip.id, others]).toEqual(['theirs', []]);
  clearLeftover(theirs);
  expect(leftovers()).toEqual([]);
});

test('another caption is another trip', () => {
  const [first, ...rest] = trip.obstacles;
  const photos = first.photos.map((photo) => ({ ...photo, caption: 'from above' }));
  const other = { ...trip, obstacles: [{ ...first, photos }, ...rest] };
  expect(sameButTrack(other, trip)).toBe(false);
});
