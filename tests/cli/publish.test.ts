import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { RangeResponse, Source } from 'pmtiles';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { copiesToBytes } from '../../src/archive/exchange.ts';
import { geoPackageOf } from '../../src/archive/geopackage/write.ts';
import { firstFiled } from '../../src/archive/gradedReplica.ts';
import { lookInto } from '../../src/archive/publish/lookInto.ts';
import { replicaToBytes } from '../../src/archive/replica.ts';
import { run } from '../../src/cli/run.ts';
import { ANN, engine, wholeTrack } from '../archive/replicas.ts';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'rutline-publish-'));
  vi.spyOn(console, 'log').mockImplementation(() => undefined);
  vi.spyOn(console, 'error').mockImplementation(() => undefined);
});
afterEach(() => {
  vi.restoreAllMocks();
  rmSync(folder, { recursive: true });
});

function served(name: string): Source {
  const bytes = readFileSync(join(folder, 'out', name));
  return {
    getKey: () => name,
    getBytes: (at, length): Promise<RangeResponse> =>
      Promise.resolve({ data: Uint8Array.from(bytes.subarray(at, at + length)).buffer }),
  };
}

const copies = async () => {
  await engine();
  return copiesToBytes([replicaToBytes(firstFiled(wholeTrack(), ANN))]);
};
const geoPackage = () => geoPackageOf([wholeTrack()], 0);

test.each([
  ['a.rutline-tracks', copies],
  ['a.gpkg', geoPackage],
])('%s is published, and a reader finds and takes its track', async (name, bytes) => {
  writeFileSync(join(folder, name), await bytes());
  expect(await run(['publish', join(folder, name), '--out', join(folder, 'out')])).toBe(0);
  const [records, index] = readdirSync(join(folder, 'out')).sort();
  expect([records, index]).toEqual([expect.stringMatching(/^[0-9a-f]{32}\.records$/), 'tracks.pmtiles']);
  const { lng, lat } = wholeTrack().surveyed[0].obstacle;
  const published = await lookInto(served(index), served);
  const found = await published.inBox([lng - 0.01, lat - 0.01, lng + 0.01, lat + 0.01]);
  expect(found.rows).toMatchObject([{ name: wholeTrack().name, obstacleCount: 1 }]);
  const { value, problems } = await published.take(found.rows[0]);
  expect(problems).toEqual([]);
  expect(value!.surveyed[0].visits[0]).toMatchObject({ by: '', note: '' });
});

test('what cannot be read, and a command without a folder, publish nothing', async () => {
  writeFileSync(join(folder, 'x'), 'nothing of ours');
  expect(await run(['publish', join(folder, 'x'), '--out', join(folder, 'out')])).toBe(1);
  expect(await run(['publish', join(folder, 'missing'), '--out', join(folder, 'out')])).toBe(1);
  expect(await run(['publish', join(folder, 'x')])).toBe(2);
  expect(readdirSync(folder)).toEqual(['x']);
});
