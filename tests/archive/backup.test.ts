import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { backupName, KEPT, overdue } from '../../src/archive/backup.ts';

const HOUR_MS = 3_600_000;
const NOW_MS = Date.UTC(2026, 10, 25, 17, 5, 9);

describe('backups that are kept', () => {
  test('are the last ten, and the last of each of thirty days', () => {
    const hourly = Array.from({ length: 24 * 60 }, (_, i) => NOW_MS - i * HOUR_MS);
    const gone = new Set(overdue(hourly, NOW_MS));
    const kept = hourly.filter((ms) => !gone.has(ms));
    expect(kept.slice(0, 10)).toEqual(hourly.slice(0, 10));
    const days = kept.map((ms) => new Date(ms).toISOString().slice(0, 10));
    expect(new Set(days).size).toBe(KEPT.days);
    // Today has its last ten; every other day its last, at five past eleven at night.
    expect(kept.slice(10).every((ms) => new Date(ms).getUTCHours() === 23)).toBe(true);
    expect(kept).toHaveLength(10 + KEPT.days - 1);
  });

  test('stay however old they are, while there are few', () => {
    const old = [1, 2, 3].map((years) => NOW_MS - years * 365 * 24 * HOUR_MS);
    expect(overdue(old, NOW_MS)).toEqual([]);
  });

  test('always hold the newest, whatever the clock says, and taking away twice takes no more', () => {
    const moments = fc.uniqueArray(fc.integer({ min: 0, max: 4e12 }), { minLength: 1, maxLength: 80 });
    fc.assert(
      fc.property(moments, fc.integer({ min: 0, max: 4e12 }), (all, nowMs) => {
        const gone = overdue(all, nowMs);
        expect(gone).not.toContain(Math.max(...all));
        const rest = all.filter((ms) => !gone.includes(ms));
        expect(rest.length).toBeGreaterThanOrEqual(Math.min(KEPT.last, all.length));
        expect(overdue(rest, nowMs)).toEqual([]);
      }),
      { seed: 12 },
    );
  });
});

test.each([
  ['Ember Range, spring outing', 'Ember Range spring outing [a1b2c3d4] 2026-11-25 17.05.09Z.json'],
  ['../../etc/passwd', 'etc passwd [a1b2c3d4] 2026-11-25 17.05.09Z.json'],
  ['a\u202Egnp.exe\0', 'a gnp exe [a1b2c3d4] 2026-11-25 17.05.09Z.json'],
  ['', 'Rutline [a1b2c3d4] 2026-11-25 17.05.09Z.json'],
])('the backup of %j has a name that every system takes', (name, expected) => {
  expect(backupName({ key: 'a1b2-c3d4', name, ending: 'json' }, NOW_MS)).toBe(expected);
});
