import type { BrowserContext, Page } from 'playwright-core';
import { chromium } from 'playwright-core';
import { chromiumPath, TESTED_ARGS } from './chromium.ts';

/** Edits carry numbers from 1; a page shows those of the last few, which is what is looked for again. */
export const WINDOW = 40;

/** What is put under the kills: a page that edits and says what is kept, and shows it when it is opened again. */
export interface Subject {
  readonly name: string;
  /** The latest moment of a kill after the first edit; a few edits fall into it. */
  readonly mostMs: number;
  /** What is there before the first edit. */
  readonly begin: (page: Page) => Promise<void>;
  /** Opens again what `begin` laid. */
  readonly open: (page: Page) => Promise<void>;
  /**
   * Edits from number `from` on without end, each beside those before it, and calls `kept(n)` in the page when the page
   * says that all up to n are kept. Must not wait for the end.
   */
  readonly edit: (page: Page, from: number) => Promise<void>;
  /** The numbers of the edits that are there, the last `WINDOW` of them. */
  readonly found: (page: Page) => Promise<readonly number[]>;
}

/** What is ended: all of the browser at once, the process of the page, or the one that writes to the disk. */
export const VICTIMS = ['browser', 'renderer', 'storage.mojom.StorageService'] as const;

export type Victim = (typeof VICTIMS)[number];

export interface Kill {
  readonly victim: Victim;
  /** Time between the first edit and the kill. */
  readonly afterMs: number;
  /** Edits that the page had said were kept since the kill before. */
  readonly kept: number;
  /** Whether an edit had been begun that the page had not yet said was kept. */
  readonly midway: boolean;
  /** Edits that the page had said were kept and that are not there. */
  readonly lost: readonly number[];
}

/** Kills at moments drawn from `seed`, one after another on one profile, which `folder` holds. */
export async function* kills(
  subject: Subject,
  { folder, count, seed }: { readonly folder: string; readonly count: number; readonly seed: number },
): AsyncGenerator<Kill> {
  const chance = drawing(seed);
  let context = await launched(folder);
  try {
    await subject.begin(await onlyPage(context));
    let last = 0;
    for (let i = 0; i < count; i++) {
      const victim = VICTIMS[i % VICTIMS.length];
      const afterMs = chance() * subject.mostMs;
      const before = last;
      let begun = before;
      const page = await onlyPage(context);
      await page.exposeFunction('kept', (n: number) => void (last = n));
      await page.exposeFunction('begun', (n: number) => void (begun = n));
      await subject.open(page);
      await Promise.race([subject.edit(page, before + 1), passed(15_000)]);
      await passed(afterMs);
      await end(context, page, victim);
      const [kept, midway] = [last - before, begun > last];
      if (victim === 'browser') context = await launched(folder);
      const found = await lookedUp(subject, context);
      yield { victim, afterMs, kept, midway, lost: lostOf(found, last) };
      last = Math.max(last, ...found);
    }
  } finally {
    await context.close();
  }
}

/** A process that died may leave a question unanswered for ever; whoever loads the page again is answered. */
async function lookedUp(subject: Subject, context: BrowserContext): Promise<readonly number[]> {
  for (let i = 0; i < 3; i++) {
    const page = await onlyPage(context);
    const looking = subject.open(page).then(() => subject.found(page));
    const found = await Promise.race([looking.catch(() => null), passed(60_000).then(() => null)]);
    if (found !== null) return found;
  }
  throw new Error(`${subject.name} does not open any more.`);
}

/** What should be there up to the last kept one, and is not. A later edit may be there: its word was on the way. */
function lostOf(found: readonly number[], last: number): number[] {
  const there = new Set(found);
  const newest = Math.max(last, ...found);
  const wanted = Array.from({ length: WINDOW }, (_, i) => newest - WINDOW + 1 + i);
  return wanted.filter((n) => n > 0 && n <= last && !there.has(n));
}

function launched(folder: string): Promise<BrowserContext> {
  return chromium.launchPersistentContext(folder, {
    executablePath: chromiumPath(),
    args: TESTED_ARGS,
    serviceWorkers: 'block',
  });
}

/** A fresh page, the others closed. Pauses in typing are none, so that nearly every kill falls into a saving. */
async function onlyPage(context: BrowserContext): Promise<Page> {
  const others = context.pages();
  const page = await newPage(context);
  // A page whose process was killed does not always answer that it is closed.
  await Promise.race([Promise.all(others.map((other) => other.close())), passed(2000)]);
  await page.addInitScript(() => {
    const later = globalThis.setTimeout;
    globalThis.setTimeout = ((run: () => void, ms?: number) =>
      later(run, ms === 300 ? 0 : ms)) as typeof setTimeout;
  });
  return page;
}

/** The process that was kept ready for a next page may be among those that were killed. */
async function newPage(context: BrowserContext): Promise<Page> {
  return context.newPage().catch(() => context.newPage());
}

/** SIGKILL to what this browser says is the process; returns when it is gone. */
async function end(context: BrowserContext, page: Page, victim: Victim): Promise<void> {
  const session = await context.browser()!.newBrowserCDPSession();
  const { processInfo } = await session.send('SystemInfo.getProcessInfo');
  const gone =
    victim === 'browser'
      ? new Promise((resolve) => context.once('close', resolve))
      : victim === 'renderer'
        ? Promise.race([new Promise((resolve) => page.once('crash', resolve)), passed(2000)])
        : passed(30);
  for (const { type, id } of processInfo) if (type === victim) process.kill(id, 'SIGKILL');
  await gone;
  if (victim !== 'browser') await session.detach();
}

function passed(ms: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, ms));
}

/** mulberry32 (T. Ettinger, 2017): numbers in [0, 1) that are the same for the same seed. */
function drawing(seed: number): () => number {
  let a = seed;
  return () => {
    a = (a + 0x6d2b79f5) | 0;
    let t = Math.imul(a ^ (a >>> 15), 1 | a);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
  };
}
