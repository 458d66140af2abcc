import { createServer } from 'node:http';
import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest';
import { fetchRange } from '../../src/workers/range.ts';
import type { WebHost } from '../e2e/webHost.ts';
import { webHost } from '../e2e/webHost.ts';

const TILES = new TextEncoder().encode(`PMTiles\u0003${'0123456789'.repeat(10)}`);
const PAGE = new TextEncoder().encode('<!doctype html><title>x</title>');

let host: WebHost;
beforeAll(async () => (host = await webHost({ 'tracks.pmtiles': TILES, 'index.html': PAGE })));
beforeEach(() => Object.assign(host.does, { ranges: true, cors: true, status: null }));
afterAll(() => host.close());

function get(at: number, length: number, path = 'tracks.pmtiles') {
  return fetchRange(new URL(path, host.url), at, length, new AbortController().signal);
}

test('a range comes as it was asked for, and at the end of the file what there is', async () => {
  expect(await get(8, 10)).toMatchObject({ data: new TextEncoder().encode('0123456789').buffer });
  const rest = await get(100, 50);
  expect(typeof rest === 'object' && rest.data.byteLength).toBe(8);
});

test('a host that gives whole files is told from one that has something else there', async () => {
  host.does.ranges = false;
  expect(await get(0, 16)).toBe('wholeFiles');
  expect(await get(8, 16)).toBe('wholeFiles');
  expect(await get(0, 16, 'index.html')).toBe('noArchive');
});

test.each([
  [401, 'refused'],
  [403, 'refused'],
  [418, 'refused'],
  [302, 'moved'],
  [429, 'busy'],
  [500, 'busy'],
  [503, 'busy'],
  [404, 'nothingThere'],
  [410, 'nothingThere'],
])('status %i', async (status, word) => {
  host.does.status = status;
  expect(await get(0, 16)).toBe(word);
});

test('a file that ends before the range is not what its index says', async () => {
  expect(await get(5_000, 16)).toBe('brokenIndex');
});

test('where nothing listens, nothing answers', async () => {
  const gone = await webHost();
  await gone.close();
  const signal = new AbortController().signal;
  expect(await fetchRange(new URL(gone.url), 0, 16, signal)).toBe('unreachable');
});

test('of a host that sends without end no more is taken than was asked for', async () => {
  const endless = createServer((_request, response) => {
    response.writeHead(206);
    const send = () => {
      while (response.write(new Uint8Array(4096)));
    };
    response.on('drain', send);
    send();
  });
  await new Promise<void>((resolve) => endless.listen(0, '127.0.0.1', resolve));
  const { port } = endless.address() as { port: number };
  const signal = new AbortController().signal;
  expect(await fetchRange(new URL(`http://127.0.0.1:${port}/`), 0, 16, signal)).toBe('wholeFiles');
  endless.closeAllConnections();
  endless.close();
});
