import type { Page } from 'playwright-core';
import { newTrip } from './desk.ts';
import type { Subject } from './kills.ts';
import { WINDOW } from './kills.ts';

/** The built program at `url`: the name of the trip is written over and over, and the head of the page says what is stored. */
export function desk(url: string): Subject {
  return {
    name: 'the trip on the desk',
    mostMs: 120,
    begin: async (page) => {
      await page.goto(`${url}#/archive`);
      await newTrip(page);
      await page.getByRole('link', { name: 'Brief' }).click();
    },
    open: async (page) => {
      await page.goto(`${url}#/brief`);
      await page.getByLabel('Trip name').waitFor();
    },
    edit: (page, from) => page.evaluate(writeOn, { from, window: WINDOW }),
    found,
  };
}

/**
 * What the desk shows, and what other trips of the device are called: where a window that a kill had left hanging closes
 * late, what it had is a trip of its own.
 */
async function found(page: Page): Promise<number[]> {
  const name = await page.getByLabel('Trip name').inputValue();
  const all = [name, ...(await page.evaluate(namesStored))];
  return [...new Set(all.flatMap((one) => one.split(' ').filter(Boolean).map(Number)))].filter(
    Number.isInteger,
  );
}

/** Runs in the page. */
function namesStored(): Promise<string[]> {
  return new Promise((resolve) => {
    const opening = indexedDB.open('rutline');
    opening.onerror = () => resolve([]);
    opening.onsuccess = () => {
      const asked = opening.result.transaction('summaries').objectStore('summaries').getAll();
      asked.onsuccess = () => {
        opening.result.close();
        resolve((asked.result as { readonly name: string }[]).map(({ name }) => name));
      };
    };
  });
}

/** Runs in the page, as fast as a hand that never rests. */
function writeOn({ from, window }: { from: number; window: number }): void {
  const { kept, begun } = globalThis as unknown as Record<'kept' | 'begun', (n: number) => Promise<void>>;
  const box = document.querySelector<HTMLInputElement>('#trip-name')!;
  const says = document.querySelector('.keeping')!;
  void (async () => {
    for (let n = from; ; n++) {
      const first = Math.max(1, n - window + 1);
      box.value = Array.from({ length: n - first + 1 }, (_, i) => first + i).join(' ');
      box.dispatchEvent(new Event('input', { bubbles: true }));
      void begun(n);
      do await new Promise((resolve) => setTimeout(resolve, 0));
      while (says.textContent.trim() !== 'stored');
      void kept(n);
    }
  })();
}
