import 'fake-indexeddb/auto';
import { beforeAll, expect, test, vi } from 'vitest';
import { gradedRecord } from '../../src/archive/gradedRecord.ts';
import * as store from '../../src/archive/gradedStore.ts';
import { whoGoes } from '../../src/workers/whoGoes.ts';
import { ANN, engine, TRIP, wholeTrack } from '../archive/replicas.ts';

vi.mock('../../src/workers/archive.ts', async () => {
  const { ARCHIVE } = await import('../../src/workers/archiveWork.ts');
  return { placesOfTracks: ARCHIVE.places };
});

vi.mock('../../src/workers/matrix.ts', () => ({
  matrixLanes: () => [null],
  matrixInWorkers: () => Promise.resolve({ cells: [] }),
  restMatrixLanes: () => undefined,
}));

beforeAll(engine);

/** Puts another plain record in the place of a track's. */
async function written(id: string, record: unknown): Promise<void> {
  const database = await new Promise<IDBDatabase>((resolve) => {
    const opening = indexedDB.open('rutline');
    opening.onsuccess = () => resolve(opening.result);
  });
  await new Promise<void>((resolve) => {
    const work = database.transaction('graded', 'readwrite');
    work.objectStore('graded').put(record, id);
    work.oncomplete = () => resolve();
  });
  database.close();
}

test('what cannot be read of one track is told of it and of no other', async () => {
  const ids = ['first', 'sound', 'partly', 'unread', 'sound too'];
  for (const id of ids) await store.file({ ...TRIP, id }, ANN);
  const [one] = wholeTrack().surveyed;
  const lines = [{ id: 'main', kind: 'unheard of', name: '' }];
  const record = gradedRecord({ ...wholeTrack(), id: 'partly' });
  await written('partly', { ...record, surveyed: [{ ...one, obstacle: { ...one.obstacle, lines } }] });
  await written('unread', { format: 'something else' });

  const told: Record<string, boolean> = {};
  const placed: Record<string, number> = {};
  for await (const { id, places, problems } of whoGoes(ids, [], 'as recorded')) {
    told[id] = problems.length > 0;
    placed[id] = places.length;
  }
  expect(told).toEqual({ first: false, sound: false, partly: true, unread: true, 'sound too': false });
  expect(placed).toEqual({ first: 1, sound: 1, partly: 1, unread: 0, 'sound too': 1 });
});
