import { beforeEach, describe, expect, test, vi } from 'vitest';
import { gradedRecord } from '../../src/archive/gradedRecord.ts';
import { TRIP_LIMITS } from '../../src/archive/limits.ts';
import { recordToJson, tripToJson } from '../../src/archive/share.ts';
import { TRIP, wholeTrack } from '../archive/replicas.ts';

const { went } = vi.hoisted(() => ({ went: [] as string[] }));

vi.mock('../../src/archive/store.ts', () => ({
  save: () => Promise.resolve(null),
  load: () => Promise.resolve({ value: null, problems: [] }),
}));
vi.mock('../../src/workers/formats.ts', () => ({
  readArchiveFile: (file: File) => {
    went.push(`archive ${file.name}`);
    return Promise.resolve({ value: { trackCount: 0, trips: [] }, problems: [] });
  },
}));
vi.mock('../../src/workers/import.ts', () => ({
  importGpx: (file: File) => {
    went.push(`GPX ${file.name}`);
    return Promise.resolve({ value: null, problems: [] });
  },
}));
vi.mock('../../src/workers/archive.ts', () => ({ watchArchive: () => () => {} }));
vi.mock('../../src/ui/relief.svelte.ts', () => ({ relief: {}, isRelief: () => false }));
vi.mock('../../src/ui/background.svelte.ts', () => ({ background: {} }));
vi.mock('../../src/ui/where.svelte.ts', () => ({ where: { go: () => {} } }));
vi.mock('../../src/ui/look.svelte.ts', () => ({ look: { system: 'metric' } }));

Object.assign(globalThis, { addEventListener: () => {} });
const { incoming } = await import('../../src/ui/incoming.svelte.ts');
const { open } = await import('../../src/ui/trip.svelte.ts');

beforeEach(() => {
  went.length = 0;
});

const told = () => (incoming.problems?.list ?? []).map(({ what, done }) => `${what} ${done}`);

/** A file whose whole text is never given. */
function unread(text: string, name: string, size?: number): File {
  const file = new File([text], name);
  if (size !== undefined) Object.defineProperty(file, 'size', { value: size });
  Object.defineProperty(file, 'text', { value: () => Promise.reject(new Error('it is gone')) });
  return file;
}

describe('a file of JSON', () => {
  const features = JSON.stringify({ features: [], type: 'FeatureCollection' });

  test.each([
    ['a graded track of ours', recordToJson(gradedRecord(wholeTrack()))],
    ['GeoJSON', features],
    ['anything else', '\uFEFF\n{"name":"x"}'],
  ])('that is %s goes to the reader of the archive', async (_, text) => {
    await incoming.read(new File([text], 'track.json'));
    expect(went).toEqual(['archive track.json']);
    expect(told()).toEqual([]);
  });

  test('that is a trip is opened, and what is none of them is read as GPX', async () => {
    await incoming.read(new File([tripToJson(TRIP)], 'trip.json'));
    expect(open.now.id).toBe(TRIP.id);
    expect(told()).toEqual([]);
    await incoming.read(new File(['<gpx/>'], 'x.gpx'));
    expect(went).toEqual(['GPX x.gpx']);
  });
});

describe('a trip file', () => {
  test('that is too long is refused before it is read', async () => {
    await incoming.read(unread(tripToJson(TRIP), 'long.json', TRIP_LIMITS.fileLength + 1));
    expect(told()).toEqual(['The file is longer than 500000000 characters. Choose a trip file.']);
  });

  test('that went away meanwhile is told', async () => {
    await incoming.read(unread(tripToJson(TRIP), 'gone.json'));
    expect(told()).toEqual(['It could not be read (it is gone). Choose it again, or copy the file again.']);
  });

  test('that cannot be read from its beginning is told', async () => {
    const file = new File(['{'], 'locked.json');
    Object.defineProperty(file, 'slice', { value: () => unread('', 'part') });
    await incoming.read(file);
    expect(told()[0]).toContain('It could not be read (it is gone).');
    expect(went).toEqual([]);
  });
});
