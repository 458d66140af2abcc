import { mkdtempSync, rmSync } from 'node:fs';
import type { Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Parcel } from '../../src/archive/parcel.ts';
import { parcelFrom, parcelOf, parcelToBytes, unpacked } from '../../src/archive/parcel.ts';
import type { Heads, Replica } from '../../src/archive/replica.ts';
import { emptyReplica } from '../../src/archive/replica.ts';
import { HostFolder } from '../../src/cli/hostFolder.ts';
import { mayOf, newKey } from '../../src/cli/hostKeys.ts';
import { hostServer } from '../../src/cli/hostServer.ts';

/** A server in this process, on a folder of its own. */
export interface Hosting {
  readonly folder: string;
  readonly url: string;
  /** May give and take; may only take. */
  readonly key: string;
  readonly readKey: string;
  readonly close: () => Promise<void>;
}

/** Begins on an empty folder, or again on one that was left. */
export async function hosting(left: string | null = null): Promise<Hosting> {
  const folder = left ?? mkdtempSync(join(tmpdir(), 'rutline-host-'));
  const key = await newKey(folder, 'Ann', 'write', 0);
  const readKey = await newKey(folder, 'Ben', 'read', 0);
  const server: Server = hostServer(await HostFolder.at(folder), (given) => mayOf(folder, given));
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.address() as AddressInfo;
  const close = async () => {
    server.closeAllConnections();
    await new Promise((resolve) => server.close(resolve));
    rmSync(folder, { recursive: true });
  };
  return { folder, url: `http://127.0.0.1:${port}/`, key, readKey, close };
}

export function ask({ url }: Hosting, key: string | null, path: string, body?: Uint8Array<ArrayBuffer>) {
  return fetch(url + path, {
    method: body ? 'POST' : 'GET',
    headers: key === null ? {} : { Authorization: `Bearer ${key}` },
    body,
  });
}

/** What the server has, by the track's id. */
export async function listed(host: Hosting, key = host.key): Promise<ReadonlyMap<string, Heads>> {
  const { tracks } = (await (await ask(host, key, 'tracks')).json()) as {
    tracks: { id: string; heads: Heads }[];
  };
  return new Map(tracks.map(({ id, heads }) => [id, heads]));
}

export async function give(host: Hosting, key: string, id: string, parcel: Parcel) {
  const response = await ask(host, key, `tracks/${encodeURIComponent(id)}`, parcelToBytes(parcel));
  const bytes = new Uint8Array(await response.arrayBuffer());
  return { status: response.status, parcel: response.ok ? parcelFrom(bytes)! : null };
}

/** One exchange of one track, as a device does it. */
export async function met(host: Hosting, id: string, replica: Replica | null, base: Heads): Promise<Replica> {
  const mine = replica ?? emptyReplica();
  const offer = parcelOf(mine, (await listed(host)).get(id) ?? [], base);
  const { status, parcel } = await give(host, host.key, id, offer);
  if (parcel === null) throw new Error(`the server said ${status}`);
  return unpacked(mine, parcel)!;
}
