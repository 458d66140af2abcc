import { readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import { join } from 'node:path';
import { afterEach, beforeAll, beforeEach, expect, test, vi } from 'vitest';
import { edited, firstFiled } from '../../src/archive/gradedReplica.ts';
import { ARCHIVE_LIMITS } from '../../src/archive/limits.ts';
import { parcelOf, parcelToBytes } from '../../src/archive/parcel.ts';
import { emptyReplica, headsOf, put, replicaFrom, replicaToBytes } from '../../src/archive/replica.ts';
import { HostFolder } from '../../src/cli/hostFolder.ts';
import { run } from '../../src/cli/run.ts';
import { ANN, BEN, engine, read, told, wholeTrack } from '../archive/replicas.ts';
import type { Hosting } from './hosted.ts';
import { ask, give, hosting, listed, met } from './hosted.ts';

let host: Hosting;
let whole: Uint8Array;
beforeAll(async () => {
  await engine();
  whole = replicaToBytes(firstFiled(wholeTrack(), ANN));
});
beforeEach(async () => {
  host = await hosting();
});
afterEach(() => host.close());

const first = () => replicaFrom([whole])!;
const nothing = { heads: [], base: [], changes: new Uint8Array(0) };
const files = () => readdirSync(join(host.folder, 'tracks'));

test('without a right key nothing is told or taken', async () => {
  await met(host, 'track', first(), []);
  const parcel = parcelToBytes(parcelOf(first(), [], []));
  for (const key of [null, 'wrong', host.key.slice(1), `${host.key}x`]) {
    for (const response of [
      await ask(host, key, 'tracks'),
      await ask(host, key, 'tracks/track', parcel),
      await ask(host, key, 'tracks/another', parcel),
    ]) {
      expect(response.status).toBe(401);
      expect(await response.json()).toEqual({ refused: 'key' });
    }
  }
  expect([...(await listed(host)).keys()]).toEqual(['track']);
});

test('a request without a right key is answered before its body has come', async () => {
  const status = await new Promise((resolve, reject) => {
    const asking = request(`${host.url}tracks/track`, {
      method: 'POST',
      headers: { Authorization: 'Bearer wrong', 'Content-Length': 1000 },
    });
    asking.on('response', (response) => {
      resolve(response.statusCode);
      asking.destroy();
    });
    asking.on('error', reject);
    asking.write('only the beginning');
  });
  expect(status).toBe(401);
});

test('keys are kept as hashes, readable by nobody else', () => {
  const text = readFileSync(join(host.folder, 'keys.json'), 'utf8');
  expect(JSON.parse(text)).toMatchObject([
    { name: 'Ann', may: 'write' },
    { name: 'Ben', may: 'read' },
  ]);
  expect(text).not.toContain(host.key);
  expect(text).not.toContain(host.readKey);
  expect(statSync(join(host.folder, 'keys.json')).mode & 0o077).toBe(0);
});

test('a key that is taken out of the file ends at once; a file that is no list lets nobody in', async () => {
  const path = join(host.folder, 'keys.json');
  const [ann] = JSON.parse(readFileSync(path, 'utf8')) as unknown[];
  writeFileSync(path, JSON.stringify([ann]));
  expect((await ask(host, host.readKey, 'tracks')).status).toBe(401);
  expect((await ask(host, host.key, 'tracks')).status).toBe(200);
  const error = vi.spyOn(console, 'error').mockImplementation(() => undefined);
  writeFileSync(path, '{"hash": ""}');
  expect((await ask(host, host.key, 'tracks')).status).toBe(500);
  error.mockRestore();
});

test('a key that may only take gets everything and gives nothing', async () => {
  await met(host, 'track', first(), []);
  const changed = edited(first(), { ...wholeTrack(), note: 'Ben' }, BEN);
  const before = await listed(host);
  expect(await give(host, host.readKey, 'track', parcelOf(changed, [], []))).toMatchObject({ status: 403 });
  expect(await listed(host)).toEqual(before);
  const { parcel } = await give(host, host.readKey, 'track', nothing);
  expect(told(replicaFrom([parcel!.changes])!)).toEqual(told(first()));
});

test('what was exchanged is there after the server was started again, whatever was left unfinished', async () => {
  const mine = await met(host, 'track', first(), []);
  const [name] = files();
  writeFileSync(join(host.folder, 'tracks', `${name}.unfinished`), 'half');
  writeFileSync(join(host.folder, 'tracks', 'other.track'), 'not one of ours');
  const again = await HostFolder.at(host.folder);
  expect(again.list()).toEqual([{ id: 'track', heads: headsOf(mine) }]);
  const parcel = await again.exchange('track', nothing);
  expect(parcel).toMatchObject({ heads: headsOf(mine) });
});

test('a track that is damaged on the disk is not written over', async () => {
  await met(host, 'track', first(), []);
  const path = join(host.folder, 'tracks', files()[0]);
  const bytes = readFileSync(path);
  bytes.fill(7, bytes.length - 40);
  writeFileSync(path, bytes);
  expect((await give(host, host.key, 'track', parcelOf(first(), [], []))).status).toBe(500);
  expect(readFileSync(path).equals(bytes)).toBe(true);
});

test('only the later changes go over the wire, however long both have diverged', async () => {
  const base = headsOf(await met(host, 'track', first(), []));
  const ben = edited(first(), { ...wholeTrack(), note: 'Ben' }, BEN);
  await met(host, 'track', ben, base);
  const ann = edited(first(), { ...wholeTrack(), note: 'Ann' }, ANN);
  const offer = parcelOf(ann, (await listed(host)).get('track')!, base);
  expect(offer.changes.length).toBeLessThan(whole.length / 4);
  const { parcel } = await give(host, host.key, 'track', offer);
  expect(parcel!.changes.length).toBeLessThan(whole.length / 4);
});

test.each([
  ['another track', 'another', () => parcelOf(first(), [], []), 422],
  [
    'no graded track',
    'track',
    () => parcelOf(put(emptyReplica(), new Map([['x', '1']]), ANN).replica, [], []),
    422,
  ],
  ['what builds on something that the server lacks', 'track', () => later(), 409],
  [
    'damaged changes',
    'track',
    () => ({ ...parcelOf(first(), [], []), changes: Uint8Array.of(1, 2, 3) }),
    409,
  ],
  ['a question for what is not there', 'track', () => nothing, 404],
])('%s is refused, and nothing is kept', async (_, id, parcel, status) => {
  expect((await give(host, host.key, id, parcel())).status).toBe(status);
  expect(files()).toEqual([]);
});

function later() {
  const replica = first();
  const base = headsOf(replica);
  return parcelOf(edited(replica, { ...wholeTrack(), note: 'later' }, ANN), base, base);
}

test.each([
  ['GET', 'keys.json', 404],
  ['GET', 'tracks/..%2Fkeys.json', 404],
  ['GET', '../keys.json', 404],
  ['POST', 'tracks/..%2F..%2Fkeys', 400],
  ['POST', `tracks/${'x'.repeat(201)}`, 404],
  ['POST', 'tracks/%E0%A4%A', 404],
  ['POST', 'tracks/track', 400],
])('%s %s is answered with %i', async (method, path, status) => {
  const response = await ask(host, host.key, path, method === 'POST' ? Uint8Array.of(123, 10) : undefined);
  expect(response.status).toBe(status);
});

test('what is too large is refused before it is read', async () => {
  const status = await new Promise((resolve, reject) => {
    const asking = request(`${host.url}tracks/track`, {
      method: 'POST',
      headers: {
        Authorization: `Bearer ${host.key}`,
        'Content-Length': ARCHIVE_LIMITS.replicaBytes + 1,
      },
    });
    asking.on('response', (response) => {
      resolve(response.statusCode);
      asking.destroy();
    });
    asking.on('error', reject);
    asking.write('x');
  });
  expect(status).toBe(413);
});

test('a page of any origin may ask, with its key and nothing else', async () => {
  const response = await fetch(`${host.url}tracks`, { method: 'OPTIONS' });
  expect(response.status).toBe(204);
  expect(response.headers.get('access-control-allow-origin')).toBe('*');
  expect(response.headers.get('access-control-allow-headers')).toContain('Authorization');
  expect(response.headers.get('access-control-allow-credentials')).toBeNull();
});

test('the command makes a key that the server then knows', async () => {
  const log = vi.spyOn(console, 'log').mockImplementation(() => undefined);
  const error = vi.spyOn(console, 'error').mockImplementation(() => undefined);
  expect(await run(['host', '--folder', host.folder, '--new-key', 'Cleo', '--read-only'])).toBe(0);
  const key = String(log.mock.calls[0][0]);
  expect(await run(['host', '--port', '1'])).toBe(2);
  expect(await run(['host', '--folder', host.folder, '--port', 'x'])).toBe(2);
  log.mockRestore();
  error.mockRestore();
  expect(await (await ask(host, key, 'tracks')).json()).toMatchObject({ may: 'read' });
});

test('an empty copy asks for everything and gets it', async () => {
  await met(host, 'track', first(), []);
  expect(read(await met(host, 'track', emptyReplica(), [])).name).toBe(wholeTrack().name);
});
