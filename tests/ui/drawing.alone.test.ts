import { readFileSync } from 'node:fs';
import { beforeEach, expect, test, vi } from 'vitest';
import { readTrip } from '../../src/archive/share.ts';
import { addBypass, changeObstacle, removeLine } from '../../src/ui/obstacleEdit.ts';
import { bypassOf } from '../../src/ui/pathEdit.ts';

const stored = new Map<string, string>();
let isFull = false;
Object.assign(globalThis, {
  addEventListener: () => undefined,
  location: { hash: '' },
  localStorage: {
    getItem: (key: string) => stored.get(key) ?? null,
    setItem: (key: string, text: string) => {
      if (isFull) throw new Error('full');
      stored.set(key, text);
    },
    removeItem: (key: string) => stored.delete(key),
  },
});
vi.mock('../../src/archive/store.ts', () => ({
  save: () => Promise.resolve(null),
  knownOf: () => null,
}));

/** The demonstration with a bypass more at each of two obstacles. */
const [FIRST, SECOND] = ['obstacle-1', 'obstacle-2'];
const around = (obstacleId: string) => `${obstacleId}-around`;
const trip = [FIRST, SECOND].reduce(
  (before, id) => changeObstacle(before, id, (obstacle) => addBypass(obstacle, around(id))),
  readTrip(readFileSync('public/demo/outing.json', 'utf8')).value!,
);

/** As the page begins, with this trip on the desk. */
async function begin() {
  vi.resetModules();
  const { open } = await import('../../src/ui/trip.svelte.ts');
  const { notices } = await import('../../src/ui/notice.svelte.ts');
  const { where } = await import('../../src/ui/where.svelte.ts');
  const { drawing } = await import('../../src/ui/drawing.svelte.ts');
  open.lay(trip);
  const draw = (obstacleId: string, points: number) => {
    drawing.start(obstacleId, around(obstacleId));
    for (let i = 0; i < points; i++) drawing.add(7 + i / 1000, 45);
  };
  return { open, notices, where, drawing, draw };
}

beforeEach(() => {
  vi.useFakeTimers();
  stored.clear();
  isFull = false;
});

test('a half-drawn path stays when another is begun, and it is said where it is', async () => {
  const { drawing, draw, notices, where } = await begin();
  draw(FIRST, 3);
  drawing.start(SECOND, around(SECOND));
  expect(drawing.isFor(around(FIRST))).toBe(true);
  expect(drawing.now?.points).toHaveLength(3);
  expect(notices.now?.words).toMatch(/^The path of Bypass at First ford is half drawn and stays/);
  notices.now?.action?.run();
  expect(where.place).toEqual({ desk: 'scout', sheet: 'obstacles', obstacleId: FIRST });
});

test('one without a point makes way for another', async () => {
  const { drawing, draw } = await begin();
  draw(FIRST, 0);
  draw(SECOND, 1);
  expect(drawing.isFor(around(SECOND))).toBe(true);
  drawing.cancel();
  expect(drawing.now).toBe(null);
});

test('what was cancelled is put back with all its points', async () => {
  const { drawing, draw, notices } = await begin();
  draw(FIRST, 3);
  drawing.cancel();
  expect(drawing.now).toBe(null);
  notices.now?.action?.run();
  expect(drawing.now?.points).toHaveLength(3);
});

test('what another trip, or a bypass that is gone, has half drawn is there again with it', async () => {
  const { drawing, draw, open } = await begin();
  draw(FIRST, 3);
  open.edit('remove', (now) => changeObstacle(now, FIRST, (one) => removeLine(one, around(FIRST))));
  draw(SECOND, 2);
  drawing.done();
  expect(bypassOf(open.now, SECOND, around(SECOND))?.path).toHaveLength(2);
  open.lay({ ...trip, id: 'another' });
  expect(drawing.now).toBe(null);
  draw(FIRST, 1);
  open.lay(trip);
  expect(drawing.now?.points).toHaveLength(3);
});

test('outlives the page, also as an earlier program kept it', async () => {
  const { draw } = await begin();
  draw(FIRST, 2);
  expect((await begin()).drawing.now?.points).toHaveLength(2);
  const [sketch] = JSON.parse(stored.get('rutline.drawing')!) as unknown[];
  stored.set('rutline.drawing', JSON.stringify(sketch));
  expect((await begin()).drawing.now?.points).toHaveLength(2);
});

test('would be lost with the page only where the device stores nothing', async () => {
  const { drawing, draw } = await begin();
  draw(FIRST, 2);
  expect(drawing.wouldBeLost).toBe(false);
  isFull = true;
  drawing.add(8, 45);
  expect(drawing.wouldBeLost).toBe(true);
  drawing.cancel();
  expect(drawing.wouldBeLost).toBe(false);
});
