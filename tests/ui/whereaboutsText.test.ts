import { expect, test } from 'vitest';
import type { Known } from '../../src/ui/whereaboutsText.ts';
import { saidOf, whereaboutsText } from '../../src/ui/whereaboutsText.ts';
import { northward, trackOf } from '../route/recorded.ts';

const track = trackOf(northward([0, 2000], () => NaN));
const EAST_45 = 78_846.8; // metres to a degree of longitude at 45 degrees, WGS 84
const NORTH_45 = 111_131.8;

function knownAt(eastM: number, northM: number, other: Partial<Known> = {}): Known {
  const here = { lng: 10 + eastM / EAST_45, lat: 45 + northM / NORTH_45, accuracyM: 4.2, isOld: false };
  return { wanted: true, here, ageMs: 0, hindrance: null, ...other };
}

const unknown: Known = { wanted: true, here: null, ageMs: 0, hindrance: null };

test('a place is told by the track, with what it is known to, rounded to the safe side', () => {
  expect(whereaboutsText(knownAt(-12, 750), track, 'metric')).toBe(
    'You are 12 m from the track, 0.75 km along it, to within 5 m.',
  );
  expect(whereaboutsText(knownAt(2400, 750), track, 'metric')).toMatch(/^You are 2\.40 km from the track/);
  expect(whereaboutsText(knownAt(0, 0), null, 'metric')).toBe(
    'You are at 45.00000°, 10.00000°, to within 5 m.',
  );
});

test('what is old is not told as where one is', () => {
  const fresh = knownAt(0, 750);
  const old = { ...fresh, here: fresh.here && { ...fresh.here, isOld: true } };
  expect(whereaboutsText({ ...old, ageMs: 45_000 }, track, 'metric')).toBe(
    '45 seconds ago you were 0 m from the track, 0.75 km along it, to within 5 m. Where you are now is not known.',
  );
  expect(whereaboutsText({ ...old, ageMs: 119_000 }, track, 'metric')).toMatch(/^1 minute ago you were/);
});

test('what is not known says why, and nothing is said while nothing is wanted', () => {
  const told = (known: Partial<Known>) => whereaboutsText({ ...unknown, ...known }, track, 'metric');
  expect(told({ wanted: false })).toBe('');
  expect(told({})).toBe('Looking for your place …');
  expect(told({ wanted: false, hindrance: 'refused' })).toMatch(/may not know it/);
  expect(told({ wanted: false, hindrance: 'no receiver' })).toMatch(/does not tell places/);
  expect(told({ hindrance: 'too long' })).toMatch(/not known just now .*half a minute/);
  expect(whereaboutsText(knownAt(0, 750, { hindrance: 'not told' }), track, 'metric')).toMatch(
    /along it.*not known just now/,
  );
});

test('a screen reader hears at once that it is found, old or lost, and a new place only now and then', () => {
  const at = (northM: number) => knownAt(0, northM);
  const heard: string[] = [];
  let said = { text: '', kind: '', atMs: 0 };
  const hear = (known: Known, text: string, nowMs: number) => {
    const next = saidOf(said, known, text, nowMs);
    if (next !== said) heard.push(text);
    said = next;
  };
  hear(unknown, 'looking', 0);
  hear(at(0), 'found', 2000);
  hear(at(2), 'two on', 4000);
  hear(at(9), 'nine on', 21_000);
  hear(at(11), 'eleven on', 22_000);
  const here = { lng: 10, lat: 45, accuracyM: 4, isOld: true };
  hear({ ...unknown, here }, 'old', 60_000);
  hear({ ...unknown, here }, 'older', 90_000);
  expect(heard).toEqual(['looking', 'found', 'eleven on', 'old']);
});
