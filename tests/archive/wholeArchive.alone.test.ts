import 'fake-indexeddb/auto';
import { beforeAll, expect, test } from 'vitest';
import { copiesFrom, partsOfCopies } from '../../src/archive/exchange.ts';
import * as store from '../../src/archive/gradedStore.ts';
import { wholeArchive } from '../../src/archive/wholeArchive.ts';
import { gradedOf } from '../../src/archive/gradedReplica.ts';
import { ANN, BEN, canonical, engine, TRIP } from './replicas.ts';

beforeAll(engine);

const IDS = ['a', 'b', 'c'];

async function partsOf(file: Blob, bytes: number): Promise<Uint8Array[]> {
  const parts: Uint8Array[] = [];
  for await (const part of partsOfCopies(file, bytes)) if (part instanceof Uint8Array) parts.push(part);
  return parts;
}

test('the whole archive is a file of copies with every history, and can be taken in piece by piece', async () => {
  for (const id of IDS) {
    await store.file({ ...TRIP, id }, ANN);
    const { graded, heads } = (await store.take(id)).value!;
    expect(await store.edit({ ...graded, note: `closed in May, ${id}` }, heads, BEN)).toBeNull();
  }
  const { value } = await wholeArchive();
  const [one] = await partsOf(value!, Infinity);
  const parts = await partsOf(value!, 1);
  expect(parts).toHaveLength(IDS.length);
  for (const bytes of [[one], parts]) {
    const copies = bytes.flatMap((part) => copiesFrom(part).value!);
    expect(copies.map(({ id }) => id)).toEqual(IDS);
    for (const { id, replica } of copies)
      expect(canonical(gradedOf(replica).value!)).toEqual(canonical((await store.take(id)).value!.graded));
  }
});

test('of one that was cut off, the whole tracks are taken in and the rest is said', async () => {
  const { value } = await wholeArchive();
  const parts = await partsOf(value!.slice(0, value!.size - 9), 1);
  const read = parts.map((part) => copiesFrom(part));
  expect(read.flatMap(({ value: copies }) => copies ?? []).map(({ id }) => id)).toEqual(['a', 'b']);
  expect(read.flatMap(({ problems }) => problems)).toHaveLength(1);
  expect(await partsOf(new Blob(['something else']), 1_000)).toHaveLength(1);
});
