import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test, vi } from 'vitest';
import { acceptParcel, offerParcel } from '../../src/archive/clubExchange.ts';
import * as store from '../../src/archive/gradedStore.ts';
import { historyBytes, putBack, remove } from '../../src/archive/shelved.ts';
import { withOutcome } from '../../src/archive/filing.ts';
import type { GradedTrack, Outcome } from '../../src/archive/gradedTrack.ts';
import { levelsOf } from '../../src/archive/levels.ts';
import type { Trip } from '../../src/archive/trip.ts';
import type { Obstacle } from '../../src/terrain/obstacle.ts';
import { ANN, BEN, canonical, CLEO, engine, TRIP, wholeTrack } from './replicas.ts';

beforeAll(engine);

let tracks = 0;

/** A track of its own in the archive, by its id. */
async function filedTrack(trip: Trip = TRIP): Promise<string> {
  const id = `track-${tracks++}`;
  expect((await store.file({ ...trip, id }, ANN)).value).toEqual({ id, newVisits: trip.obstacles.length });
  return id;
}

async function taken(id: string): Promise<store.Taken> {
  const { value, problems } = await store.take(id);
  expect(problems).toEqual([]);
  return value!;
}

function convoy(id: string) {
  return { id, vehicles: TRIP.vehicles, direction: TRIP.direction };
}

function deeper(obstacle: Obstacle): Obstacle {
  return { ...obstacle, stretch: { ...obstacle.stretch, lengthM: obstacle.stretch.lengthM + 1 } };
}

function withObstacle(trip: Trip, change: (obstacle: Obstacle) => Obstacle): Trip {
  return { ...trip, obstacles: trip.obstacles.map(change) };
}

describe('a trip', () => {
  test('is filed as a track of its own, photos and all, with a first visit by whoever files it', async () => {
    const { graded, conflicts } = await taken(await filedTrack());
    expect(conflicts).toEqual([]);
    expect(graded.surveyed.map(({ obstacle }) => obstacle)).toEqual(TRIP.obstacles);
    expect(graded.track).toEqual(TRIP.track);
    const [{ visits }] = graded.surveyed;
    expect(visits).toHaveLength(1);
    expect(visits[0]).toMatchObject({ ...ANN, stretch: TRIP.obstacles[0].stretch });
  });

  test('comes back on the desk as it was filed, with the convoy that is coming', async () => {
    const id = await filedTrack();
    const { value } = await store.takeOut(id, convoy('again'));
    expect(value).toEqual({ ...TRIP, id: 'again', note: '' });
    expect((await store.filedAs('again')).value).toBe(id);
  });

  test('that is filed back as it was changes nothing', async () => {
    const id = await filedTrack();
    const { value: trip } = await store.takeOut(id, convoy('unchanged'));
    expect((await store.file(trip!, BEN)).value).toEqual({ id, newVisits: 0 });
    expect((await store.history(id)).value).toHaveLength(1);
  });

  test('adds a visit where the ground was measured anew, once', async () => {
    const id = await filedTrack();
    const { value } = await store.takeOut(id, convoy('measured'));
    const trip = withObstacle(value!, deeper);
    expect((await store.file(trip, BEN)).value).toEqual({ id, newVisits: 1 });
    expect((await store.file(trip, CLEO)).value).toEqual({ id, newVisits: 0 });
    const [{ obstacle, visits }] = (await taken(id)).graded.surveyed;
    expect(visits.map(({ by }) => by)).toEqual(['Ann', 'Ben']);
    expect(obstacle).toEqual(trip.obstacles[0]);
  });

  test('undoes nothing that others did meanwhile, though it is filed twice', async () => {
    const id = await filedTrack();
    const trip = (await store.takeOut(id, convoy('twice'))).value!;
    const { graded, heads } = await taken(id);
    const [one] = graded.surveyed;
    const noted = { ...graded, surveyed: [{ ...one, obstacle: { ...one.obstacle, note: 'A tree fell' } }] };
    expect(await store.edit({ ...noted, note: 'Closed in May' }, heads, CLEO)).toBeNull();
    const renamed = withObstacle(trip, (obstacle) => ({ ...obstacle, name: 'Ford' }));
    await store.file(renamed, BEN);
    await store.file(withObstacle(renamed, deeper), BEN);
    const now = (await taken(id)).graded;
    expect(now.note).toBe('Closed in May');
    expect(now.surveyed[0].obstacle).toMatchObject({ name: 'Ford', note: 'A tree fell' });
    expect(now.surveyed[0].visits).toHaveLength(2);
  });

  test('that found the same adds a visit of the day only where all was measured again, and one only', async () => {
    const id = await filedTrack();
    const trip = (await store.takeOut(id, convoy('the same'))).value!;
    const day = { by: 'Ben', atMs: new Date(2025, 4, 4, 12).getTime() };
    const later = { ...day, atMs: day.atMs + 2 * 3_600_000 };
    const next = { ...day, atMs: day.atMs + 86_400_000 };
    expect((await store.file(trip, day)).value).toEqual({ id, newVisits: 0 });
    expect((await store.file(trip, day, null, true)).value).toEqual({ id, newVisits: 1 });
    expect((await store.file(trip, later, null, true)).value).toEqual({ id, newVisits: 0 });
    expect((await store.file(trip, next, null, true)).value).toEqual({ id, newVisits: 1 });
    const stranger = { ...TRIP, id: 'stranger, the same' };
    expect((await store.file(stranger, next, id, true)).value).toEqual({ id, newVisits: 0 });
    const [{ obstacle, visits }] = (await taken(id)).graded.surveyed;
    expect(visits.map(({ atMs }) => atMs)).toEqual([ANN.atMs, day.atMs, next.atMs]);
    expect(obstacle.stretch).toEqual(TRIP.obstacles[0].stretch);
    expect((await store.find({})).value!.find((row) => row.id === id)!.lastVisitMs).toBe(next.atMs);
  });

  test('leaves an obstacle in the archive that it passed over', async () => {
    const id = await filedTrack();
    const trip = (await store.takeOut(id, convoy('passed'))).value!;
    await store.file({ ...trip, obstacles: [] }, BEN);
    expect((await taken(id)).graded.surveyed).toHaveLength(1);
  });

  test('from elsewhere, filed into a track, only adds to it', async () => {
    const id = await filedTrack();
    const stranger = withObstacle(TRIP, (one) =>
      deeper({ ...one, name: 'Another name', lines: one.lines.slice(0, 1) }),
    );
    const answer = await store.file({ ...stranger, id: 'stranger' }, BEN, id);
    expect(answer.value).toEqual({ id, newVisits: 1 });
    expect((await store.file({ ...stranger, id: 'stranger' }, BEN)).value).toEqual({ id, newVisits: 0 });
    const [{ obstacle, visits }] = (await taken(id)).graded.surveyed;
    expect(visits).toHaveLength(2);
    expect(obstacle.name).toBe(TRIP.obstacles[0].name);
    expect(obstacle.lines).toEqual(TRIP.obstacles[0].lines);
  });
});

/** What Ben's vehicle did at an obstacle. */
function turnedBack(id: string): Outcome {
  return {
    id,
    ...BEN,
    vehicle: TRIP.vehicles[0],
    lineId: 'main',
    direction: 'as recorded',
    rung: 'as it comes',
    said: 'goes',
    did: 'turned back',
    note: '',
  };
}

describe('two windows', () => {
  test('that change one track at once lose nothing, and disagree in the open', async () => {
    const id = await filedTrack();
    const { graded, heads } = await taken(id);
    const outcome = turnedBack('o1');
    const saved = await Promise.all([
      store.edit({ ...graded, area: 'North', note: 'Ann was here' }, heads, ANN),
      store.edit({ ...withOutcome(graded, graded.surveyed[0].obstacle.id, outcome), note: 'no' }, heads, BEN),
      ...Array.from({ length: 40 }, (_, n) =>
        store.edit(
          withOutcome(graded, graded.surveyed[0].obstacle.id, { ...outcome, id: `n${n}` }),
          heads,
          CLEO,
        ),
      ),
    ]);
    expect(saved.every((problem) => problem === null)).toBe(true);
    const now = await taken(id);
    expect(now.graded.area).toBe('North');
    expect(now.graded.surveyed[0].outcomes).toHaveLength(41);
    expect(now.conflicts).toMatchObject([{ key: 'note', spot: { of: 'track', field: 'note' } }]);
    const [{ key, claims }] = now.conflicts;
    expect(new Set(claims.map(({ value, by }) => `${by}: ${String(value)}`))).toEqual(
      new Set(['Ann: Ann was here', 'Ben: no']),
    );
    expect((await store.find({ inConflict: true })).value!.map((row) => row.id)).toEqual([id]);
    expect(await store.choose(id, key, claims[1].id, CLEO)).toBeNull();
    expect(await store.choose(id, key, claims[0].id, CLEO)).toMatchObject({ trouble: 'changed elsewhere' });
    expect((await taken(id)).graded.note).toBe(claims[1].value);
    const last = (await store.history(id)).value!.at(-1)!;
    expect(last).toMatchObject({ by: 'Cleo', changes: [{ after: { value: claims[1].value } }] });
    expect(last.changes[0].before).toHaveLength(2);
  });
});

describe('the record beside the history', () => {
  test('says the same, without images', async () => {
    const id = await filedTrack();
    const { graded } = await taken(id);
    const { value } = await store.takeBare([id, 'nowhere']);
    const [bare] = value!;
    expect(value).toHaveLength(1);
    expect(bare.surveyed[0].obstacle.photos).toEqual([]);
    const [{ obstacle, ...rest }] = graded.surveyed;
    expect(bare).toEqual({ ...graded, surveyed: [{ ...rest, obstacle: { ...obstacle, photos: [] } }] });
  });

  test('has a row that finds it, whose grades are gone with the next change', async () => {
    const id = await filedTrack({ ...TRIP, name: 'Hobnail spür' });
    const rows = () => store.find({ text: 'SPUR hob' }).then(({ value }) => value!);
    const [row] = await rows();
    expect(row).toMatchObject({ id, obstacleCount: 1, lastVisitMs: ANN.atMs, box: [0.5, 45, 0.511, 45.003] });
    expect(await store.regrade([id, 'nowhere'])).toBeNull();
    expect((await rows())[0]).toEqual({ ...row, levels: levelsOf(wholeTrack()) });
    const { graded, heads } = await taken(id);
    await store.edit({ ...graded, area: 'South' }, heads, BEN);
    expect((await rows())[0]).toMatchObject({ area: 'South', levels: {} });
    await remove(id);
    expect(await rows()).toEqual([]);
    expect((await store.take(id)).problems).toMatchObject([{ trouble: 'missing' }]);
  });
});

test('ground that two people measured differently is no fault of the track where all are read without their images', async () => {
  const id = await filedTrack();
  const { graded, heads } = await taken(id);
  const measured = (moreM: number, author: typeof ANN) => {
    const [first, ...others] = graded.surveyed;
    const visits = first.visits.map(({ stretch, ...visit }) => ({
      ...visit,
      stretch: { ...stretch, lengthM: stretch.lengthM + moreM },
    }));
    const obstacle = { ...first.obstacle, stretch: visits[visits.length - 1].stretch };
    return store.edit({ ...graded, surveyed: [{ ...first, obstacle, visits }, ...others] }, heads, author);
  };
  expect(await measured(1, ANN)).toBeNull();
  expect((await store.takeBare([id])).problems).toEqual([]);
  expect(await measured(2, BEN)).toBeNull();
  expect((await taken(id)).conflicts.length).toBeGreaterThan(0);
  const { value, problems } = await store.takeBare([id]);
  expect(value![0].surveyed[0].obstacle.stretch.lengthM).toBeNaN();
  expect(problems).toEqual([]);
});

describe('a file with the history', () => {
  test('brings a track to another device, and what was done there back', async () => {
    const id = await filedTrack();
    const { value: sent } = await store.copies([id]);
    const there = await taken(id);
    await store.edit({ ...there.graded, area: 'entered elsewhere' }, there.heads, BEN);
    const { value: answer } = await store.copies([id]);
    await remove(id);
    expect(await store.merge(sent!, 1)).toEqual({ value: [id], problems: [] });
    const here = await taken(id);
    expect(here.graded).toEqual(there.graded);
    await store.edit({ ...here.graded, note: 'entered here' }, here.heads, CLEO);
    expect((await store.merge(answer!, 1)).value).toEqual([id]);
    const both = await taken(id);
    expect(both.graded).toMatchObject({ area: 'entered elsewhere', note: 'entered here' });
    expect((await store.history(id)).value!.map(({ by }) => by)).toEqual(['Ann', 'Ben', 'Cleo']);
  });

  test('that is damaged is refused, and nothing is changed', async () => {
    const id = await filedTrack();
    const { value: sent } = await store.copies([id]);
    const before = await taken(id);
    sent![sent!.length - 9] ^= 1;
    expect(await store.merge(sent!, 1)).toMatchObject({ value: null, problems: [{ severity: 'error' }] });
    expect(await taken(id)).toEqual(before);
  });
});

describe('what is kept of many changes', () => {
  /** Numbers of the pieces in which a track's history lies. */
  function piecesOf(id: string): Promise<number[]> {
    return new Promise((resolve, reject) => {
      const opening = indexedDB.open('rutline');
      opening.onerror = () => reject(new Error('The database does not open.'));
      opening.onsuccess = () => {
        const asked = opening.result.transaction('replicas').objectStore('replicas').getAllKeys();
        asked.onsuccess = () => {
          opening.result.close();
          const keys = asked.result as [string, number][];
          resolve(keys.filter(([track]) => track === id).map(([, piece]) => piece));
        };
      };
    });
  }

  async function noted(id: string, note: string): Promise<number> {
    const { graded, heads } = await taken(id);
    expect(await store.edit({ ...graded, note }, heads, BEN)).toBeNull();
    const { value } = await store.find({});
    return value!.find((row) => row.id === id)!.updatedMs;
  }

  /** Text that does not shrink. */
  function longText(): string {
    let seed = 1;
    const letter = () => String.fromCharCode(0x4e00 + ((seed = (seed * 48271) % 2147483647) % 20000));
    return Array.from({ length: 5_000 }, letter).join('');
  }

  test('is appended, and written anew as one piece when it outgrows what it follows', async () => {
    const id = await filedTrack({ ...TRIP, obstacles: [], track: null });
    await noted(id, 'a gate');
    expect(await piecesOf(id)).toEqual([0, 1]);
    await noted(id, longText());
    expect(await piecesOf(id)).toEqual([0]);
    expect((await store.history(id)).value).toHaveLength(3);
  });

  test('never lies in more pieces than are read at once, and nothing of it is lost', async () => {
    const id = await filedTrack({ ...TRIP, obstacles: [], track: null });
    await noted(id, longText());
    for (let i = 0; i < 40; i++) {
      await noted(id, `gate ${i}`);
      expect((await piecesOf(id)).length).toBeLessThanOrEqual(32);
    }
    expect((await store.history(id)).value).toHaveLength(42);
  });

  test('rises in the list with each, though the clock stood still', async () => {
    const id = await filedTrack();
    const moments = [await noted(id, 'one'), await noted(id, 'two'), await noted(id, 'three')];
    expect(moments[1]).toBeGreaterThan(moments[0]);
    expect(moments[2]).toBeGreaterThan(moments[1]);
  });
});

test('a track of an open format adds what the archive lacks, and its differences are said', async () => {
  const track: GradedTrack = { ...wholeTrack(), id: 'joined' };
  const [one] = track.surveyed;
  const [visit] = one.visits;
  expect(await store.join([track], ANN)).toEqual({ value: ['joined'], problems: [] });
  expect((await taken('joined')).graded).toEqual(canonical(track));
  const later = { ...visit, id: 'later', atMs: visit.atMs + 1000, stretch: deeper(one.obstacle).stretch };
  const more = { ...track, note: 'Something else', surveyed: [{ ...one, visits: [visit, later] }] };
  const { problems } = await store.join([more], BEN);
  expect(problems).toMatchObject([{ severity: 'warning' }]);
  const { graded } = await taken('joined');
  expect(graded.note).toBe('');
  expect(graded.surveyed[0].visits.map(({ id }) => id)).toEqual(['v0', 'later']);
  expect(graded.surveyed[0].obstacle.stretch).toEqual(later.stretch);
});

/** Puts other bytes in the place of a track's history. */
async function damage(id: string, bytes = new Uint8Array([1, 2, 3])): Promise<void> {
  const database = await new Promise<IDBDatabase>((resolve) => {
    const opening = indexedDB.open('rutline');
    opening.onsuccess = () => resolve(opening.result);
  });
  await new Promise<void>((resolve) => {
    const work = database.transaction('replicas', 'readwrite');
    work.objectStore('replicas').put(bytes, [id, 0]);
    work.oncomplete = () => resolve();
  });
  database.close();
}

describe('a track that is removed', () => {
  test('is put back as it was: every byte of its history, its row, and the trip that was filed into it', async () => {
    const id = await filedTrack();
    const { graded, heads } = await taken(id);
    await store.edit({ ...graded, note: 'Closed in May' }, heads, BEN);
    await store.regrade([id]);
    const before = {
      taken: await taken(id),
      bytes: await historyBytes(id),
      history: await store.history(id),
      row: (await store.find({})).value!.find((row) => row.id === id),
    };
    expect(before.bytes.value).toHaveLength(2);
    const { value } = await remove(id);
    expect((await store.take(id)).problems).toMatchObject([{ trouble: 'missing' }]);
    expect((await store.find({})).value!.some((row) => row.id === id)).toBe(false);
    expect(await putBack(value!, 1)).toBeNull();
    expect({
      taken: await taken(id),
      bytes: await historyBytes(id),
      history: await store.history(id),
      row: (await store.find({})).value!.find((row) => row.id === id),
    }).toEqual(before);
    expect(before.taken.graded.surveyed[0].obstacle.photos).not.toHaveLength(0);
    expect((await store.filedAs(id)).value).toBe(id);
  });

  test('is merged with what came of it meanwhile', async () => {
    const id = await filedTrack();
    const { value: sent } = await store.copies([id]);
    const here = await taken(id);
    await store.edit({ ...here.graded, note: 'entered here' }, here.heads, BEN);
    const { value } = await remove(id);
    await store.merge(sent!, 1);
    const there = await taken(id);
    await store.edit({ ...there.graded, area: 'entered since' }, there.heads, CLEO);
    expect(await putBack(value!, 1)).toBeNull();
    expect((await taken(id)).graded).toMatchObject({ note: 'entered here', area: 'entered since' });
  });

  test('though it is damaged, is put back so, but not over what can be read', async () => {
    const id = await filedTrack();
    const { value: sent } = await store.copies([id]);
    await damage(id);
    const { value } = await remove(id);
    expect(await putBack(value!, 1)).toBeNull();
    expect((await historyBytes(id)).value).toEqual([new Uint8Array([1, 2, 3])]);
    expect((await store.takeBare([id])).value).toHaveLength(1);
    await remove(id);
    await store.merge(sent!, 1);
    expect(await putBack(value!, 1)).toMatchObject({ trouble: 'changed elsewhere' });
    await taken(id);
  });

  test('and was not there is said', async () => {
    expect(await remove('nowhere')).toMatchObject({ value: null, problems: [{ trouble: 'missing' }] });
  });
});

describe('a damaged history', () => {
  test('is said, and not written over by a trip', async () => {
    const id = await filedTrack();
    await damage(id);
    expect((await store.take(id)).problems).toMatchObject([{ trouble: 'corrupt' }]);
    expect((await store.file({ ...TRIP, id }, ANN)).problems).toMatchObject([{ trouble: 'corrupt' }]);
    expect((await historyBytes(id)).value).toEqual([new Uint8Array([1, 2, 3])]);
  });

  test('gives way to a copy of the track, to which is added what only the plain record has', async () => {
    const id = await filedTrack();
    const { value: sent } = await store.copies([id]);
    const { graded, heads } = await taken(id);
    const outcome = turnedBack(`outcome of ${id}`);
    const more = withOutcome({ ...graded, note: 'Closed in May' }, graded.surveyed[0].obstacle.id, outcome);
    expect(await store.edit(more, heads, BEN)).toBeNull();
    await damage(id);
    const { value, problems } = await store.merge(sent!, 1);
    expect(value).toEqual([id]);
    expect(problems).toMatchObject([{ severity: 'warning', where: TRIP.name }]);
    const now = (await taken(id)).graded;
    expect(now).toEqual({ ...more, surveyed: [{ ...graded.surveyed[0], outcomes: [outcome] }] });
    expect((await store.merge(sent!, 1)).problems).toEqual([]);
    expect((await taken(id)).graded).toEqual(now);
  });

  test('stays where the copy is damaged, too', async () => {
    const id = await filedTrack();
    const { value: sent } = await store.copies([id]);
    await damage(id);
    sent![sent!.length - 9] ^= 1;
    expect((await store.merge(sent!, 1)).value).toBeNull();
    expect((await historyBytes(id)).value).toEqual([new Uint8Array([1, 2, 3])]);
  });

  test('asks a server for everything, gives it nothing, and gives way to what it answers', async () => {
    const id = await filedTrack();
    const whole = (await offerParcel(id, [], [])).value!;
    const { graded } = await taken(id);
    await damage(id);
    expect((await offerParcel(id, [], [])).problems).toMatchObject([{ trouble: 'corrupt' }]);
    const asked = await offerParcel(id, whole.heads, whole.heads);
    expect(asked).toMatchObject({ value: { heads: [], gives: false }, problems: [] });
    const answer = whole.bytes;
    const broken = answer.slice();
    broken[broken.length - 9] ^= 1;
    expect((await acceptParcel(id, broken, 1)).value).toBeNull();
    expect((await historyBytes(id)).value).toEqual([new Uint8Array([1, 2, 3])]);
    const accepted = await acceptParcel(id, answer, 1);
    expect(accepted).toMatchObject({ value: whole.heads, problems: [{ severity: 'warning' }] });
    expect((await taken(id)).graded).toEqual(graded);
  });
});

describe('the database of an earlier day', () => {
  test.each([1, 2])('of version %i opens with every trip, and takes tracks', async (version) => {
    const text = readFileSync(new URL(`in/version-${version}.json`, import.meta.url), 'utf8');
    const record = JSON.parse(text) as { obstacles: { photos?: { id: string; image: string }[] }[] };
    const images = record.obstacles.flatMap(({ photos }) => photos ?? []);
    vi.stubGlobal('indexedDB', new IDBFactory());
    await new Promise<void>((resolve) => {
      const opening = indexedDB.open('rutline', version);
      opening.onupgradeneeded = () => {
        const shelves = ['summaries', 'trips', 'tracks', ...(version > 1 ? ['images'] : [])];
        for (const shelf of shelves) opening.result.createObjectStore(shelf);
      };
      opening.onsuccess = () => {
        const work = opening.result.transaction([...opening.result.objectStoreNames], 'readwrite');
        work.objectStore('trips').put({ record: { ...record, track: null }, tracked: false }, 'first-trip');
        work.objectStore('summaries').put({ id: 'first-trip', updatedMs: 1 }, 'first-trip');
        for (const { id, image } of images)
          work.objectStore('images').put(Uint8Array.from(Buffer.from(image, 'base64')), ['first-trip', id]);
        work.oncomplete = () => resolve(opening.result.close());
      };
    });
    vi.resetModules();
    const trips = await import('../../src/archive/store.ts');
    const { value, problems } = await trips.load('first-trip');
    expect(problems).toEqual([]);
    expect(value).toMatchObject({ name: `A trip of version 1`, track: null });
    expect(value!.obstacles[0].photos).toHaveLength(images.length);
    expect((await trips.list()).value).toHaveLength(1);
    const again = await import('../../src/archive/gradedStore.ts');
    const { startReplicas } = await import('../../src/archive/replica.ts');
    await startReplicas(() => readFileSync('node_modules/@automerge/automerge/dist/automerge.wasm'));
    expect((await again.file(value!, ANN)).value?.id).toBe('first-trip');
    expect((await again.take('first-trip')).value?.graded.surveyed[0].obstacle.photos).toHaveLength(
      images.length,
    );
    vi.unstubAllGlobals();
  });
});
