import { readFileSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { copiesToBytes } from '../../src/archive/exchange.ts';
import { edited, firstFiled, gradedOf } from '../../src/archive/gradedReplica.ts';
import { replicaFrom, replicaToBytes } from '../../src/archive/replica.ts';
import { readTrip } from '../../src/archive/share.ts';
import { gradedAnew } from '../../src/archive/filing.ts';
import { engine } from '../archive/replicas.ts';
import type { Hosting } from '../cli/hosted.ts';
import { hosting } from '../cli/hosted.ts';
import { findings, launch, PHONE, sitDown } from './desk.ts';

const ANN = { by: 'Ann', atMs: 1.7e12 };
const BEN = { by: 'Ben', atMs: 1.71e12 };

let browser: Browser;
let host: Hosting;
beforeAll(async () => {
  browser = await launch();
  await engine();
  host = await hosting();
});
afterAll(async () => {
  await host?.close();
});

/** A leader's file of one track, on which each has worked apart from the other. */
function filesOf(): readonly Buffer[] {
  const text = readFileSync(new URL('../archive/in/version-2.json', import.meta.url), 'utf8');
  let visits = 0;
  const graded = gradedAnew(readTrip(text).value!, 'track', { ...ANN, newId: () => `v${visits++}` });
  const first = replicaToBytes(firstFiled({ ...graded, name: 'Ember ridge' }, ANN));
  return [ANN, BEN].map((author, i) => {
    const replica = replicaFrom([first])!;
    const { value } = gradedOf(replica);
    const [one] = value!.surveyed;
    const visit = { ...one.visits[0], id: `by ${author.by}`, by: author.by, atMs: author.atMs + 1e9 };
    const surveyed = [{ ...one, visits: [...one.visits, visit] }];
    const note = author.by;
    const after = edited(replica, { ...value!, [i === 0 ? 'area' : 'note']: note, surveyed }, author);
    return Buffer.from(copiesToBytes([replicaToBytes(after)]));
  });
}

/** A leader with a file on a device of their own, on the part with the graded tracks. */
async function leader(file: Buffer) {
  const { context, page, faults } = await sitDown(browser, `${inject('url')}#/archive/tracks`, PHONE);
  await page
    .getByLabel('A file from another leader')
    .setInputFiles({ name: 'x.rutline-tracks', mimeType: 'application/octet-stream', buffer: file });
  await page.getByText('Ember ridge: new here.').waitFor();
  return { context, page, faults };
}

async function useServer(page: Page, key: string): Promise<void> {
  await page.getByLabel('Address of the server').fill(host.url);
  await page.getByLabel('Your key').fill(key);
  await page.getByRole('button', { name: 'Use this server' }).click();
  await page.getByRole('button', { name: 'Exchange now' }).waitFor();
}

/** Presses the button, and what it said then. */
async function exchange(page: Page): Promise<string> {
  await page.getByRole('button', { name: 'Exchange now' }).click();
  const said = page.getByRole('region', { name: 'Exchange with the club' }).getByRole('list');
  await said.waitFor();
  return said.innerText();
}

/** All that a device holds of the track, apart from when it came there. */
function held(page: Page): Promise<unknown> {
  return page.evaluate(
    () =>
      new Promise((resolve) => {
        const opening = indexedDB.open('rutline');
        opening.onsuccess = () => {
          const asking = opening.result.transaction('graded').objectStore('graded').getAll();
          asking.onsuccess = () => resolve(JSON.parse(JSON.stringify(asking.result)));
        };
      }),
  );
}

test('two leaders who worked apart exchange with the club’s server and hold the same; a wrong key is refused', async () => {
  const [annsFile, bensFile] = filesOf();
  const ann = await leader(annsFile);
  const ben = await leader(bensFile);

  await ann.page.getByLabel('Address of the server').fill('http://elsewhere.example');
  await ann.page.getByRole('button', { name: 'Use this server' }).click();
  await ann.page.getByText('This is no address of a server').waitFor();
  await useServer(ann.page, 'wrong');
  expect(await exchange(ann.page)).toContain('The server does not know this key.');
  await ann.page.getByRole('button', { name: /^Change/ }).click();
  await useServer(ann.page, host.key);
  await useServer(ben.page, host.key);

  expect(await exchange(ann.page)).toBe('Given to the server: Ember ridge.');
  expect(await exchange(ben.page)).toBe(
    'Ember ridge: 1 day of measuring taken in.\nGiven to the server: Ember ridge.',
  );
  expect(await exchange(ann.page)).toBe('Ember ridge: 1 day of measuring taken in.');
  expect(await exchange(ben.page)).toBe('Nothing new on either side.');

  const anns = await held(ann.page);
  expect(anns).toMatchObject([{ id: 'track', area: 'Ann', note: 'Ben' }]);
  expect(JSON.stringify(anns)).toMatch(/by Ann.*by Ben/);
  expect(await held(ben.page)).toEqual(anns);

  await ben.page.getByText(/Last exchanged/).waitFor();
  await ben.context.setOffline(true);
  expect(await exchange(ben.page)).toContain('The server does not answer.');
  expect(await findings(ann.page)).toEqual([]);
  const isRefusal = (fault: string) => /401|ERR_INTERNET_DISCONNECTED/.test(fault);
  expect([...ann.faults, ...ben.faults].filter((fault) => !isRefusal(fault))).toEqual([]);
  await ann.context.close();
  await ben.context.close();
});
