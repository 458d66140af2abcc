import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import type * as Club from './killedArchivePage.ts';
import type { Subject } from './kills.ts';
import { WINDOW } from './kills.ts';

/** What runs inside the page. */
declare const club: typeof Club;

const TRIP = readFileSync(new URL('../archive/in/version-2.json', import.meta.url), 'utf8');

/**
 * The club's archive behind its worker, as a development server at `origin` serves it: measured anew, an outcome, another
 * leader's file, a new track with a photo, over and over. Of one track, all that the archive keeps must tell the same.
 */
export function clubArchive(origin: string): Subject {
  const open = async (page: Page): Promise<void> => {
    await page.goto(`${origin}tests/archive/in/version-1.json`);
    await page.addScriptTag({
      type: 'module',
      content: `import * as club from '/tests/e2e/killedArchivePage.ts'; Object.assign(globalThis, { club });`,
    });
    await page.waitForFunction(() => 'club' in globalThis);
    await page.evaluate((text) => club.open(text), TRIP);
  };
  return {
    name: "the club's archive",
    mostMs: 1_500,
    begin: open,
    open,
    edit: (page, from) => page.evaluate((first) => void club.editOn(first), from),
    found: (page) => page.evaluate((window) => club.numbersThere(window), WINDOW),
  };
}
