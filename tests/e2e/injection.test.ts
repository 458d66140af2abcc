import { strToU8, zipSync } from 'fflate';
import { readFileSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { beforeAll, expect, inject, test } from 'vitest';
import { copiesToBytes } from '../../src/archive/exchange.ts';
import { geoPackageOf } from '../../src/archive/geopackage/write.ts';
import { edited, firstFiled } from '../../src/archive/gradedReplica.ts';
import { xmlText } from '../../src/archive/out/xmlText.ts';
import { merged, replicaFrom, replicaToBytes } from '../../src/archive/replica.ts';
import { saying } from '../archive/hostileTracks.ts';
import { ANN, BEN, engine } from '../archive/replicas.ts';
import { ELSEWHERE, INJECTIONS, MARK } from '../injections.ts';
import type { Draws } from './desk.ts';
import { launch, newTrip, sitDown, WIDE } from './desk.ts';

interface Filed {
  name: string;
  note: string;
  track: { name: string; description: string };
  waypoints: Record<string, unknown>[];
  obstacles: {
    id: string;
    name: string;
    note: string;
    preset: string;
    lines: { name: string }[];
    photos: { caption: string }[];
  }[];
  vehicles: { id: string; name: string; driver: string }[];
}

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});

/** All of the texts in a few, each of them first in one: what breaks out hides what comes after it. */
const TEXTS = [0, 1, 2, 3].map((n) =>
  Object.values(INJECTIONS)
    .filter((_, i) => i % 4 === n)
    .join(' '),
);

/** A trip file with them in every place where a person can write. */
function tripFile(): string {
  const trip = JSON.parse(
    readFileSync(new URL('../archive/in/version-2.json', import.meta.url), 'utf8'),
  ) as Filed;
  const [all, [obstacle], [vehicle]] = [TEXTS.join(' '), trip.obstacles, trip.vehicles];
  return JSON.stringify({
    ...trip,
    name: all,
    note: all,
    track: { ...trip.track, name: all, description: all },
    waypoints: [{ name: all, description: all, lng: 0.0005, lat: 45.0005, elevationM: null }],
    obstacles: TEXTS.map((text, i) => ({
      ...obstacle,
      id: `${i}"><b id=${MARK}>`,
      name: text,
      note: text,
      preset: text,
      lines: obstacle.lines.map((line) => ({ ...line, name: text })),
      photos: obstacle.photos.map((photo) => ({ ...photo, id: `photo ${i}`, caption: text })),
    })),
    vehicles: TEXTS.slice(0, 2).map((text, i) => ({ ...vehicle, id: `v${i}`, name: text, driver: text })),
  });
}

/** Elements and attributes that came to be out of a text, on the page or in the frame that is printed. */
function cameToBe(page: Page): Promise<string[]> {
  return page.evaluate(
    ({ MARK, ELSEWHERE }) => {
      const frames = [...document.querySelectorAll('iframe')].flatMap((frame) => frame.contentDocument ?? []);
      const all = [document, ...frames].flatMap((one) => [...one.querySelectorAll('*')]);
      const faults = all.flatMap((one) =>
        [...one.attributes].flatMap(({ name, value }) => {
          const runs = name.startsWith('on') || name === 'autofocus';
          const leads = /^(href|src|srcset|action|data|xlink:href)$/.test(name);
          const away = leads && (value.includes(ELSEWHERE) || /^\s*javascript:/i.test(value));
          return runs ||
            away ||
            (name === 'id' && value === MARK) ||
            (name === 'style' && value.includes('url('))
            ? [`${one.tagName} ${name}=${value}`]
            : [];
        }),
      );
      const scripts = all.filter((one) =>
        one.matches('script:not([src]), base, object, embed, foreignObject, iframe iframe'),
      );
      const titles = [document, ...frames].filter((one) => one.title === MARK).map(() => 'a script ran');
      return [...faults, ...scripts.map((one) => one.outerHTML.slice(0, 200)), ...titles];
    },
    { MARK, ELSEWHERE },
  );
}

/** A desk at the archive that prints nothing, and what was asked of hosts or forbidden there. */
async function watched(draws: Draws) {
  const { context, page, faults } = await sitDown(browser, 'about:blank', WIDE, { draws });
  const asked: string[] = [];
  context.on('request', (request) => asked.push(request.url()));
  await page.addInitScript(() => {
    window.print = () => undefined;
    document.addEventListener('securitypolicyviolation', ({ violatedDirective, sample }) =>
      console.error(`forbidden: ${violatedDirective} ${sample}`),
    );
  });
  const seen: string[] = [];
  const look = async (where: string): Promise<void> => {
    await expect.poll(() => page.locator('body').textContent(), { message: where }).toContain(MARK);
    for (const fault of await cameToBe(page)) seen.push(`${where}: ${fault}`);
  };
  /** Nothing came out of a text, and nothing was asked for elsewhere. */
  const end = async (): Promise<void> => {
    expect(seen).toEqual([]);
    expect(asked.filter((url) => !url.startsWith(inject('url')) && !/^(data|blob|about):/.test(url))).toEqual(
      [],
    );
    expect(faults).toEqual([]);
    await context.close();
  };
  await page.goto(`${inject('url')}#/archive`);
  return { page, look, end };
}

async function bring(page: Page, name: string, bytes: Uint8Array | string): Promise<void> {
  await page
    .locator('input[type=file]')
    .first()
    .setInputFiles({ name, mimeType: 'application/octet-stream', buffer: Buffer.from(bytes) });
}

async function go(page: Page, ...place: string[]): Promise<void> {
  await page.evaluate((hash) => (location.hash = hash), `#/${place.map(encodeURIComponent).join('/')}`);
}

test('whatever is written into a trip stays text on every screen and on paper, and nothing is asked for elsewhere', async () => {
  const { page, look, end } = await watched('coarse map');
  await newTrip(page);
  await bring(page, `${MARK}.json`, tripFile());
  const name = page.getByLabel('Trip name');
  await expect.poll(() => name.inputValue()).toContain('<script>');
  const [first] = TEXTS;
  for (const place of [
    'scout/track',
    'scout/convoy',
    'scout/convoy/v0',
    'scout/obstacles',
    ...[0, 1, 2, 3].map((i) => `scout/obstacles/${encodeURIComponent(`${i}"><b id=${MARK}>`)}`),
    `workbench/${encodeURIComponent(`0"><b id=${MARK}>`)}/v0/main`,
    'brief',
    `brief/${encodeURIComponent(`0"><b id=${MARK}>`)}/v0`,
    'archive',
  ]) {
    await page.evaluate((hash) => (location.hash = hash), `#/${place}`);
    await page.waitForTimeout(150);
    await look(place);
  }
  expect(first.length).toBeGreaterThan(100);
  await page.evaluate(() => (location.hash = '#/brief'));
  await page.locator('td a').first().waitFor();
  const print = page.getByRole('button', { name: 'Print briefing and cards', exact: true });
  await expect.poll(() => print.isEnabled(), { timeout: 30_000 }).toBe(true);
  await print.click();
  await page.frameLocator('iframe').locator('.card').last().waitFor({ state: 'attached' });
  await look('paper');
  await end();
});

test('whatever names come in by files of the archive, they stay text on its screens, and so do those of files', async () => {
  await engine();
  const { page, look, end } = await watched('no map');
  await newTrip(page);
  await bring(page, `${MARK}.json`, tripFile());
  await page.getByText(/^Opened/).waitFor();

  // A recording and a picture under such names, at a bypass and an obstacle.
  await go(page, 'scout', 'obstacles', `0"><b id=${MARK}>`);
  await page.evaluate(() => document.querySelectorAll('details').forEach((one) => (one.open = true)));
  const buffer = Buffer.from(gpxFile());
  await page
    .getByLabel(/^GPX file of/)
    .first()
    .setInputFiles({ name: NAMES[0], mimeType: 'application/gpx+xml', buffer });
  await page.getByRole('heading', { name: 'Which track?' }).waitFor();
  await look('tracks of a bypass');
  await page.getByRole('dialog').getByRole('listitem').first().getByRole('button').click();
  await page.getByText(/^Took the path of/).waitFor();
  await look('a bypass');
  await page
    .getByLabel('Photos from files')
    .first()
    .setInputFiles(NAMES.map((name) => ({ name, mimeType: 'image/jpeg', buffer: Buffer.from(name) })));
  await page
    .getByText(/is no picture/)
    .first()
    .waitFor();
  await look('a photo');

  // Tracks on which two people of such names disagree, with their visits, outcomes and history.
  const copies = TEXTS.map((text, i) => {
    const first = firstFiled(saying('before', ids(i)), { ...ANN, by: text });
    const other = edited(replicaFrom([replicaToBytes(first)])!, saying(`${text}!`, ids(i)), {
      ...BEN,
      by: text,
    });
    return replicaToBytes(merged(edited(first, saying(text, ids(i)), { ...ANN, by: text }), other));
  });
  await go(page, 'archive');
  await page.getByRole('button', { name: 'New trip', exact: true }).waitFor();
  await bring(page, `${NAMES[1]}.rutline-tracks`, copiesToBytes(copies));
  const list = page.getByRole('list', { name: 'Graded tracks' });
  await expect.poll(() => list.getByRole('link').count()).toBe(TEXTS.length);
  await look('list');
  for (const [i] of TEXTS.entries()) {
    await go(page, 'archive', 'tracks', ids(i));
    await page.getByRole('region', { name: 'Values to choose' }).waitFor();
    await page.getByText('History', { exact: true }).click();
    await page.locator('details[open] > ol > li').first().waitFor();
    await look(`sheet ${i}`);
    await page.locator('article ol a').first().click();
    await page.getByRole('heading', { name: 'Condition, visit by visit' }).waitFor();
    await look(`obstacle ${i}`);
  }
  await go(page, 'archive', 'agreement');
  await page.getByRole('heading', { name: 'Said and done' }).waitFor();
  await page.getByRole('table').waitFor();
  await look('said and done');

  // From other programs: names of layers, files and lines, and what is wrong with them.
  await go(page, 'archive', 'tracks');
  await list.waitFor();
  const archive = await geoPackageOf(
    TEXTS.map((text, i) => saying(text, `packed ${ids(i)}`)),
    0,
  );
  await bring(page, `${NAMES[2]}.gpkg`, archive);
  await page.getByText(`${TEXTS.length} tracks in the archive.`).waitFor();
  await look('GeoPackage');
  const files = Object.fromEntries(
    NAMES.map((name, i) => [`${i} ${name.replaceAll('\\', '')}.json`, strToU8(name)]),
  );
  await bring(page, `${NAMES[3]}.zip`, zipSync({ ...files, [`${MARK}<img src=x>.gpx`]: strToU8(gpxFile()) }));
  await page.getByRole('alert').filter({ hasText: MARK }).waitFor();
  await look('zip');
  const features = TEXTS.slice(1).map((text, i) => ({
    type: 'Feature',
    properties: { name: text, description: text },
    geometry: {
      type: 'LineString',
      coordinates: [
        [8 + i, 50],
        [8.1 + i, 50.1],
      ],
    },
  }));
  await bring(page, `${NAMES[0]}.geojson`, JSON.stringify({ type: 'FeatureCollection', features }));
  await page.getByText(`${features.length} tracks in the archive.`).waitFor();
  await look('GeoJSON');

  // Where the trip is filed, and what its vehicles did.
  await go(page, 'archive');
  await page.getByRole('button', { name: 'File into the archive' }).first().click();
  await page.getByRole('combobox', { name: 'It belongs to' }).waitFor();
  await look('file proposals');
  await page.getByLabel('Measured by').fill(NAMES[0]);
  await page.getByRole('button', { name: 'File it' }).click();
  await page.getByText(/^Filed into/).waitFor();
  await look('filed');
  await go(page, 'outcomes', `0"><b id=${MARK}>`);
  await page.locator('li', { hasText: 'Said:' }).first().waitFor();
  await look('outcomes');
  await end();
});

/** What files may be called where they come from a disk. */
const NAMES = TEXTS.map((text) => text.replaceAll(/[\0/]/g, ' ').slice(0, 200));

function ids(i: number): string {
  return `${i}"><b id=${MARK}>`;
}

/** Two recordings and a waypoint of such names. */
function gpxFile(): string {
  const tracks = TEXTS.map(
    (text, i) =>
      `<trk><name>${xmlText(text)}</name><desc>${xmlText(text)}</desc><trkseg><trkpt lat="45.0${i}" lon="0.1"/><trkpt lat="45.0${i}" lon="0.2"/></trkseg></trk>`,
  );
  const waypoint = `<wpt lat="45" lon="0.1"><name>${xmlText(TEXTS[0])}</name></wpt>`;
  return `<gpx version="1.1" creator="t" xmlns="http://www.topografix.com/GPX/1/1">${waypoint}${tracks.join('')}</gpx>`;
}
