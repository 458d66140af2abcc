import { unzipSync } from 'fflate';
import { readFileSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, expect, inject, test } from 'vitest';
import { copiesToBytes } from '../../src/archive/exchange.ts';
import { firstFiled } from '../../src/archive/gradedReplica.ts';
import type { GradedTrack } from '../../src/archive/gradedTrack.ts';
import { Publishing } from '../../src/archive/publish/publishing.ts';
import { replicaToBytes } from '../../src/archive/replica.ts';
import { ANN, engine, wholeTrack } from '../archive/replicas.ts';
import { ELSEWHERE, INJECTIONS, MARK } from '../injections.ts';
import type { Draws } from './desk.ts';
import { findings, launch, PHONE, sitDown, WIDE } from './desk.ts';
import type { WebHost } from './webHost.ts';
import { webHost } from './webHost.ts';

let browser: Browser;
let host: WebHost;
beforeAll(async () => {
  browser = await launch();
  host = await webHost();
});
beforeEach(() => {
  host.files.clear();
  Object.assign(host.does, { ranges: true, cors: true, status: null });
  Object.assign(host.given, { bytes: 0, asked: [] });
});
afterAll(async () => {
  await host?.close();
});

/** The track of the tests at another place; one of many where it is one of a number. */
function trackAt(id: string, name: string, lng: number, lat: number): GradedTrack {
  const { track, surveyed, ...rest } = wholeTrack();
  const [dLng, dLat] = [lng - surveyed[0].obstacle.lng, lat - surveyed[0].obstacle.lat];
  return {
    ...rest,
    id,
    name,
    note: 'ask Ann at the gate',
    track: track && {
      ...track,
      lng: track.lng.map((at) => at + dLng),
      lat: track.lat.map((at) => at + dLat),
    },
    waypoints: [],
    surveyed: surveyed.map((one) => ({ ...one, obstacle: { ...one.obstacle, lng, lat } })),
  };
}

/** Puts tracks onto the host as the command does. */
function publish(tracks: readonly GradedTrack[], folder = ''): void {
  const publishing = new Publishing();
  tracks.forEach((track) => publishing.add(track));
  const { records, index } = publishing.files();
  for (const { name, pieces, size } of [records, index]) {
    const bytes = new Uint8Array(size);
    pieces.reduce((at, piece) => (bytes.set(piece, at), at + piece.length), 0);
    host.files.set(folder + name, bytes);
  }
}

/** Somebody who has never seen the program, at its part for published archives. */
async function reader(viewport = WIDE, part = 'published', draws: Draws = 'no map') {
  const desk = await sitDown(browser, `${inject('url')}#/archive/${part}`, viewport, { draws });
  const foreign: string[] = [];
  desk.page.on('request', (request) => {
    const url = request.url();
    if (!url.startsWith(inject('url')) && !/^(data|blob|about):/.test(url)) foreign.push(url);
  });
  return { ...desk, foreign };
}

async function lookInto(page: Page, address: string): Promise<void> {
  await page.getByLabel('Address of the archive').fill(address);
  await page.getByRole('button', { name: 'Look in', exact: true }).click();
}

/** The whole day's name of a track in the list, as a link. */
function listed(page: Page, name: string | RegExp) {
  return page.getByRole('list', { name: 'Tracks in view' }).getByRole('link', { name });
}

/** Looks closer at the crowd that a track stands for, until tracks are told one by one. */
async function closer(page: Page, crowd: RegExp): Promise<void> {
  const button = page.getByRole('button', { name: crowd }).first();
  for (let left = 10; left > 0; left--) {
    await button.or(listed(page, /./).first()).first().waitFor();
    if ((await listed(page, /./).count()) > 0) return;
    await button.click();
    await page.waitForTimeout(1_000);
  }
  throw new Error('The crowds lead to no track.');
}

const refused = (fault: string) => !/Failed to load resource|CORS policy|net::ERR/.test(fault);

test('a leader publishes from the browser, and a reader elsewhere finds the track, takes it over and opens it', async () => {
  await engine();
  const copies = copiesToBytes(
    [trackAt('a', 'Ember ridge', 10, 46), trackAt('b', 'Larch cut', 10.05, 46.02)].map((track) =>
      replicaToBytes(firstFiled(track, ANN)),
    ),
  );
  const leader = await reader(WIDE, 'tracks');
  await leader.page.getByLabel('A file from another leader').setInputFiles({
    name: 'x.rutline-tracks',
    mimeType: 'application/octet-stream',
    buffer: Buffer.from(copies),
  });
  await leader.page.getByText('Ember ridge: new here.').waitFor();
  await leader.page.getByRole('button', { name: 'See what goes out' }).click();
  await leader.page.getByText('2 tracks go out').waitFor();
  await leader.page.getByText('who measured, noted or drove').waitFor();
  expect(await findings(leader.page)).toEqual([]);
  const downloading = leader.page.waitForEvent('download');
  await leader.page.getByRole('button', { name: 'Save as a zip' }).click();
  const zip = unzipSync(readFileSync(await (await downloading).path()));
  await leader.page.getByText('2 tracks are in the zip.').waitFor();
  expect(Object.keys(zip).sort()).toEqual([
    expect.stringMatching(/^[0-9a-f]{32}\.records$/),
    'tracks.pmtiles',
  ]);
  for (const [name, bytes] of Object.entries(zip)) host.files.set(`club/${name}`, bytes);
  expect(leader.foreign).toEqual([]);
  await leader.context.close();

  const { context, page, faults, foreign } = await reader(WIDE, 'published', 'coarse map');
  await page.getByText('nothing is asked for before you press the button').waitFor();
  await lookInto(page, 'ftp://club.example');
  await page.getByText('This is no address of an archive').waitFor();
  expect(foreign).toEqual([]);
  await lookInto(page, `${host.url}club`);
  await listed(page, /Ember ridge/).waitFor();
  await page.getByText('2 tracks in the archive, 2 tracks in view.').waitFor();
  expect(host.given.asked.filter((one) => one.includes('.records'))).toEqual([]);
  await listed(page, /Ember ridge/).click();
  await page.getByRole('heading', { name: 'Ember ridge' }).waitFor();
  expect(await page.getByText('ask Ann at the gate').count()).toBe(0);
  const [obstacle] = wholeTrack().surveyed;
  await page.getByRole('link', { name: new RegExp(obstacle.obstacle.name) }).click();
  await page.getByRole('heading', { name: 'Condition, visit by visit' }).waitFor();
  await page.getByRole('link', { name: /The whole track/ }).click();
  expect(await findings(page)).toEqual([]);
  await page.getByRole('button', { name: 'Take over into my archive' }).click();
  await page.getByText('Ember ridge is in your archive.').waitFor();
  await page.getByRole('button', { name: 'Open as a trip' }).click();
  await page.getByText('Ember ridge is on the desk as a trip.').waitFor();
  expect(await page.getByLabel('Trip name').inputValue()).toBe('Ember ridge');

  const before = host.given.asked.length;
  await page.goto(`${inject('url')}#/archive/published`);
  await page.reload();
  await page.getByRole('button', { name: /^Look into/ }).waitFor();
  expect(host.given.asked.length).toBe(before);
  await context.setOffline(true);
  await page.getByRole('button', { name: /^Look into/ }).click();
  await page.getByText('There is no network.').waitFor();
  await context.setOffline(false);
  await page.getByRole('button', { name: 'Try again' }).click();
  await listed(page, /Larch cut/).waitFor();
  await page.getByRole('button', { name: 'Another archive' }).click();
  await page.getByRole('button', { name: /^Forget/ }).click();
  expect(await page.getByRole('button', { name: /^Look into/ }).count()).toBe(0);
  expect(foreign.every((url) => url.startsWith(host.url))).toBe(true);
  expect(faults.filter(refused)).toEqual([]);
  await context.close();
});

/** Pages find the browser's own file system where a person would choose a folder: its handles are those of any folder. */
function choosesFolder(): void {
  Object.assign(globalThis, {
    showDirectoryPicker: async () =>
      (await navigator.storage.getDirectory()).getDirectoryHandle('Web', { create: true }),
  });
}

/** What lies in that folder, by name. */
async function inFolder(page: Page): Promise<Map<string, Uint8Array>> {
  const files = await page.evaluate(async () => {
    const folder = await (await navigator.storage.getDirectory()).getDirectoryHandle('Web');
    const all: [string, number[]][] = [];
    for await (const one of folder.values())
      if (one.kind === 'file')
        all.push([one.name, [...new Uint8Array(await (await one.getFile()).arrayBuffer())]]);
    return all;
  });
  return new Map(files.map(([name, bytes]) => [name, Uint8Array.from(bytes)]));
}

test('the archive goes into a folder, and comes back out of it where it was lost', async () => {
  await engine();
  const { context, page, faults } = await reader(WIDE, 'tracks');
  await page.addInitScript(choosesFolder);
  await page.reload();
  const copies = copiesToBytes([replicaToBytes(firstFiled(trackAt('a', 'Ember ridge', 10, 46), ANN))]);
  await page.getByLabel('A file from another leader').setInputFiles({
    name: 'x.rutline-tracks',
    mimeType: 'application/octet-stream',
    buffer: Buffer.from(copies),
  });
  await page.getByText('Ember ridge: new here.').waitFor();
  await page.getByRole('button', { name: 'Folder', exact: true }).click();
  await page.getByText(/^3 files stand in Web\/Rutline /).waitFor();

  await page.getByRole('link', { name: /^Ember ridge/ }).click();
  await page.getByRole('button', { name: 'Remove from this device' }).click();
  await page.getByText('Removed Ember ridge from this device.').waitFor();
  await page.getByRole('button', { name: 'Take in a folder' }).click();
  await page.getByRole('link', { name: /^Ember ridge/ }).waitFor();
  expect(faults).toEqual([]);
  await context.close();
});

test('a leader publishes into a folder, and again when there is more: readers of either find an archive that fits', async () => {
  await engine();
  const leader = await reader(WIDE, 'tracks');
  await leader.page.addInitScript(choosesFolder);
  await leader.page.reload();
  const { page: desk } = leader;
  const filed = async (id: string, name: string, lng: number) => {
    const copies = copiesToBytes([replicaToBytes(firstFiled(trackAt(id, name, lng, 46), ANN))]);
    await desk.getByLabel('A file from another leader').setInputFiles({
      name: 'x.rutline-tracks',
      mimeType: 'application/octet-stream',
      buffer: Buffer.from(copies),
    });
    await desk.getByText(`${name}: new here.`).waitFor();
  };
  const published = async (told: string) => {
    await desk.getByRole('button', { name: 'See what goes out' }).click();
    await desk.getByRole('button', { name: 'Write into a folder' }).click();
    await desk.getByText(told).waitFor();
    return inFolder(desk);
  };
  await filed('a', 'Ember ridge', 10);
  const first = await published('1 track is written into Web.');
  await filed('b', 'Larch cut', 10.05);
  const both = await published('2 tracks are written into Web.');
  expect(leader.foreign).toEqual([]);
  expect(leader.faults).toEqual([]);
  await leader.context.close();

  const records = (files: Map<string, Uint8Array>) =>
    [...files.keys()].filter((name) => /\.records$/.test(name)).sort();
  expect([...first.keys()].sort()).toEqual([...records(first), 'tracks.pmtiles']);
  // The records of the first time stay, for readers who have its index.
  expect([...both.keys()].sort()).toEqual([...records(both), 'tracks.pmtiles']);
  expect(records(both)).toHaveLength(2);
  expect(records(both)).toEqual(expect.arrayContaining(records(first)));
  expect(both.get(records(first)[0])).toEqual(first.get(records(first)[0]));

  for (const [name, bytes] of both) host.files.set(`club/${name}`, bytes);
  host.files.set('before/tracks.pmtiles', first.get('tracks.pmtiles')!);
  host.files.set(`before/${records(first)[0]}`, both.get(records(first)[0])!);
  const { context, page, faults } = await reader();
  await lookInto(page, `${host.url}club`);
  await listed(page, /Ember ridge/).waitFor();
  await page.getByText('2 tracks in the archive, 2 tracks in view.').waitFor();
  await listed(page, /Larch cut/).click();
  await page.getByRole('heading', { name: 'Larch cut' }).waitFor();
  const [{ obstacle }] = wholeTrack().surveyed;
  await page.getByRole('link', { name: new RegExp(obstacle.name) }).waitFor();
  expect(await page.getByText('ask Ann at the gate').count()).toBe(0);
  expect(host.given.asked.every((one) => / \S+ bytes=\d+-\d+$/.test(one))).toBe(true);
  await page.goto(`${inject('url')}#/archive/published`);
  await page.getByRole('button', { name: 'Another archive' }).click();
  await lookInto(page, `${host.url}before`);
  await page.getByText('1 track in the archive, 1 track in view.').waitFor();
  await listed(page, /Ember ridge/).click();
  await page.getByRole('heading', { name: 'Ember ridge' }).waitFor();
  expect(faults).toEqual([]);
  await context.close();
});

test('what is read does not grow with the number of tracks; wide areas are told in crowds that lead to every track', async () => {
  const many = (count: number) =>
    Array.from({ length: count }, (_, i) =>
      trackAt(`t${i}`, `Track ${i}`, 10 + (i % 40) * 0.11, 46 + Math.floor(i / 40) * 0.08),
    );
  publish(many(40), 'few/');
  publish(many(800), 'many/');
  const size = (folder: string) =>
    [...host.files].reduce((sum, [name, { length }]) => sum + (name.startsWith(folder) ? length : 0), 0);
  expect(size('many/')).toBeGreaterThan(10 * size('few/'));
  const cost = async (folder: string): Promise<number> => {
    const { context, page } = await reader(PHONE, 'published', 'coarse map');
    const begun = host.given.bytes;
    await lookInto(page, host.url + folder);
    await page.getByRole('heading', { name: 'Tracks near to each other' }).waitFor();
    expect(await findings(page)).toEqual([]);
    await closer(page, /^Track 0( and \d+ more)?$/);
    await listed(page, /^Track 0\b/)
      .first()
      .click();
    await page.getByRole('heading', { name: 'Track 0', exact: true }).waitFor();
    await context.close();
    return host.given.bytes - begun;
  };
  const [few, more] = [await cost('few/'), await cost('many/')];
  expect(more).toBeLessThan(2 * few);
  expect(more).toBeLessThan(size('many/') / 8);
});

test('what is wrong with an address, a host or a file is said, each in its own words', async () => {
  publish([trackAt('a', 'Ember ridge', 10, 46)]);
  const [index, records] = [
    'tracks.pmtiles',
    [...host.files.keys()].find((name) => name.endsWith('.records'))!,
  ];
  const whole = new Map(host.files);
  const { context, page, faults } = await reader();
  const says = async (text: string) => {
    await page.getByRole('alert').filter({ hasText: text }).waitFor();
    for (const [name, bytes] of whole) host.files.set(name, bytes);
    Object.assign(host.does, { ranges: true, cors: true, status: null });
  };
  const again = () => page.getByRole('button', { name: 'Try again' }).click();
  const damaged = (name: string, at: number) => {
    const bytes = whole.get(name)!;
    host.files.set(
      name,
      bytes.map((one, i) => (i === (at + bytes.length) % bytes.length ? one ^ 0x55 : one)),
    );
  };

  host.does.ranges = false;
  await lookInto(page, host.url);
  await says('The host gives out whole files only');
  host.does.cors = false;
  await again();
  await says('lets no page of another address read its files');
  host.files.delete(index);
  await again();
  await says('The host has no archive at this address.');
  host.files.set(index, new TextEncoder().encode('<!doctype html>'));
  await again();
  await says('but no published archive');
  host.does.status = 503;
  await again();
  await says('The host has too much to do');
  host.does.status = 302;
  await again();
  await says('The host sends on to another address.');
  await again();
  await listed(page, /Ember ridge/).waitFor();

  damaged(records, 60);
  await listed(page, /Ember ridge/).click();
  await says('The record of this track is damaged');
  host.files.delete(records);
  await again();
  await says('The archive was published anew');
  await again();
  await page.getByRole('heading', { name: 'Ember ridge' }).waitFor();

  await page.getByRole('button', { name: 'Another archive' }).click();
  damaged(index, -10);
  await lookInto(page, host.url);
  await says('The index of the archive is damaged.');
  const gone = await webHost();
  await gone.close();
  await page.getByRole('button', { name: 'Another archive' }).click();
  await lookInto(page, gone.url);
  await says('Nothing answers at this address.');
  expect(faults.filter(refused)).toEqual([]);
  await context.close();
});

test('whatever names a published archive holds, they stay text, and nothing is asked for elsewhere', async () => {
  const texts = Object.values(INJECTIONS);
  const tracks = texts.map((text, i) => {
    const track = trackAt(`${i}"><b id=${MARK}>`, text, 10 + (i % 6) * 0.02, 46 + Math.floor(i / 6) * 0.02);
    const surveyed = track.surveyed.map(({ obstacle, ...rest }) => ({
      ...rest,
      obstacle: {
        ...obstacle,
        name: text,
        preset: text,
        lines: obstacle.lines.map((line) => ({ ...line, name: text })),
      },
    }));
    return { ...track, area: text, track: track.track && { ...track.track, name: text }, surveyed };
  });
  publish([...tracks, trackAt('far', texts.join(' '), 40, 46)]);
  const { context, page, faults, foreign } = await reader(WIDE, 'published', 'coarse map');
  await lookInto(page, host.url);
  const seen: string[] = [];
  const look = async (where: string) => {
    for (const fault of await cameToBe(page)) seen.push(`${where}: ${fault}`);
    expect(await page.locator('body').textContent()).toContain(MARK);
  };
  await page.getByRole('heading', { name: 'Tracks near to each other' }).waitFor();
  await look('crowds');
  await closer(page, /and \d+ more$/);
  await look('list');
  const ids = await listed(page, /./).evaluateAll((links) => links.map((link) => link.getAttribute('href')!));
  expect(ids.length).toBe(texts.length);
  for (const id of ids.slice(0, 4)) {
    await page.evaluate((hash) => (location.hash = hash), id);
    await page.getByRole('button', { name: 'Take over into my archive' }).waitFor();
    await look(`sheet of ${id}`);
    await page.locator('article ol a').first().click();
    await page.getByRole('heading', { name: 'Condition, visit by visit' }).waitFor();
    await look(`obstacle of ${id}`);
  }
  await page.getByRole('link', { name: /The whole track/ }).click();
  await page.getByRole('button', { name: 'Take over into my archive' }).click();
  await page.getByRole('link', { name: 'See it there' }).click();
  await page.getByRole('button', { name: 'See what goes out' }).click();
  await look('what goes out');
  expect(seen).toEqual([]);
  expect(foreign.filter((url) => !url.startsWith(host.url))).toEqual([]);
  expect(faults).toEqual([]);
  await context.close();
});

/** Elements and attributes that came to be out of a text. */
function cameToBe(page: Page): Promise<string[]> {
  return page.evaluate(
    ({ MARK, ELSEWHERE }) => {
      const all = [...document.querySelectorAll('*')];
      const faults = all.flatMap((one) =>
        [...one.attributes].flatMap(({ name, value }) => {
          const runs = name.startsWith('on') || name === 'autofocus';
          const leads = /^(href|src|srcset|action|data|xlink:href)$/.test(name);
          const away = leads && (value.includes(ELSEWHERE) || /^\s*javascript:/i.test(value));
          return runs || away || (name === 'id' && value === MARK) ? [`${one.tagName} ${name}=${value}`] : [];
        }),
      );
      const scripts = all.filter((one) =>
        one.matches('script:not([src]), base, object, embed, foreignObject, iframe'),
      );
      return [
        ...faults,
        ...scripts.map((one) => one.outerHTML.slice(0, 200)),
        ...(document.title === MARK ? ['a script ran'] : []),
      ];
    },
    { MARK, ELSEWHERE },
  );
}
