import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { RangeResponse, Source } from 'pmtiles';
import { edited, firstFiled } from '../../src/archive/gradedReplica.ts';
import type { Parcel } from '../../src/archive/parcel.ts';
import { parcelOf } from '../../src/archive/parcel.ts';
import { lookInto } from '../../src/archive/publish/lookInto.ts';
import type { Box } from '../../src/archive/trackRow.ts';
import { trackRowOf } from '../../src/archive/trackRow.ts';
import { Publishing } from '../../src/archive/publish/publishing.ts';
import { free, headsOf, replicaFrom, replicaToBytes, startReplicas } from '../../src/archive/replica.ts';
import { engineBytes } from '../../src/cli/engine.ts';
import { HostFolder } from '../../src/cli/hostFolder.ts';
import { trackNumbered } from './archivePage/tracks.ts';
import type { Table } from './bench.ts';
import { median } from './median.ts';

const COUNTS = [1_000, 10_000];
const EXCHANGED = 200;
const AUTHOR = { by: 'bench', atMs: 1.7e12 };

/** What a club's host and a published archive cost, by the unit: processor time, bytes and memory, which add up. */
export async function* federationBench(): AsyncGenerator<Table> {
  yield await publishing();
  yield await exchanging();
}

class Served implements Source {
  readonly reads: number[] = [];
  constructor(readonly bytes: Uint8Array<ArrayBuffer>) {}

  getKey = () => 'served';

  getBytes(at: number, length: number): Promise<RangeResponse> {
    const data = this.bytes.slice(at, at + length).buffer;
    this.reads.push(data.byteLength);
    return Promise.resolve({ data });
  }
}

async function publishing(): Promise<Table> {
  const rows: string[][] = [];
  for (const count of COUNTS) {
    const began = process.cpuUsage();
    const tracks = Array.from({ length: count }, (_, i) => trackNumbered(i));
    const publishing = new Publishing();
    tracks.forEach((track) => publishing.add(track));
    const { index, records } = publishing.files();
    const spent = spentMs(began);
    const some = tracks.filter((_, i) => i % (count / 100) === 0);
    const asked = await Promise.all(some.map((track) => ask(index.pieces[0], trackRowOf(track, 0, 0).box!)));
    rows.push([
      `${count}, ${10 * count} obstacles`,
      `${Math.round(index.size / count)} + ${Math.round(records.size / count)} bytes`,
      `${(spent / count).toFixed(1)} ms`,
      `${Math.round(median(asked.map(({ read }) => read)))} bytes in ${median(asked.map(({ requests }) => requests))} requests`,
    ]);
  }
  return {
    title: 'A published archive',
    columns: ['tracks', 'index and record of a track', 'to publish a track', 'first look into one area'],
    rows,
    notes: ['Of the bytes of a first look, 16,384 are the beginning of the index, whatever is asked.'],
  };
}

/** Opens the archive anew and asks for the area of one track. */
async function ask(index: Uint8Array<ArrayBuffer>, box: Box) {
  const served = new Served(index);
  await (await lookInto(served, () => served)).inBox(box);
  return { read: served.reads.reduce((sum, one) => sum + one, 0), requests: served.reads.length };
}

async function exchanging(): Promise<Table> {
  await startReplicas(engineBytes);
  const folder = mkdtempSync(join(tmpdir(), 'rutline-bench-'));
  try {
    const host = await HostFolder.at(folder);
    const filed = Array.from({ length: EXCHANGED }, (_, i) => {
      const graded = trackNumbered(i);
      return { graded, bytes: replicaToBytes(firstFiled(graded, AUTHOR)) };
    });
    const firsts = filed.map(({ bytes }) => replicaFrom([bytes])!);
    const wholes = firsts.map((replica) => parcelOf(replica, [], []));
    const laters = firsts.map((replica, i) => {
      const base = headsOf(replica);
      return parcelOf(edited(replica, { ...filed[i].graded, note: 'later' }, AUTHOR), base, base);
    });
    const rssBefore = process.memoryUsage().rss;
    const held = filed.flatMap(({ bytes }) => [replicaFrom([bytes])!, replicaFrom([bytes])!]);
    const rss = (process.memoryUsage().rss - rssBefore) / held.length;
    held.forEach(free);
    const spent = async (parcels: readonly Parcel[]) => {
      const began = process.cpuUsage();
      for (const [i, parcel] of parcels.entries()) await host.exchange(filed[i].graded.id, parcel);
      return spentMs(began) / parcels.length;
    };
    const row = async (name: string, parcels: readonly Parcel[]) => [
      name,
      `${Math.round(median(parcels.map(({ changes }) => changes.length)))} bytes`,
      `${(await spent(parcels)).toFixed(1)} ms`,
    ];
    return {
      title: 'A club’s host',
      columns: ['one track of ten obstacles', 'given', 'processor time of the host'],
      rows: [await row('first given, whole', wholes), await row('one value changed', laters)],
      notes: [`A replica that is open takes ${Math.round(rss / 1024)} KiB; the host opens one at a time.`],
    };
  } finally {
    rmSync(folder, { recursive: true });
  }
}

function spentMs(began: NodeJS.CpuUsage): number {
  const { user, system } = process.cpuUsage(began);
  return (user + system) / 1000;
}
