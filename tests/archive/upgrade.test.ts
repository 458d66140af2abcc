import { readFileSync, readdirSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { readTrip } from '../../src/archive/share.ts';
import type { Upgrade } from '../../src/archive/upgrade.ts';
import { TRIP_VERSION, UPGRADES, upgraded } from '../../src/archive/upgrade.ts';

describe('steps from version to version', () => {
  const note: Upgrade = (trip) => ({ ...trip, note: `${String(trip.note)}, now 2` });
  const rename: Upgrade = ({ note, ...trip }) => ({ ...trip, remark: note });

  test('are taken from the version of the file on, in order', () => {
    expect(upgraded({ note: 'was 1' }, 1, [note, rename])).toEqual({ remark: 'was 1, now 2' });
    expect(upgraded({ note: 'was 2' }, 2, [note, rename])).toEqual({ remark: 'was 2' });
    expect(upgraded({ remark: 'is 3' }, 3, [note, rename])).toEqual({ remark: 'is 3' });
  });

  test('lead to the version that is written now', () => {
    expect(TRIP_VERSION).toBe(UPGRADES.length + 1);
  });
});

describe('a trip file of each day', () => {
  const files = readdirSync(new URL('in/', import.meta.url)).filter((name) =>
    /^version-\d+\.json$/.test(name),
  );

  test('is kept, one a version', () => {
    const versions = Array.from({ length: TRIP_VERSION }, (_, i) => `version-${i + 1}.json`);
    expect(files.sort()).toEqual(versions.sort());
  });

  test.each(files)('%s still opens without a word', (name) => {
    const { value, problems } = readTrip(readFileSync(new URL(`in/${name}`, import.meta.url), 'utf8'));
    expect(problems).toEqual([]);
    expect(value?.obstacles.length).toBeGreaterThan(0);
    expect(value?.vehicles.length).toBeGreaterThan(0);
    expect(value?.track?.length).toBeGreaterThan(1);
  });
});
