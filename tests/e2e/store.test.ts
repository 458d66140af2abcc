import { readFileSync } from 'node:fs';
import type { Browser, BrowserContext, CDPSession, Page } from 'playwright-core';
import type { ViteDevServer } from 'vite';
import { createServer } from 'vite';
import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from 'vitest';
import type * as Share from '../../src/archive/share.ts';
import type * as Store from '../../src/archive/store.ts';
import { launch } from './desk.ts';

/** What runs inside the page. */
declare const store: typeof Store;
declare const share: typeof Share;

const FILED = readFileSync(new URL('../archive/in/version-4.json', import.meta.url), 'utf8');
/** A trip with all that one can have. */
const WHOLE = JSON.stringify({ ...(JSON.parse(FILED) as object), radioChannel: 'channel 12' });
const STORE_MODULE = '/src/archive/store.ts';
const DATABASE_MODULE = '/src/archive/database.ts';

let server: ViteDevServer;
let origin: string;
let browser: Browser;
let context: BrowserContext;

beforeAll(async () => {
  server = await createServer({
    configFile: false,
    logLevel: 'error',
    server: { port: 0, host: '127.0.0.1', hmr: false },
    optimizeDeps: { noDiscovery: true },
  });
  await server.listen();
  origin = server.resolvedUrls!.local[0]!;
  browser = await launch();
});

afterAll(async () => {
  await server?.close();
});

beforeEach(async () => {
  context = await browser.newContext();
});

afterEach(async () => {
  await context.close();
});

/** A window of its own with the modules at hand; `prepare` comes before they are loaded. */
async function newWindow(prepare?: (page: Page) => Promise<unknown>): Promise<Page> {
  const page = await context.newPage();
  await page.goto(`${origin}tests/archive/in/version-1.json`);
  await prepare?.(page);
  await page.addScriptTag({
    type: 'module',
    content: `import * as store from '${STORE_MODULE}'; import * as share from '/src/archive/share.ts';
      Object.assign(globalThis, { store, share });`,
  });
  await page.waitForFunction(() => 'store' in globalThis);
  return page;
}

/** Stores the whole trip after a change, and answers the trouble, if any. */
function saveIn(page: Page, name: string, nowMs = 1000): Promise<string | null> {
  return page.evaluate(
    async ({ text, name, nowMs }) => {
      const problem = await store.save({ ...share.readTrip(text).value!, name }, nowMs);
      return problem?.trouble ?? null;
    },
    { text: WHOLE, name, nowMs },
  );
}

function loadIn(page: Page, id = 'first-trip') {
  return page.evaluate(async (id) => {
    const { value, problems } = await store.load(id);
    return {
      text: value && share.tripToJson(value),
      name: value?.name,
      troubles: problems.map((problem) => ('trouble' in problem ? problem.trouble : problem.where)),
    };
  }, id);
}

/** Changes what is stored behind the back of the store. */
function tamper(page: Page, shelf: string, value: unknown): Promise<void> {
  return page.evaluate(
    ({ shelf, value }) =>
      new Promise<void>((resolve, reject) => {
        const opening = indexedDB.open('rutline');
        opening.onsuccess = () => {
          const work = opening.result.transaction(shelf, 'readwrite');
          if (value === null) work.objectStore(shelf).delete('first-trip');
          else work.objectStore(shelf).put(value, 'first-trip');
          work.oncomplete = () => resolve(opening.result.close());
          work.onerror = () => reject(work.error!);
        };
      }),
    { shelf, value },
  );
}

test('a stored trip comes back whole in the next window, and stands in the list', async () => {
  const first = await newWindow();
  expect(await saveIn(first, 'A trip of version 1', 5000)).toBeNull();
  await first.close();
  const next = await newWindow();
  const loaded = await loadIn(next);
  expect(loaded.troubles).toEqual([]);
  expect(JSON.parse(loaded.text!)).toEqual(JSON.parse(WHOLE));
  const { value } = await next.evaluate(() => store.list());
  expect(value).toMatchObject([
    { id: 'first-trip', name: 'A trip of version 1', updatedMs: 5000, obstacleCount: 1 },
  ]);
  expect(value![0].lengthM).toBeGreaterThan(200);
});

test('storing many times without waiting keeps the last', async () => {
  const page = await newWindow();
  const troubles = await page.evaluate(async (text) => {
    const trip = share.readTrip(text).value!;
    const saves = Array.from({ length: 20 }, (_, i) => store.save({ ...trip, name: `edit ${i}` }, 1000));
    return Promise.all(saves);
  }, WHOLE);
  expect(troubles.every((trouble) => trouble === null)).toBe(true);
  expect((await loadIn(page)).name).toBe('edit 19');
});

test('what another window stored is not written over', async () => {
  const [mine, theirs] = [await newWindow(), await newWindow()];
  expect(await saveIn(mine, 'mine')).toBeNull();
  expect(await saveIn(theirs, 'theirs, never loaded here')).toBe('changed elsewhere');
  await loadIn(theirs);
  expect(await saveIn(theirs, 'theirs')).toBeNull();
  expect(await saveIn(mine, 'mine again')).toBe('changed elsewhere');
  expect((await loadIn(mine)).name).toBe('theirs');
  expect(await saveIn(mine, 'mine again')).toBeNull();
});

test('a trip removed in another window is stored again whole, with its track', async () => {
  const [mine, theirs] = [await newWindow(), await newWindow()];
  await saveIn(mine, 'mine');
  await theirs.evaluate(() => store.remove('first-trip'));
  expect((await loadIn(mine)).troubles).toEqual(['missing']);
  expect(await saveIn(mine, 'mine')).toBeNull();
  expect(JSON.parse((await loadIn(theirs)).text!)).toMatchObject({ track: { name: 'Invented track' } });
});

test('a track that did not change is not written again', async () => {
  const page = await newWindow();
  const kept = await page.evaluate(async (text) => {
    const trip = share.readTrip(text).value!;
    Object.assign(globalThis, { trip });
    await store.save(trip, 1000);
  }, WHOLE);
  expect(kept).toBeUndefined();
  await tamper(page, 'tracks', null);
  const saveAgain = (copyTrack: boolean) =>
    page.evaluate(async (copyTrack) => {
      const { trip } = globalThis as unknown as { trip: Parameters<typeof store.save>[0] };
      await store.save({ ...trip, track: copyTrack ? { ...trip.track! } : trip.track }, 1000);
      return (await store.load('first-trip')).value?.track?.name ?? null;
    }, copyTrack);
  expect(await saveAgain(false)).toBeNull();
  expect(await saveAgain(true)).toBe('Invented track');
});

/** The keys on the shelf of images. */
function shelved(page: Page): Promise<unknown[]> {
  return page.evaluate(
    () =>
      new Promise<unknown[]>((resolve) => {
        const opening = indexedDB.open('rutline');
        opening.onsuccess = () => {
          const asked = opening.result.transaction('images').objectStore('images').getAllKeys();
          asked.onsuccess = () => {
            opening.result.close();
            resolve(asked.result);
          };
        };
      }),
  );
}

test('the image of a photo goes with it: taken off the shelf, put back by undo, and removed with the trip', async () => {
  const page = await newWindow();
  const save = (keep: boolean) =>
    page.evaluate(
      async ({ text, keep }) => {
        const held = globalThis as unknown as { trip?: Parameters<typeof store.save>[0] };
        held.trip ??= share.readTrip(text).value!;
        const obstacles = held.trip.obstacles.map((one) => (keep ? one : { ...one, photos: [] }));
        return store.save({ ...held.trip, obstacles }, 1000);
      },
      { text: WHOLE, keep },
    );
  expect(await save(true)).toBeNull();
  expect(await shelved(page)).toEqual([['first-trip', 'photo-0']]);
  expect(await save(false)).toBeNull();
  expect(await shelved(page)).toEqual([]);
  expect(await save(true)).toBeNull();
  expect(JSON.parse((await loadIn(page)).text!)).toEqual(JSON.parse(WHOLE));
  const rescued = await page.evaluate(() => store.rescue('first-trip'));
  expect(JSON.parse(rescued.value!)).toEqual(JSON.parse(WHOLE));
  await page.evaluate(() => store.remove('first-trip'));
  expect(await shelved(page)).toEqual([]);
});

test('a store from before photos opens with its trips, and takes photos', async () => {
  const old = JSON.parse(readFileSync(new URL('../archive/in/version-1.json', import.meta.url), 'utf8')) as {
    track: unknown;
  };
  const page = await newWindow((blank) =>
    blank.evaluate(
      (record) =>
        new Promise<void>((resolve) => {
          const opening = indexedDB.open('rutline', 1);
          opening.onupgradeneeded = () => {
            for (const shelf of ['summaries', 'trips', 'tracks']) opening.result.createObjectStore(shelf);
          };
          opening.onsuccess = () => {
            const work = opening.result.transaction(['summaries', 'trips'], 'readwrite');
            work
              .objectStore('trips')
              .put({ record: { ...record, track: null }, tracked: false }, 'first-trip');
            work.objectStore('summaries').put({ id: 'first-trip', updatedMs: 1 }, 'first-trip');
            work.oncomplete = () => resolve(opening.result.close());
          };
        }),
      old,
    ),
  );
  expect(await loadIn(page)).toMatchObject({ name: 'A trip of version 1', troubles: [] });
  expect(await saveIn(page, 'with a photo')).toBeNull();
  expect(await shelved(page)).toEqual([['first-trip', 'photo-0']]);
});

test('a full device says so and keeps what was stored', async () => {
  let session!: CDPSession;
  const device = { origin: new URL(origin).origin };
  const page = await newWindow(async (blank) => {
    session = await context.newCDPSession(blank);
    await session.send('Storage.overrideQuotaForOrigin', { ...device, quotaSize: 400_000 });
  });
  expect(await saveIn(page, 'before')).toBeNull();
  const trouble = await page.evaluate(async (text) => {
    const trip = share.readTrip(text).value!;
    const long = 'x'.repeat(99_999);
    const vehicles = Array.from({ length: 50 }, (_, i) => ({
      ...trip.vehicles[0],
      id: `v${i}`,
      driver: long,
    }));
    return (await store.save({ ...trip, name: 'after', vehicles }, 2000))?.trouble;
  }, WHOLE);
  expect(trouble).toBe('full');
  await session.send('Storage.overrideQuotaForOrigin', device);
  expect(await loadIn(page)).toMatchObject({ name: 'before', troubles: [] });
  expect(await saveIn(page, 'after')).toBeNull();
});

test('a record that is no trip is reported, and can be saved as it is', async () => {
  const page = await newWindow();
  await saveIn(page, 'whole');
  await tamper(page, 'trips', { record: { format: 'something', note: 'walk the ford' }, tracked: false });
  expect((await loadIn(page)).troubles[0]).toBe('corrupt');
  const rescued = await page.evaluate(() => store.rescue('first-trip'));
  expect(rescued.value).toContain('walk the ford');
});

test('a record that lost its track is opened with a problem', async () => {
  const page = await newWindow();
  await saveIn(page, 'whole');
  await tamper(page, 'tracks', null);
  expect(await loadIn(page)).toMatchObject({ name: 'whole', troubles: ['track'] });
});

test('a trip that a newer Rutline stored is left alone', async () => {
  const page = await newWindow();
  await saveIn(page, 'whole');
  await tamper(page, 'trips', { record: { format: 'rutline-trip', version: 99 }, tracked: false });
  expect((await loadIn(page)).troubles).toEqual(['newer version']);
});

test('a store that a newer Rutline upgraded is left alone', async () => {
  const page = await newWindow((blank) =>
    blank.evaluate(
      () =>
        new Promise<void>((resolve) => {
          const opening = indexedDB.open('rutline', 99);
          opening.onsuccess = () => resolve(opening.result.close());
        }),
    ),
  );
  expect(await saveIn(page, 'mine')).toBe('newer version');
});

test('an older window that holds the store open is named, and then waited for no longer', async () => {
  const older = await newWindow();
  await saveIn(older, 'mine');
  await older.evaluate(
    () =>
      new Promise<void>((resolve) => {
        const opening = indexedDB.open('rutline');
        opening.onsuccess = () => resolve(void Object.assign(globalThis, { held: opening.result }));
      }),
  );
  const newer = await newWindow((page) =>
    page.route(`**${DATABASE_MODULE}`, async (route) => {
      const response = await route.fetch();
      const body = (await response.text()).replace('const VERSION = 3', 'const VERSION = 4');
      await route.fulfill({ response, body });
    }),
  );
  expect((await loadIn(newer)).troubles).toEqual(['blocked']);
  await older.close();
  expect((await loadIn(newer)).name).toBe('mine');
});

/** From now on, until it is given back, what is asked by this method is never answered. */
function silence(page: Page, method: 'open' | 'getAll' | 'put'): Promise<void> {
  return page.evaluate((method) => {
    const holder: Record<string, unknown> = (method === 'open' ? IDBFactory : IDBObjectStore)
      .prototype as never;
    const asked = holder[method] as (...given: unknown[]) => IDBRequest;
    holder[method] = function (this: unknown, ...given: unknown[]) {
      const request = asked.apply(this, given);
      request.addEventListener = () => undefined;
      return request;
    };
    Object.assign(globalThis, { giveBack: () => (holder[method] = asked) });
  }, method);
}

function giveBack(page: Page): Promise<void> {
  return page.evaluate(() => (globalThis as unknown as { giveBack: () => void }).giveBack());
}

async function afterAnHour<T>(page: Page, asked: Promise<T>): Promise<T> {
  const answered = asked.then(() => true);
  while (!(await Promise.race([answered, page.clock.fastForward(3_600_000).then(() => false)])));
  return asked;
}

test('a store that does not answer is not waited for without end, and answers again once it can', async () => {
  const before = await newWindow();
  await saveIn(before, 'mine');
  await before.close();
  const page = await newWindow(async (blank) => {
    await blank.clock.install();
    await silence(blank, 'open');
  });
  const listed = () => page.evaluate(() => store.list());
  expect((await afterAnHour(page, listed())).problems).toMatchObject([{ trouble: 'silent' }]);
  await giveBack(page);
  expect((await loadIn(page)).name).toBe('mine');
  await silence(page, 'getAll');
  expect((await afterAnHour(page, listed())).problems).toMatchObject([{ trouble: 'silent' }]);
  await giveBack(page);
  expect((await listed()).value).toMatchObject([{ name: 'mine' }]);
  await silence(page, 'put');
  // The answer is lost, not the writing: whoever stores it again is not told that someone else did.
  expect(await afterAnHour(page, saveIn(page, 'mine, later'))).toBe('silent');
  await giveBack(page);
  expect(await saveIn(page, 'mine, later still')).toBeNull();
  expect((await loadIn(page)).name).toBe('mine, later still');
});

test('the browser is asked to keep the trips, and its answer is a plain yes or no', async () => {
  const page = await newWindow();
  expect(typeof (await page.evaluate(() => store.keep()))).toBe('boolean');
});
