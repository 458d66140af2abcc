import type * as Slim from '@automerge/automerge/slim';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test, vi } from 'vitest';
import { edited, firstFiled } from '../../src/archive/gradedReplica.ts';
import { parcelOf } from '../../src/archive/parcel.ts';
import { engineIsBroken, replicaFrom, replicaToBytes } from '../../src/archive/replica.ts';
import { HostFolder } from '../../src/cli/hostFolder.ts';
import { hostServer } from '../../src/cli/hostServer.ts';
import { ANN, BEN, engine, wholeTrack } from '../archive/replicas.ts';
import { give, hosting, met } from './hosted.ts';

const { engineDoes } = vi.hoisted(() => ({ engineDoes: { giveWay: false } }));

vi.mock('@automerge/automerge/slim', async (original) => {
  const whole = await original<typeof Slim>();
  const loadIncremental: typeof whole.loadIncremental = (...given) => {
    if (engineDoes.giveWay) throw new WebAssembly.RuntimeError('unreachable');
    return whole.loadIncremental(...given);
  };
  return { ...whole, loadIncremental };
});

test('changes that break the engine are not kept, nothing is taken in after them, and whoever runs the server is told', async () => {
  await engine();
  const host = await hosting();
  const first = replicaToBytes(firstFiled(wholeTrack(), ANN));
  await met(host, 'track', replicaFrom([first]), []);
  const file = () => readFileSync(join(host.folder, 'tracks', readdirSync(join(host.folder, 'tracks'))[0]));
  const before = file();
  const onBroken = vi.fn();
  const server = hostServer(await HostFolder.at(host.folder), () => Promise.resolve('write'), onBroken);
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.address() as { readonly port: number };
  const watched = { ...host, url: `http://127.0.0.1:${port}/` };
  const next = edited(replicaFrom([first])!, { ...wholeTrack(), note: 'closed' }, BEN);
  const parcel = parcelOf(next, [], []);
  const taking = { ...parcel, changes: new Uint8Array(0) };

  expect((await give(watched, host.key, 'track', taking)).status).toBe(200);
  expect(onBroken).not.toHaveBeenCalled();
  engineDoes.giveWay = true;
  expect((await give(watched, host.key, 'track', parcel)).status).toBe(500);
  await vi.waitFor(() => expect(onBroken).toHaveBeenCalled());
  expect(engineIsBroken()).toBe(true);
  engineDoes.giveWay = false;
  expect((await give(watched, host.key, 'track', parcel)).status).toBe(500);
  expect((await give(host, host.key, 'track', taking)).status).toBe(500);
  expect(file()).toEqual(before);
  server.closeAllConnections();
  server.close();
  await host.close();
});
