import { strToU8, zipSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import { readZip } from '../../src/archive/folder/zip.ts';
import { ZIP_LIMITS } from '../../src/archive/limits.ts';
import { readGeoJson } from '../../src/archive/geoJsonIn.ts';

const GPX =
  strToU8(`<gpx version="1.1" creator="a" xmlns="http://www.topografix.com/GPX/1/1"><trk><name>Up</name><trkseg>
  <trkpt lat="50" lon="8"><ele>1</ele></trkpt><trkpt lat="50.1" lon="8.1"><ele>2</ele></trkpt></trkseg></trk></gpx>`);

const said = (problems: readonly { readonly what: string }[]) => problems.map(({ what }) => what).join(' ');

describe('a zip', () => {
  test('of GPX files gives their tracks, and says what it leaves out', async () => {
    const { value, problems } = await readZip(zipSync({ 'a/up.gpx': GPX, 'notes.txt': strToU8('x') }));
    expect(value?.tracks.map(({ name }) => name)).toEqual(['Up']);
    expect(problems.map(({ where }) => where)).toEqual(['notes.txt']);
  });

  test('with a name that leads out of it has that file left out', async () => {
    for (const name of ['../up.gpx', 'a/../../up.gpx', '/up.gpx', 'C:up.gpx', 'a\\up.gpx']) {
      const { value, problems } = await readZip(zipSync({ [name]: GPX }));
      expect(value?.tracks).toEqual([]);
      expect(said(problems)).toContain('leads out');
    }
  });

  test('that unpacks to many times its size is left alone early', async () => {
    const bomb = zipSync({ 'a.gpx': new Uint8Array(20_000_000) }, { level: 9 });
    const { problems } = await readZip(bomb);
    expect(said(problems)).toContain('many times its size');
  });

  test('of too many files, or too much in all, is read as far as that', async () => {
    const many = zipSync({ 'a.gpx': GPX, 'b.gpx': GPX, 'c.gpx': GPX });
    const few = await readZip(many, { ...ZIP_LIMITS, entries: 2 });
    expect(said(few.problems)).toContain('more than 2 files');
    expect(few.value?.tracks).toHaveLength(1);
    const small = await readZip(many, { ...ZIP_LIMITS, bytes: 250 });
    expect(said(small.problems)).toContain('Unpacked it would');
  });

  test('that is cut short says so', async () => {
    const { problems } = await readZip(zipSync({ 'a.gpx': GPX }).subarray(0, 120));
    expect(said(problems)).toContain('damaged');
  });

  test('that is none is refused', async () => {
    expect((await readZip(strToU8('no zip'))).value).toBeNull();
  });
});

describe('GeoJSON of a stranger', () => {
  test('gives its lines with name and heights, and says what it leaves out', () => {
    const line = [
      [8, 50, 100],
      [8.1, 50.1, 110],
    ];
    const feature = (type: string, coordinates: unknown) => ({
      type: 'Feature',
      properties: { name: 'Up' },
      geometry: { type, coordinates },
    });
    const features = [feature('LineString', line), feature('Point', [8, 50]), null, 7];
    const { value, problems } = readGeoJson(JSON.stringify({ type: 'FeatureCollection', features }));
    expect(value?.tracks.map(({ name, track }) => [name, [...(track?.elevationM ?? [])]])).toEqual([
      ['Up', [100, 110]],
    ]);
    expect(problems.map(({ times }) => times)).toEqual([3, 1]);
  });

  test('that is none is refused', () => {
    for (const text of ['', '{', 'null', '7', '{"type":"Feature"}', '[]'])
      expect(readGeoJson(text).value).toBeNull();
  });
});
