import { readFileSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import type { ViteDevServer } from 'vite';
import { createServer } from 'vite';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Taken } from '../../src/archive/gradedStore.ts';
import type * as Share from '../../src/archive/share.ts';
import type * as Archive from '../../src/workers/archive.ts';
import type * as Asking from '../../src/workers/whoGoes.ts';
import { launch } from './desk.ts';

/** What runs inside the page. */
declare const archive: typeof Archive;
declare const share: typeof Share;
declare const asking: typeof Asking;
declare let changes: number;
declare let taken: Taken;

const TRIP = readFileSync(new URL('../archive/in/version-2.json', import.meta.url), 'utf8');

let server: ViteDevServer;
let browser: Browser;

beforeAll(async () => {
  server = await createServer({
    configFile: false,
    logLevel: 'error',
    server: { port: 0, host: '127.0.0.1', hmr: false },
    optimizeDeps: { noDiscovery: true },
    worker: { format: 'es' },
  });
  await server.listen();
  browser = await launch();
});

afterAll(async () => {
  await server?.close();
});

test('two windows that change one track at once lose nothing, and both see what came of it', async () => {
  const context = await browser.newContext();
  const newWindow = async (): Promise<Page> => {
    const page = await context.newPage();
    await page.goto(`${server.resolvedUrls!.local[0]}tests/archive/in/version-1.json`);
    await page.addScriptTag({
      type: 'module',
      content: `import * as archive from '/src/workers/archive.ts'; import * as share from '/src/archive/share.ts';
        import * as asking from '/src/workers/whoGoes.ts';
        Object.assign(globalThis, { archive, share, asking, changes: 0, taken: null });
        archive.watchArchive(() => globalThis.changes++);`,
    });
    await page.waitForFunction(() => 'archive' in globalThis);
    return page;
  };
  const [one, other] = [await newWindow(), await newWindow()];

  const filed = await one.evaluate(
    (text) => archive.fileTrip(share.readTrip(text).value!, { by: 'Ann', atMs: 1e12 }),
    TRIP,
  );
  expect(filed).toEqual({ value: { id: 'first-trip', newVisits: 1 }, problems: [] });

  const take = async () => {
    taken = (await archive.takeTrack('first-trip')).value!;
  };
  await Promise.all([one.evaluate(take), other.evaluate(take)]);

  /** Runs in a page: gives back what it took before the other changed anything, changed each time in another way. */
  const work = async (name: string) => {
    const { graded, heads } = taken;
    const [first] = graded.surveyed;
    const problems: unknown[] = [];
    for (let n = 0; n < 4; n++) {
      const visit = { ...first.visits[0], id: `${name} ${n}`, by: name, atMs: 1e12 + n };
      const after = { ...graded, note: name, surveyed: [{ ...first, visits: [...first.visits, visit] }] };
      problems.push(await archive.editTrack(after, heads, { by: name, atMs: 1e12 }));
    }
    return problems.filter((problem) => problem !== null);
  };
  const saved = await Promise.all([one.evaluate(work, 'Ben'), other.evaluate(work, 'Cleo')]);
  expect(saved).toEqual([[], []]);

  const seen = async () => {
    const { value, problems } = await archive.takeTrack('first-trip');
    const rows = (await archive.findTracks({ box: [0, 44, 1, 46] })).value!;
    return {
      problems,
      visits: value!.graded.surveyed[0].visits.map(({ id }) => id),
      photos: value!.graded.surveyed[0].obstacle.photos.length,
      notes: value!.conflicts.flatMap(({ claims }) => claims.map((claim) => claim.value)).sort(),
      rows: rows.map(({ visitCount, conflictCount }) => ({ visitCount, conflictCount })),
    };
  };
  const [mine, theirs] = [await one.evaluate(seen), await other.evaluate(seen)];
  expect(mine.visits).toHaveLength(9);
  expect(mine).toMatchObject({
    problems: [],
    photos: 1,
    notes: ['Ben', 'Cleo'],
    rows: [{ conflictCount: 1 }],
  });
  expect(theirs).toEqual(mine);
  await other.waitForFunction(() => changes >= 9);

  const going = await other.evaluate(async (text) => {
    const { vehicles } = share.readTrip(text).value!;
    const all: { done: number; words: string[] }[] = [];
    for await (const { cells, done } of asking.whoGoes(['first-trip', 'nowhere'], vehicles, 'as recorded'))
      all.push({ done, words: cells.map(({ verdicts, best }) => verdicts[best].verdict.word) });
    return all;
  }, TRIP);
  expect(going).toMatchObject([{ done: 1, words: [expect.any(String)] }]);
  await context.close();
});
