import { beforeEach, expect, test, vi } from 'vitest';
import type { Reading } from '../../src/problem.ts';
import type { StoreProblem } from '../../src/archive/storeProblem.ts';
import { storeProblem } from '../../src/archive/storeProblem.ts';
import type { Trip } from '../../src/archive/trip.ts';
import type { Obstacle } from '../../src/terrain/obstacle.ts';

interface Saving {
  readonly trip: Trip;
  readonly answer: (problem: StoreProblem | null) => void;
}

const { savings, loading, stored } = vi.hoisted(() => ({
  savings: [] as Saving[],
  loading: [] as { readonly id: string; readonly answer: (read: Reading<Trip>) => void }[],
  /** What a store that takes one after another would have on its disk. */
  stored: { last: null as Trip | null },
}));

vi.mock('../../src/archive/store.ts', () => ({
  save: (trip: Trip) => new Promise((answer) => savings.push({ trip, answer })),
  load: (id: string) => new Promise((answer) => loading.push({ id, answer })),
}));

const events: Record<string, (event: { preventDefault: () => void }) => void> = {};
Object.assign(globalThis, { addEventListener: (name: string, on: () => void) => (events[name] = on) });
const { emptyTrip, open } = await import('../../src/ui/trip.svelte.ts');

beforeEach(() => {
  vi.useFakeTimers();
  savings.length = loading.length = 0;
});

/** The store answers the first question that waits: it is on the disk. */
async function storesNext(problem: StoreProblem | null = null): Promise<void> {
  const { trip, answer } = savings.shift() ?? expect.fail('nothing is to be stored');
  if (problem === null) stored.last = trip;
  answer(problem);
  await vi.advanceTimersByTimeAsync(0);
}

async function onDesk(name: string): Promise<void> {
  const opening = open.open(emptyTrip(name));
  while (stored.last?.name !== name) {
    await vi.advanceTimersByTimeAsync(0);
    if (savings.length > 0) await storesNext();
  }
  await opening;
  stored.last = null;
}

function rename(name: string): void {
  open.edit('rename', (trip) => ({ ...trip, name }));
}

async function pause(): Promise<void> {
  await vi.advanceTimersByTimeAsync(400);
}

test('is said to be stored only where the last that the store took is what lies on the desk', async () => {
  await onDesk('A');
  rename('B');
  await pause();
  rename('C');
  await pause();
  open.undo();
  // The disk has B, which lies on the desk again, and takes C next.
  await storesNext();
  expect(open.keeping.state).toBe('waiting');
  await pause();
  await storesNext();
  expect(open.keeping.state).toBe('waiting');
  await storesNext();
  expect(open.keeping.state).toBe('kept');
  expect(stored.last).toBe(open.now);
});

test('what is entered while another trip is opened is stored first', async () => {
  await onDesk('A');
  const opening = open.openStored('other');
  await vi.advanceTimersByTimeAsync(0);
  rename('entered meanwhile');
  loading.shift()!.answer({ value: { ...emptyTrip('Other'), id: 'other' }, problems: [] });
  await vi.advanceTimersByTimeAsync(0);
  expect(open.now.name).toBe('entered meanwhile');
  await storesNext();
  expect(stored.last?.name).toBe('entered meanwhile');
  loading.shift()!.answer({ value: { ...emptyTrip('Other'), id: 'other' }, problems: [] });
  expect(await opening).toBeNull();
  expect(open.now.name).toBe('Other');
});

test('what cannot be stored is not given up for what cannot be read', async () => {
  await onDesk('A');
  rename('B');
  await pause();
  await storesNext(storeProblem('changed elsewhere'));
  const taking = open.takeStored();
  loading.shift()!.answer({ value: null, problems: [storeProblem('silent')] });
  expect(await taking).toMatchObject([{ trouble: 'silent' }]);
  expect(open.keeping.state).toBe('failed');
  expect(open.now.name).toBe('B');
});

test('a photo is stored without a pause, and until it is the browser asks before the page goes', async () => {
  await onDesk('A');
  const asks = () => {
    const preventDefault = vi.fn();
    events.beforeunload({ preventDefault });
    return preventDefault.mock.calls.length > 0;
  };
  const photo = { id: 'p', caption: '', image: new Uint8Array([0xff, 0xd8, 0xff]) };
  const obstacle = { id: 'o', photos: [photo] } as unknown as Obstacle;
  open.edit('add', (trip) => ({ ...trip, obstacles: [obstacle] }));
  expect(asks()).toBe(true);
  await vi.advanceTimersByTimeAsync(0);
  await storesNext();
  expect(open.keeping.state).toBe('kept');
  rename('with a photo');
  expect(asks()).toBe(false);
  expect(savings).toEqual([]);
  await pause();
  await storesNext();
  open.edit('remove', (trip) => ({ ...trip, obstacles: [{ ...obstacle, photos: [] }] }));
  await pause();
  await storesNext();
  open.undo();
  expect(asks()).toBe(true);
  await vi.advanceTimersByTimeAsync(0);
  await storesNext();
  expect(stored.last).toBe(open.now);
  expect(open.keeping.state).toBe('kept');
});
