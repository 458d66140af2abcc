import { readFileSync } from 'node:fs';
import { unzipSync } from 'fflate';
import type { Browser, Page } from 'playwright-core';
import { beforeAll, describe, expect, inject, test } from 'vitest';
import { copiesToBytes } from '../../src/archive/exchange.ts';
import { firstFiled } from '../../src/archive/gradedReplica.ts';
import { replicaToBytes } from '../../src/archive/replica.ts';
import { readZip } from '../../src/archive/folder/zip.ts';
import { tripToJson } from '../../src/archive/share.ts';
import type { Trip } from '../../src/archive/trip.ts';
import { ANN, engine, TRIP, wholeTrack } from '../archive/replicas.ts';
import { addVehicle, findings, launch, sitDown } from './desk.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});

/** An Archive desk with a trip of one's own, stored. */
async function atArchive(prepare?: () => void, quotaSize?: number) {
  const desk = await sitDown(browser, `${inject('url')}manifest.webmanifest`);
  if (quotaSize !== undefined) await giveRoom(desk.page, quotaSize);
  if (prepare) await desk.page.addInitScript(prepare);
  await desk.page.goto(`${inject('url')}#/archive`);
  await desk.page.getByRole('button', { name: 'New trip' }).click();
  await rename(desk.page, 'Ford survey');
  return desk;
}

async function rename(page: Page, name: string): Promise<void> {
  await page.getByLabel('Trip name').fill(name);
}

async function stored(page: Page): Promise<void> {
  await expect.poll(() => page.locator('.keeping').textContent()).toMatch(/^\s*stored\s*$/);
}

/** A graded track as another leader gives it on. */
async function copyOf(name: string) {
  await engine();
  const copies = copiesToBytes([replicaToBytes(firstFiled({ ...wholeTrack(), name }, ANN))]);
  return { name: 'club.rutline-tracks', mimeType: '', buffer: Buffer.from(copies) };
}

/** It comes into the archive. */
async function takeIn(page: Page, name: string): Promise<void> {
  await page
    .locator('input[type=file]')
    .first()
    .setInputFiles(await copyOf(name));
  await page.getByText('1 track merged into the archive').waitFor();
}

/** Runs in the page: the history of every graded track becomes what nobody can read. */
function damageHistories(): Promise<void> {
  return new Promise((resolve) => {
    const opening = indexedDB.open('rutline');
    opening.onsuccess = () => {
      const work = opening.result.transaction('replicas', 'readwrite');
      const histories = work.objectStore('replicas');
      histories.getAllKeys().onsuccess = ({ target }) => {
        for (const key of (target as IDBRequest<IDBValidKey[]>).result)
          histories.put(new Uint8Array([1, 2, 3]), key);
      };
      work.oncomplete = () => {
        opening.result.close();
        resolve();
      };
    };
  });
}

/** Every byte of the histories of all graded tracks, piece by piece. */
function histories(page: Page): Promise<number[][]> {
  return page.evaluate(
    () =>
      new Promise((resolve) => {
        const opening = indexedDB.open('rutline');
        opening.onsuccess = () => {
          const asked = opening.result.transaction('replicas').objectStore('replicas').getAll();
          asked.onsuccess = () => {
            opening.result.close();
            resolve((asked.result as Uint8Array[]).map((piece) => [...piece]));
          };
        };
      }),
  );
}

async function openTrack(page: Page, name: string): Promise<void> {
  await page.getByRole('link', { name: new RegExp(`^${name}`) }).click();
}

async function archive(page: Page): Promise<void> {
  await page.getByRole('link', { name: 'Archive', exact: true }).click();
}

/** How many bytes the device has; without a number, as many as it really has. */
async function giveRoom(page: Page, quotaSize?: number): Promise<void> {
  const session = await page.context().newCDPSession(page);
  const { origin } = new URL(inject('url'));
  const size = quotaSize === undefined ? {} : { quotaSize };
  await session.send('Storage.overrideQuotaForOrigin', { origin, ...size });
}

/** Changes the stored record of the trip of that name, behind the program's back. */
function tamper(page: Page, name: string, change: Record<string, unknown>): Promise<void> {
  return page.evaluate(
    ({ name, change }) =>
      new Promise<void>((resolve) => {
        const opening = indexedDB.open('rutline');
        opening.onsuccess = () => {
          const shelf = opening.result.transaction('trips', 'readwrite').objectStore('trips');
          const walk = shelf.openCursor();
          walk.onsuccess = () => {
            const at = walk.result;
            if (at === null) return resolve(opening.result.close());
            const filed = at.value as { record: Record<string, unknown> };
            if (filed.record.name === name) at.update({ ...filed, record: { ...filed.record, ...change } });
            at.continue();
          };
        };
      }),
    { name, change },
  );
}

/** The file of the trip 'Ford survey', as the Archive gives it. */
function savedAsFile(page: Page): Promise<string> {
  return download(page, async () => {
    await archive(page);
    await page.getByRole('button', { name: /^Save as file.*Ford survey$/ }).click();
  });
}

async function openText(page: Page, text: string): Promise<void> {
  await page
    .locator('input[type=file]')
    .first()
    .setInputFiles({ name: 'trip.json', mimeType: 'application/json', buffer: Buffer.from(text) });
}

async function download(page: Page, press: () => Promise<unknown>): Promise<string> {
  const downloading = page.waitForEvent('download');
  await press();
  return readFileSync(await (await downloading).path(), 'utf8');
}

describe('what is stored is not lost in silence', () => {
  test('where it is damaged or of a newer version it is left alone, said, and given as a file', async () => {
    const { context, page } = await atArchive();
    await stored(page);
    await tamper(page, 'Ford survey', { format: 'eaten', note: 'walk the ford' });
    await page.reload();
    await page.getByText('The stored trip is damaged and cannot be read.').waitFor();
    await archive(page);
    const save = () => page.getByRole('button', { name: /^Save as file.*Ford survey$/ }).click();
    expect(await download(page, save)).toContain('walk the ford');
    await tamper(page, 'Ford survey', { format: 'rutline-trip', version: 99 });
    await page.reload();
    await page.getByText('A newer Rutline stored this.').waitFor();
    await archive(page);
    expect(JSON.parse(await download(page, save))).toMatchObject({ version: 99, note: 'walk the ford' });
    await context.close();
  });

  test('where the browser cleared it, that is said', async () => {
    const { context, page } = await atArchive();
    await stored(page);
    await page.evaluate(
      () =>
        new Promise((resolve) => {
          indexedDB.deleteDatabase('rutline').onsuccess = resolve;
        }),
    );
    await page.reload();
    await page.getByText('The trips that were stored here are gone').waitFor();
    await context.close();
  });

  test('where the device is full, the trip is given as a file, and stored once there is room', async () => {
    const { context, page } = await atArchive(undefined, 600_000);
    await stored(page);
    await page.getByLabel('Trip name').evaluate((box: HTMLInputElement) => {
      box.value = `Ford survey, ${'second day '.repeat(60_000)}`;
      box.dispatchEvent(new Event('input', { bubbles: true }));
    });
    const alert = page.getByRole('alert').filter({ hasText: 'This trip is not stored.' });
    await alert.getByText('The device has no room left.').waitFor();
    const file = await download(page, () => alert.getByRole('button', { name: 'Save it as a file' }).click());
    expect(JSON.parse(file)).toMatchObject({ name: expect.stringMatching('second day') as string });
    await giveRoom(page);
    await alert.getByRole('button', { name: 'Try again' }).click();
    await stored(page);
    await context.close();
  });

  test('where the browser keeps nothing, that is said and the trip is given as a file', async () => {
    const { context, page } = await atArchive(() => {
      const refuse = () => {
        throw new DOMException('blocked', 'SecurityError');
      };
      IDBFactory.prototype.open = refuse;
      Object.defineProperty(globalThis, 'localStorage', { get: refuse });
    });
    const alert = page.getByRole('alert').filter({ hasText: 'This trip is not stored.' });
    await alert.getByText('This browser keeps nothing for Rutline').waitFor();
    const save = () => alert.getByRole('button', { name: 'Save it as a file' }).click();
    expect(JSON.parse(await download(page, save))).toMatchObject({ format: 'rutline-trip' });
    await context.close();
  });

  test('where the store does not answer, the page says so instead of staying empty, and the next one has it all', async () => {
    const { context, page } = await atArchive(() => {
      const asked = Reflect.get(IDBFactory.prototype, 'open') as (...given: unknown[]) => IDBOpenDBRequest;
      IDBFactory.prototype.open = function (...given) {
        const request = asked.apply(this, given);
        if (sessionStorage.getItem('silent') !== null) request.addEventListener = () => undefined;
        return request;
      };
    });
    await stored(page);
    await page.evaluate(() => {
      sessionStorage.setItem('silent', 'yes');
      localStorage.setItem(
        'rutline.leftover/own',
        JSON.stringify({
          atMs: 1,
          text: '{"format":"rutline-trip","version":2,"id":"own","name":"Left over"}',
        }),
      );
    });
    await page.clock.install();
    await page.reload();
    await page.getByText('Rutline is looking at what is stored on this device').waitFor();
    await page.clock.fastForward(20_000);
    await page.getByText('The device’s store does not answer.').first().waitFor();
    expect(await page.locator('.keeping').textContent()).not.toMatch(/^\s*stored\s*$/);
    await archive(page);
    const save = () => page.getByRole('button', { name: 'Save it as a file' }).click();
    await page.clock.fastForward(40_000);
    expect(JSON.parse(await download(page, save))).toMatchObject({ format: 'rutline-trip' });
    await page.evaluate(() => sessionStorage.removeItem('silent'));
    await page.reload();
    await expect.poll(() => page.getByLabel('Trip name').inputValue()).toBe('Left over');
    await archive(page);
    await page.getByRole('heading', { name: 'Ford survey' }).waitFor();
    await context.close();
  });

  test('where a window that could not store its trip closes late, what another stored meanwhile stays', async () => {
    const { context, page } = await atArchive();
    await stored(page);
    const stuck = await context.newPage();
    await stuck.goto(`${inject('url')}#/archive`);
    await rename(stuck, 'Ford survey, half');
    await stored(stuck);
    await stuck.evaluate(() => (IDBDatabase.prototype.transaction = () => ({}) as IDBTransaction));
    await rename(stuck, 'Ford survey, stuck');
    await page.reload();
    await rename(page, 'Ford survey, whole');
    await stored(page);
    await stuck.close({ runBeforeUnload: false });
    await page.close();
    const next = await context.newPage();
    await next.goto(`${inject('url')}#/archive`);
    await next.getByText('was also changed in another window').waitFor();
    await next.getByRole('heading', { name: 'Ford survey, stuck (copy)' }).waitFor();
    await next.getByRole('heading', { name: 'Ford survey, whole' }).waitFor();
    await context.close();
  });

  test('a file of the trip as it stands is that trip, and no other beside it', async () => {
    const { context, page } = await atArchive();
    await addVehicle(page, 'compact 4x4');
    await stored(page);
    const file = await savedAsFile(page);
    await openText(page, file);
    await page.getByText('Opened Ford survey').waitFor();
    await archive(page);
    expect(await page.getByRole('heading', { name: /^Ford survey/ }).count()).toBe(1);
    await context.close();
  });

  test('where two windows write one trip, both are kept; a file is not opened over what says something else', async () => {
    const { context, page } = await atArchive();
    await stored(page);
    const other = await context.newPage();
    await other.goto(`${inject('url')}#/archive`);
    await other.getByLabel('Trip name').waitFor();
    const file = await savedAsFile(page);
    await rename(page, 'Ford survey, mine');
    await stored(page);
    await rename(other, 'Ford survey, theirs');
    await other.getByRole('button', { name: 'Keep both' }).click();
    await stored(other);
    await archive(other);
    await other.getByRole('heading', { name: 'Ford survey, theirs (copy)' }).waitFor();
    await other.getByRole('heading', { name: 'Ford survey, mine' }).waitFor();
    await openText(page, file);
    await page.getByText('the file was opened as a trip of its own').waitFor();
    await archive(page);
    await page.getByRole('heading', { name: 'Ford survey, mine' }).waitFor();
    await page.getByRole('heading', { name: 'Ford survey (from file)' }).waitFor();
    await context.close();
  });
});

test('a graded track that was removed is put back with its whole history', async () => {
  const { context, page, faults } = await atArchive();
  await takeIn(page, 'Quarry climb');
  const before = await histories(page);
  expect(before.length).toBeGreaterThan(0);
  await openTrack(page, 'Quarry climb');
  await page.getByRole('button', { name: 'Remove from this device' }).click();
  await page.getByText('Removed Quarry climb from this device.').waitFor();
  await page.getByText('No graded tracks yet').waitFor();
  expect(await histories(page)).toEqual([]);
  await page.getByRole('button', { name: 'Put it back' }).click();
  await openTrack(page, 'Quarry climb');
  await page.getByText('History', { exact: true }).click();
  await page.getByText('first filed').waitFor();
  expect(await histories(page)).toEqual(before);
  expect(faults).toEqual([]);
  await context.close();
});

test('a graded track whose history is damaged says so, shows and gives what is left, and gives way to a good copy', async () => {
  const { context, page, faults } = await atArchive();
  await takeIn(page, 'Quarry climb');
  await page.evaluate(damageHistories);
  await page.goto(`${inject('url')}#/archive/tracks`);
  await page.reload();
  await openTrack(page, 'Quarry climb');
  const sheet = page.getByRole('article', { name: 'Quarry climb' });
  await sheet.getByText('The history of this track is damaged and cannot be read.').waitFor();
  await sheet.getByText('This is what was last known here.').waitFor();
  await page.getByRole('link', { name: /^Quarry climb .* damaged, cannot be read$/ }).waitFor();
  expect(await findings(page)).toEqual([]);

  const downloading = page.waitForEvent('download');
  await sheet.getByRole('button', { name: 'Save what is left as a file' }).click();
  const saved = await downloading;
  expect(saved.suggestedFilename()).toBe('Quarry climb.zip');
  const bytes = new Uint8Array(readFileSync(await saved.path()));
  const { value, problems } = await readZip(bytes);
  expect(value!.tracks).toMatchObject([{ id: 'track', name: 'Quarry climb' }]);
  expect(value!.tracks[0].surveyed[0].visits).toHaveLength(1);
  expect(problems).toMatchObject([{ severity: 'warning', where: 'damaged history.rutline-tracks' }]);
  const history = unzipSync(bytes)['damaged history.rutline-tracks'];
  expect([...history.slice(-3)]).toEqual([1, 2, 3]);

  await sheet.getByRole('button', { name: 'Remove from this device' }).click();
  await page.getByText('No graded tracks yet').waitFor();
  await page.getByRole('button', { name: 'Put it back' }).click();
  await openTrack(page, 'Quarry climb');
  await sheet.getByText('The history of this track is damaged and cannot be read.').waitFor();
  expect(await histories(page)).toEqual([[1, 2, 3]]);

  await page.getByLabel('A file from another leader').setInputFiles(await copyOf('Quarry climb'));
  await page.getByText('The history of this track here could not be read.').waitFor();
  await page.getByText('History', { exact: true }).click();
  await page.getByText('first filed').waitFor();
  expect(await page.getByText('damaged, cannot be read').count()).toBe(0);

  await page.goto(`${inject('url')}#/archive/tracks/nowhere`);
  await page.getByText('This track is not on this device.').waitFor();
  expect(faults).toEqual([]);
  await context.close();
});

test('where the device is full while a trip is filed, that is said in words that fit, and the archive stays as it was', async () => {
  const { context, page } = await atArchive(undefined, 900_000);
  await takeIn(page, 'Quarry climb');
  const before = await histories(page);
  await archive(page);
  await openText(page, tripToJson({ ...TRIP, id: 'long', name: 'Long words', obstacles: manyWords() }));
  await page.getByText('Opened Long words').waitFor();
  await archive(page);
  await page.getByRole('button', { name: 'File into the archive' }).click();
  await page.getByLabel('It belongs to').selectOption({ label: 'A new graded track' });
  await page.getByRole('button', { name: 'File it' }).click();
  await page.getByText('The device has no room left for this track.').waitFor();
  await page.getByText('Make room on the device, then do the same again.').waitFor();
  expect(await histories(page)).toEqual(before);
  await giveRoom(page);
  await page.getByRole('button', { name: 'File it' }).click();
  await page.getByText('Filed into Long words').waitFor();
  await context.close();
});

/** Obstacles with so many words in their notes, none like another, that they fit the device once and not twice. */
function manyWords(): Trip['obstacles'] {
  let seed = 1;
  const letter = () => String.fromCharCode(97 + ((seed = (seed * 48271) % 2147483647) % 26));
  const note = () => Array.from({ length: 90_000 }, letter).join('');
  return [1, 2, 3].map((n) => ({ ...TRIP.obstacles[0], id: `o${n}`, photos: [], note: note() }));
}

test('the browser is asked to keep everything once a track came into the archive, and not before', async () => {
  const { context, page } = await atArchive(() => {
    Object.assign(globalThis, { asked: 0 });
    navigator.storage.persisted = () => Promise.resolve(false);
    navigator.storage.persist = () => {
      (globalThis as unknown as { asked: number }).asked++;
      return Promise.resolve(true);
    };
  });
  await stored(page);
  // A page that only looks: nothing was changed on it.
  await page.reload();
  await archive(page);
  await page.getByText('The browser may clear this by itself').waitFor();
  const asked = () => page.evaluate(() => (globalThis as unknown as { asked: number }).asked);
  expect(await asked()).toBe(0);
  await takeIn(page, 'Quarry climb');
  await expect.poll(asked).toBe(1);
  await context.close();
});

describe('backups', () => {
  test('go into the folder that was chosen, roll, and are gone on with after a reload', async () => {
    const { context, page, faults } = await atArchive(() => {
      const pick = async () =>
        (await navigator.storage.getDirectory()).getDirectoryHandle('Club', { create: true });
      Object.assign(globalThis, { showDirectoryPicker: pick });
    });
    await page.getByRole('link', { name: /Pin obstacles without/ }).click();
    await page.getByRole('link', { name: /^Convoy/ }).click();
    await page.getByRole('button', { name: 'Add vehicle' }).click();
    await stored(page);
    await archive(page);
    await page.getByText(/ of .+ that the browser gives are in use/).waitFor();
    await page.getByRole('button', { name: 'Choose a folder' }).click();
    await page.getByText('The last one was written').waitFor();
    const [first] = await filesIn(page, 'Club');
    expect(first.name).toMatch(/^Ford survey \[\w+\] \d{4}-\d\d-\d\d \d\d\.\d\d\.\d\d\.\d{3}Z\.json$/);
    expect(JSON.parse(first.text)).toMatchObject({ format: 'rutline-trip', name: 'Ford survey' });

    const [key] = /\[\w+\]/.exec(first.name) ?? expect.fail();
    const hours = Array.from({ length: 14 }, (_, i) => String(i).padStart(2, '0'));
    await lay(page, 'Club', [
      ...hours.map((hour) => `Ford survey ${key} 2026-01-01 ${hour}.00.00Z.json`),
      `Ford survey ${key} 2026-01-02 00.00.00Z.json.part`,
      'letter to the council.txt',
    ]);
    await rename(page, 'Ford survey, autumn');
    await stored(page);
    await page.getByRole('button', { name: 'Back up now' }).click();
    await expect
      .poll(async () => (await filesIn(page, 'Club')).map(({ name }) => name))
      .toEqual(
        [
          expect.stringMatching(/^Ford survey autumn /),
          ...(await filesIn(page, 'Club')).map(({ name }) => name).filter((name) => name === first.name),
          ...hours.slice(-8).map((hour) => `Ford survey ${key} 2026-01-01 ${hour}.00.00Z.json`),
          'letter to the council.txt',
        ].sort(),
      );
    const holdsIt = page.getByText('It holds the trip as it is now.');
    await holdsIt.waitFor();
    expect(await findings(page)).toEqual([]);
    await rename(page, 'Ford survey, winter');
    await holdsIt.waitFor({ state: 'detached' });
    await stored(page);

    await page.reload();
    await page.getByText('The last one was written').waitFor();
    expect(faults).toEqual([]);
    await context.close();
  });

  test('hold the archive whole, and bring it back once the browser has cleared it', async () => {
    const { context, page, faults } = await atArchive(() => {
      const pick = async () =>
        (await navigator.storage.getDirectory()).getDirectoryHandle('Club', { create: true });
      Object.assign(globalThis, { showDirectoryPicker: pick });
    });
    await stored(page);
    await takeIn(page, 'Quarry climb');
    await page.goto(`${inject('url')}#/archive`);
    await page.getByRole('button', { name: 'Choose a folder' }).click();
    await page.getByText('The last one was written').waitFor();
    const names = async () => (await filesIn(page, 'Club')).map(({ name }) => name);
    expect(await names()).toEqual([expect.stringMatching(/^Archive \[\w+\] .*\.rutline-tracks$/)]);

    await page.evaluate(
      () =>
        new Promise((resolve) => {
          indexedDB.deleteDatabase('rutline').onsuccess = resolve;
        }),
    );
    await page.reload();
    await archive(page);
    await page.getByRole('button', { name: 'Bring one back' }).click();
    await page.getByLabel('Which backup').waitFor();
    expect(await findings(page)).toEqual([]);
    await page.getByRole('button', { name: 'Open this backup' }).click();
    await page.getByText('1 track merged into the archive').waitFor();
    await page.getByText('Quarry climb').first().waitFor();
    expect(await names()).toHaveLength(1);
    expect(faults).toEqual([]);
    await context.close();
  });

  test('are saved by hand where the browser has no folders, and that is asked for after a week', async () => {
    const { context, page } = await atArchive(() => {
      delete (globalThis as { showDirectoryPicker?: unknown }).showDirectoryPicker;
    });
    await page.getByRole('link', { name: /Pin obstacles without/ }).click();
    await page.getByRole('link', { name: /^Convoy/ }).click();
    await page.getByRole('button', { name: 'Add vehicle' }).click();
    await stored(page);
    await page.reload();
    await page.getByText('Ford survey was not saved as a file for a week.').waitFor();
    await archive(page);
    await page.getByText('This browser cannot write backups into a folder by itself.').waitFor();
    const button = page
      .getByRole('region', { name: 'Storage' })
      .getByRole('button', { name: 'Save a backup now' });
    expect(JSON.parse(await download(page, () => button.click()))).toMatchObject({ name: 'Ford survey' });
    await page.getByText('The last one was saved').waitFor();
    await context.close();
  });
});

function filesIn(page: Page, folder: string): Promise<{ name: string; text: string }[]> {
  return page.evaluate(async (name) => {
    const there = await (await navigator.storage.getDirectory()).getDirectoryHandle(name);
    const files: { name: string; text: string }[] = [];
    for await (const one of there.values()) {
      if (one.kind !== 'file') continue;
      // A file may be moved or rolled away between being listed, opened and read.
      const text = await one
        .getFile()
        .then((file) => file.text())
        .catch(() => null);
      if (text !== null) files.push({ name: one.name, text });
    }
    return files.sort((a, b) => (a.name < b.name ? -1 : 1));
  }, folder);
}

function lay(page: Page, folder: string, names: readonly string[]): Promise<void> {
  return page.evaluate(
    async ({ folder, names }) => {
      const there = await (await navigator.storage.getDirectory()).getDirectoryHandle(folder);
      for (const name of names) await there.getFileHandle(name, { create: true });
    },
    { folder, names },
  );
}
