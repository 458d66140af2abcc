import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import type * as Share from '../../src/archive/share.ts';
import type * as Store from '../../src/archive/store.ts';
import type { Subject } from './kills.ts';
import { WINDOW } from './kills.ts';

/** What runs inside the page. */
declare const store: typeof Store;
declare const share: typeof Share;

const WHOLE = readFileSync(new URL('../archive/in/version-2.json', import.meta.url), 'utf8');

/**
 * The store by itself, as a development server at `origin` serves it, with what needs several shelves at once: every edit
 * has a new photo, every third a new track, and its number stands in all of them.
 */
export function bareStore(origin: string): Subject {
  const open = async (page: Page): Promise<void> => {
    await page.goto(`${origin}tests/archive/in/version-1.json`);
    await page.addScriptTag({
      type: 'module',
      content: `import * as store from '/src/archive/store.ts'; import * as share from '/src/archive/share.ts';
        Object.assign(globalThis, { store, share });`,
    });
    await page.waitForFunction(() => 'store' in globalThis);
  };
  return {
    name: 'the store, with photos and track',
    mostMs: 120,
    begin: open,
    open,
    edit: (page, from) => page.evaluate(storeOn, { from, window: WINDOW, text: WHOLE }),
    found: (page) => page.evaluate(numbersThere),
  };
}

/** Runs in the page. */
async function storeOn({ from, window, text }: { from: number; window: number; text: string }) {
  const { kept, begun } = globalThis as unknown as Record<'kept' | 'begun', (n: number) => Promise<void>>;
  const whole = share.readTrip(text).value!;
  const before = (await store.load(whole.id)).value ?? whole;
  let photos = from === 1 ? [] : before.obstacles[0].photos;
  let track = before.track!;
  void (async () => {
    for (let n = from; ; n++) {
      const first = Math.max(1, n - window + 1);
      const name = Array.from({ length: n - first + 1 }, (_, i) => first + i).join(' ');
      // Below 128 no byte begins a part of a JPEG that would claim a size or end it.
      const image = new Uint8Array(20_000).fill(n % 128);
      image.set([0xff, 0xd8, 0xff]);
      photos = [...photos, { id: `photo ${n}`, caption: String(n), image }].slice(-8);
      if (n % 3 === 0) track = { ...track, name: String(n) };
      const obstacles = [{ ...whole.obstacles[0], photos }];
      void begun(n);
      if ((await store.save({ ...whole, name, track, obstacles }, n)) === null) void kept(n);
    }
  })();
}

/** Runs in the page; none where the shelves tell of different edits. */
async function numbersThere(): Promise<number[]> {
  const { value, problems } = await store.load('first-trip');
  if (value === null || problems.length > 0) return [];
  const numbers = value.name.split(' ').map(Number);
  const last = numbers[numbers.length - 1];
  const { photos } = value.obstacles[0];
  const photosAgree = photos.every(
    ({ caption, image }, i) =>
      Number(caption) === last - photos.length + 1 + i && image[9] === Number(caption) % 128,
  );
  const trackAgrees = last < 3 || value.track?.name === String(last - (last % 3));
  const listed = (await store.list()).value?.[0]?.name === value.name;
  return photosAgree && photos.length === Math.min(8, last) && trackAgrees && listed ? numbers : [];
}
