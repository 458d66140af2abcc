import { strToU8, zipSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import type { TakeTracks } from '../../src/archive/filed.ts';
import { filedBy } from '../../src/archive/filed.ts';
import { FolderReading } from '../../src/archive/folder/folderReading.ts';
import { filesOf } from '../../src/archive/folder/files.ts';
import { readZip } from '../../src/archive/folder/zip.ts';
import { filedFromGeoJson, readGeoJson } from '../../src/archive/geoJsonIn.ts';
import { gradedRecord } from '../../src/archive/gradedRecord.ts';
import type { GradedTrack } from '../../src/archive/gradedTrack.ts';
import { takeJson } from '../../src/archive/jsonIn.ts';
import { startsAsJson, startsAsTrip } from '../../src/archive/jsonKind.ts';
import { ARCHIVE_LIMITS } from '../../src/archive/limits.ts';
import { archiveGeoJson } from '../../src/archive/out/archiveGeoJson.ts';
import { recordToJson, tripToJson } from '../../src/archive/share.ts';
import { INJECTIONS } from '../injections.ts';
import { piecesOf } from './pieces.ts';
import { TRIP, wholeTrack } from './replicas.ts';

const said = (problems: readonly { readonly what: string }[]) => problems.map(({ what }) => what).join(' ');

/** A line of so many positions, all of them one and the same record. */
function line(count: number, name = 'Up'): unknown {
  const coordinates = Array<number[]>(count).fill([8, 50]);
  return { type: 'Feature', properties: { name }, geometry: { type: 'LineString', coordinates } };
}

function collection(features: readonly unknown[]): unknown {
  return { type: 'FeatureCollection', features };
}

const GRADED = recordToJson(gradedRecord(wholeTrack()));

/** A file that says that it has so many bytes; what it holds is only asked for where that is not too many. */
function claims(bytes: number, text: string): Blob {
  const file = new Blob([text]);
  Object.defineProperty(file, 'size', { value: bytes });
  Object.defineProperty(file, 'text', { value: () => Promise.reject(new Error('read whole')) });
  return file;
}

async function taken(file: Blob) {
  return filedBy((take: TakeTracks) => takeJson(file, take));
}

describe('GeoJSON that asks for too much', () => {
  test('in one line is read without that line', () => {
    const { value, problems } = filedFromGeoJson(
      collection([line(ARCHIVE_LIMITS.points + 1, 'Long'), line(2)]),
    );
    expect(value?.tracks.map(({ name }) => name)).toEqual(['Up']);
    expect(said(problems)).toContain('more points than are read');
    const lines = Array<unknown>(3).fill(Array<number[]>(ARCHIVE_LIMITS.points / 2).fill([8, 50]));
    const many = { type: 'Feature', geometry: { type: 'MultiLineString', coordinates: lines } };
    expect(filedFromGeoJson(collection([many])).value?.tracks).toEqual([]);
  });

  test('in many lines is read as far as that', () => {
    const { value, problems } = filedFromGeoJson(collection([line(4, 'a'), line(5, 'b'), line(6, 'c')]), 10);
    expect(value?.tracks.map(({ name }) => name)).toEqual(['a', 'b']);
    expect(said(problems)).toContain('more points than are read');
  });

  test('in features is read as far as that, and what is left out is counted', () => {
    const far = (i: number) => {
      const coordinates = [8 + i / 1e4, 8.1].map((lng) => [lng, 50]);
      return { type: 'Feature', geometry: { type: 'LineString', coordinates } };
    };
    const features = Array.from({ length: ARCHIVE_LIMITS.tracks + 7 }, (_, i) => far(i));
    const { value, problems } = filedFromGeoJson(collection(features));
    expect(value?.tracks).toHaveLength(ARCHIVE_LIMITS.tracks);
    expect(problems.find(({ what }) => what.includes('more than 10000 tracks'))?.times).toBe(7);
    expect(filedFromGeoJson(collection(Array<null>(200_000).fill(null))).value?.tracks).toEqual([]);
  });

  test('in depth is an answer', () => {
    const deep = (depth: number) => '['.repeat(depth) + ']'.repeat(depth);
    for (const depth of [1_000, 200_000]) {
      const within = `{"type":"FeatureCollection","features":[{"type":"Feature","properties":{"name":${deep(depth)},"record":${deep(depth)}},"geometry":{"type":"MultiLineString","coordinates":${deep(depth)}}}]}`;
      const { value, problems } = readGeoJson(within);
      expect(value?.tracks ?? []).toEqual([]);
      expect(problems.length).toBeGreaterThan(0);
    }
  });

  test('in bytes is read feature by feature, as if it were held whole', async () => {
    const whole = (await piecesOf(archiveGeoJson([wholeTrack()]))).join('');
    const { features } = JSON.parse(whole) as { features: unknown[] };
    const text = JSON.stringify(
      collection([line(2, 'Strange'), ...features, null, line(3, Object.values(INJECTIONS).join(' '))]),
    );
    const padded = new Blob(['\uFEFF', text.slice(0, -1), ' '.repeat(ARCHIVE_LIMITS.geoJsonBytes), '}']);
    const shares: number[] = [];
    const large = await filedBy((take) => takeJson(padded, take, (share) => shares.push(share)));
    expect(large).toEqual(await taken(new Blob([text])));
    expect(large.value?.tracks).toHaveLength(3);
    expect(shares).toEqual(shares.toSorted((a, b) => a - b));
    await expect(taken(claims(ARCHIVE_LIMITS.geoJsonBytes + 1, GRADED))).rejects.toThrow('read whole');
  });

  test('in bytes and is faulty says so', async () => {
    const pad = ' '.repeat(ARCHIVE_LIMITS.geoJsonBytes);
    const told = async (text: string) => said((await taken(new Blob([text, pad]))).problems);
    expect(await told('{"type":"FeatureCollection","features":[{"a":')).toBe('This is not whole JSON.');
    expect(await told('{"type":"FeatureCollection","features":[]} {}')).toBe('This is not whole JSON.');
    expect(await told('{"type":"Feature","features":[]}')).toContain('no GeoJSON FeatureCollection');
    expect(await told('[1,2,3]')).toContain('no GeoJSON FeatureCollection');
  });

  test('in bytes, among other files of a zip, is left out, and the others are read', async () => {
    const large = new Uint8Array(ARCHIVE_LIMITS.featureBytes + 1).fill(32);
    large.set(strToU8('{"type":"FeatureCollection","features":['));
    const files = { 'large.json': large, 'small.geojson': strToU8(JSON.stringify(collection([line(2)]))) };
    const { value, problems } = await filedBy(async (take) => {
      const folder = new FolderReading(take);
      for (const [name, bytes] of Object.entries(files)) await folder.add(name, bytes);
      return folder.answer();
    });
    expect(value?.tracks.map(({ name }) => name)).toEqual(['Up']);
    expect(problems.find(({ where }) => where === 'large.json')?.what).toContain('100 MB are read');
  });
});

describe('a folder', () => {
  const gpx = (lng: number, points: number) =>
    strToU8(
      `<gpx version="1.1" creator="a" xmlns="http://www.topografix.com/GPX/1/1"><trk><name>At ${lng}</name><trkseg>${Array.from(
        { length: points },
        (_, i) => `<trkpt lat="${50 + i / 1e3}" lon="${lng}"/>`,
      ).join('')}</trkseg></trk></gpx>`,
    );
  const read = (files: Readonly<Record<string, Uint8Array>>, mostPoints: number) =>
    filedBy(async (take) => {
      const folder = new FolderReading(take, mostPoints);
      for (const [name, bytes] of Object.entries(files)) await folder.add(name, bytes);
      return folder.answer();
    });

  test('of recordings with too many points in all is read as far as that, and says which are left out', async () => {
    const files = {
      'a.gpx': gpx(1, 6),
      'b.gpx': gpx(2, 6),
      'c.gpx': gpx(3, 3),
      'd.json': strToU8(JSON.stringify(collection([line(2)]))),
    };
    const { value, problems } = await read(files, 10);
    expect(value?.tracks.map(({ name }) => name)).toEqual(['At 1', 'At 3']);
    const left = problems.filter(({ what }) => what.includes('more points than are read'));
    expect(left.map(({ where }) => where)).toEqual(['d.json: the file', 'b.gpx: the file']);
  });

  test('has its recordings beside whole tracks not counted, whichever comes first', async () => {
    const [json, , recorded] = filesOf(wholeTrack(), new Set());
    const [a, b] = [{ ...wholeTrack(), id: 'a' }, wholeTrack()].map((track) =>
      recordToJson(gradedRecord(track)),
    );
    for (const turned of [false, true]) {
      const pairs = [a, b].flatMap((text, i) => {
        const pair = [
          [`${i}.gpx`, recorded.bytes],
          [`${i}.json`, strToU8(text)],
        ] as const;
        return turned ? [...pair].reverse() : pair;
      });
      const { value, problems } = await read(Object.fromEntries(pairs), wholeTrack().track!.length);
      expect(value?.tracks.map(({ id }) => id).sort()).toEqual(['a', wholeTrack().id].sort());
      expect(problems).toEqual([]);
    }
    expect(json.name).toMatch(/\.json$/);
  });
});

describe('a file of JSON is told apart by what it holds, not by its name', () => {
  const named = (name: string, text: string) => taken(new File([text], name));

  test('as a graded track', async () => {
    const { value, problems } = await named('track.json', `\uFEFF ${GRADED}`);
    expect(problems).toEqual([]);
    expect(value?.tracks).toEqual<GradedTrack[]>([wholeTrack()]);
  });

  test('as GeoJSON, of ours and of others', async () => {
    const ours = (await piecesOf(archiveGeoJson([wholeTrack()]))).join('');
    expect((await named('club.json', ours)).value?.tracks).toEqual([wholeTrack()]);
    const theirs = JSON.stringify({ features: [line(2)], type: 'FeatureCollection' });
    expect((await named('lines.json', theirs)).value?.tracks.map(({ name }) => name)).toEqual(['Up']);
  });

  test('as a trip, wherever it says so', async () => {
    expect((await named('trip.json', tripToJson(TRIP))).value?.trips).toEqual([TRIP]);
    expect(startsAsTrip(tripToJson(TRIP))).toBe(true);
    expect(startsAsTrip(GRADED)).toBe(false);
    expect(startsAsTrip('<gpx creator="&quot;format&quot;:&quot;rutline-trip&quot;"/>')).toBe(false);
    expect(startsAsJson('\uFEFF\n {"a"')).toBe(true);
    expect(startsAsJson('<gpx')).toBe(false);
  });

  test('as nothing that is read', async () => {
    const nothing = await named('package.json', '{"name":"x"}');
    expect(nothing.value).toBeNull();
    expect(said(nothing.problems)).toContain('neither GPX, nor a trip, nor a graded track, nor GeoJSON');
    const broken = await named('a.json', GRADED.slice(0, -10));
    expect(broken.value).toBeNull();
    expect(said(broken.problems)).toContain('not whole JSON');
  });

  test('in a zip too', async () => {
    const { value } = await readZip(zipSync({ 'a.json': strToU8(GRADED) }));
    expect(value?.tracks).toEqual([wholeTrack()]);
  });
});
