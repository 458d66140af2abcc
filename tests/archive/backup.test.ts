import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { BackupFile } from '../../src/archive/backup.ts';
import { backupName, backupsIn, backUp, KEPT, overdue } from '../../src/archive/backup.ts';

const HOUR_MS = 3_600_000;
const NOW_MS = Date.UTC(2026, 10, 25, 17, 5, 9);

function written(momentsMs: readonly number[]): BackupFile[] {
  return momentsMs.map((atMs, i) => ({ name: String(i), of: '', atMs }));
}

describe('backups that are kept', () => {
  test('are the last ten, and the last of each of thirty days', () => {
    const hourly = Array.from({ length: 24 * 60 }, (_, i) => NOW_MS - i * HOUR_MS);
    const gone = new Set(overdue(written(hourly), NOW_MS).map(({ atMs }) => atMs));
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
    expect(overdue(written(old), NOW_MS)).toEqual([]);
  });

  test('always hold the newest, whatever the clock says, and taking away twice takes no more', () => {
    const moments = fc.array(fc.integer({ min: 0, max: 4e12 }), { minLength: 1, maxLength: 80 });
    fc.assert(
      fc.property(moments, fc.integer({ min: 0, max: 4e12 }), (momentsMs, nowMs) => {
        const all = written(momentsMs);
        const gone = overdue(all, nowMs);
        const rest = all.filter((file) => !gone.includes(file));
        expect(Math.max(...rest.map(({ atMs }) => atMs))).toBe(Math.max(...momentsMs));
        expect(rest.length).toBeGreaterThanOrEqual(Math.min(KEPT.last, all.length));
        expect(overdue(rest, nowMs)).toEqual([]);
      }),
      { seed: 12 },
    );
  });
});

/** A folder that can do what backups ask of one, in memory. */
function folderOf(files: Map<string, Blob>, room = Infinity): FileSystemDirectoryHandle {
  const fileHandle = (name: string) => ({
    createWritable: () =>
      Promise.resolve({
        write: (blob: Blob) => Promise.resolve(void files.set(name, blob.slice(0, room))),
        close: () => Promise.resolve(),
      }),
    getFile: () => Promise.resolve(files.get(name)),
    move: (to: string) => {
      files.set(to, files.get(name)!);
      files.delete(name);
      return Promise.resolve();
    },
  });
  return {
    name: 'Club',
    keys: async function* () {
      yield* await Promise.resolve([...files.keys()]);
    },
    getFileHandle: (name: string) => Promise.resolve(fileHandle(name)),
    removeEntry: (name: string) => Promise.resolve(void files.delete(name)),
  } as unknown as FileSystemDirectoryHandle;
}

test('backups of one moment stand beside each other, each thing has its own ten, and nothing else is touched', async () => {
  const files = new Map([['letter to the council.txt', new Blob(['Dear council'])]]);
  const folder = folderOf(files);
  const keys = ['spring-outing-2025', 'spring-outing-2026', 'archive'];
  for (let n = 0; n < 14; n++)
    for (const key of keys) {
      const backup = {
        key,
        name: n < 3 ? `Outing ${n}` : 'Outing',
        ending: 'rutline-tracks',
        content: `${key} ${n}`,
      };
      expect((await backUp(folder, backup, NOW_MS + (n < 7 ? 0 : 300))).problems).toEqual([]);
    }
  const whole = await backupsIn(folder);
  const texts = await Promise.all(whole.map(({ name }) => files.get(name)!.text()));
  const last = keys.flatMap((key) => Array.from({ length: KEPT.last }, (_, i) => `${key} ${i + 4}`));
  expect(texts.sort()).toEqual(last.sort());
  expect(files.size).toBe(whole.length + 1);
});

test('a backup of which less came to lie in the folder is none: it is said, and those before it stay', async () => {
  const files = new Map<string, Blob>();
  const backup = { key: 'a', name: 'Outing', ending: 'json', content: 'x'.repeat(100) };
  const { value: first } = await backUp(folderOf(files), backup, NOW_MS);
  const short = await backUp(folderOf(files, 99), { ...backup, content: 'y'.repeat(100) }, NOW_MS + 1000);
  expect(short.value).toBeNull();
  expect(short.problems).toMatchObject([
    { severity: 'error', what: expect.stringContaining('99 of 100') as string },
  ]);
  expect([...files.keys()]).toEqual([first]);
});

test('an old one that another window has rolled away meanwhile is no fault, and a folder that is gone is one', async () => {
  const gone = () => Promise.reject(new DOMException('An entry was not found.', 'NotFoundError'));
  const files = new Map<string, Blob>();
  const backup = { key: 'a', name: 'Outing', ending: 'json', content: 'x' };
  for (let n = 0; n < KEPT.last; n++) await backUp(folderOf(files), backup, NOW_MS + n);
  const rolled = Object.assign(folderOf(files), { removeEntry: gone });
  expect((await backUp(rolled, backup, NOW_MS + 99)).problems).toEqual([]);
  const missing = Object.assign(folderOf(files), { getFileHandle: gone });
  const { value, problems } = await backUp(missing, backup, NOW_MS + 100);
  expect(value).toBeNull();
  expect(problems).toMatchObject([{ where: 'Club', what: 'it is not there any more' }]);
});

test('a backup in the folder tells what it is of, and when', async () => {
  const files = new Map<string, Blob>();
  await backUp(folderOf(files), { key: 'a', name: 'Ember Range [2]', ending: 'json', content: 'x' }, NOW_MS);
  expect(await backupsIn(folderOf(files))).toMatchObject([{ of: 'Ember Range 2', atMs: NOW_MS }]);
});

test.each([
  ['Ember Range, spring outing', 'Ember Range spring outing [KEY] 2026-11-25 17.05.09.000Z.json'],
  ['../../etc/passwd', 'etc passwd [KEY] 2026-11-25 17.05.09.000Z.json'],
  ['a\u202Egnp.exe\0', 'a gnp exe [KEY] 2026-11-25 17.05.09.000Z.json'],
  ['', 'Rutline [KEY] 2026-11-25 17.05.09.000Z.json'],
])('the backup of %j has a name that every system takes', (name, expected) => {
  const given = backupName({ key: 'a1b2-c3d4', name, ending: 'json' }, NOW_MS);
  expect(given.replace(/\[a1b2c3d4[0-9a-f]{8}\]/, '[KEY]')).toBe(expected);
});
