import { DOMParser } from '@xmldom/xmldom';
import init from '@sqlite.org/sqlite-wasm';
import { XMLValidator } from 'fast-xml-parser';
import { strToU8, unzipSync, zipSync } from 'fflate';
import { beforeAll, describe, expect, test } from 'vitest';
import { conflictsOf, historyOf } from '../../src/archive/conflict.ts';
import { copiesFrom, copiesToBytes } from '../../src/archive/exchange.ts';
import { filedBy } from '../../src/archive/filed.ts';
import { filesOf } from '../../src/archive/folder/files.ts';
import { FolderReading } from '../../src/archive/folder/folderReading.ts';
import { readZip, zipOf } from '../../src/archive/folder/zip.ts';
import { readGeoJson } from '../../src/archive/geoJsonIn.ts';
import { linesBlob } from '../../src/archive/geopackage/geometry.ts';
import { readGeoPackage } from '../../src/archive/geopackage/read.ts';
import { STANDARD_TABLES, WGS84 } from '../../src/archive/geopackage/standard.ts';
import { geoPackageOf } from '../../src/archive/geopackage/write.ts';
import { edited, firstFiled } from '../../src/archive/gradedReplica.ts';
import type { GradedTrack } from '../../src/archive/gradedTrack.ts';
import { archiveGeoJson } from '../../src/archive/out/archiveGeoJson.ts';
import { xmlText } from '../../src/archive/out/xmlText.ts';
import { printable } from '../../src/archive/reader.ts';
import { merged, replicaFrom, replicaToBytes } from '../../src/archive/replica.ts';
import { readGpx } from '../../src/route/gpx.ts';
import { asReadFromXml, INJECTIONS } from '../injections.ts';
import { saying } from './hostileTracks.ts';
import { piecesOf } from './pieces.ts';
import { ANN, BEN, canonical, engine, read } from './replicas.ts';

const texts = Object.values(INJECTIONS);
const cases = Object.entries(INJECTIONS);
const tracks = texts.map((text, i) => saying(text, `track ${i}`));

const asRead = (text: string) => asReadFromXml(text, '\uFFFD');

/** As a text comes out of UTF-8, which has no half characters (RFC 3629, section 3). */
const asUtf8 = (text: string) => new TextDecoder('utf-8', { ignoreBOM: true }).decode(strToU8(text));

/** Every name of a record inside a value, each once. */
function keysOf(value: unknown): Set<string> {
  const found = new Set<string>();
  const look = (one: unknown): void => {
    if (typeof one !== 'object' || one === null) return;
    if (!Array.isArray(one)) Object.keys(one).forEach((key) => found.add(key));
    Object.values(one).forEach(look);
  };
  look(value);
  return found;
}

describe('an archive of such names goes out and comes back with every text as it was', () => {
  test('as a GeoPackage', async () => {
    const { value, problems } = await readGeoPackage(await geoPackageOf(tracks, 0));
    expect(problems).toEqual([]);
    expect(value?.tracks).toEqual(tracks);
  });

  test('as GeoJSON, which has no more names of values than any', async () => {
    const text = (await piecesOf(archiveGeoJson(tracks))).join('');
    const { value, problems } = readGeoJson(text);
    expect(problems).toEqual([]);
    expect(value?.tracks).toEqual(tracks);
    const said = JSON.parse(text) as { features: { properties: { kind?: string; name?: string } }[] };
    const plain: unknown = JSON.parse((await piecesOf(archiveGeoJson([saying('plain')]))).join(''));
    expect(keysOf(said)).toEqual(keysOf(plain));
    const names = said.features.filter(({ properties }) => properties.kind === 'track');
    expect(names.map(({ properties }) => properties.name)).toEqual(texts);
  });

  test('as a zip of whole files under names that lead nowhere', async () => {
    const bytes = Buffer.concat(await piecesOf(zipOf(tracks)));
    const { value, problems } = await readZip(bytes);
    expect(problems).toEqual([]);
    expect(value?.tracks).toEqual(tracks);
    const files = Object.entries(unzipSync(bytes));
    expect(files).toHaveLength(3 * tracks.length);
    for (const [name, content] of files) {
      expect(name).toMatch(/^[\p{L}\p{N}_-][\p{L}\p{N} _-]*\.(json|trip\.json|gpx)$/u);
      const text = new TextDecoder('utf-8', { fatal: true }).decode(content);
      if (name.endsWith('.json')) expect(() => JSON.parse(text) as unknown).not.toThrow();
      else expect(XMLValidator.validate(text)).toBe(true);
    }
  });

  test('as a folder', async () => {
    const taken = new Set<string>();
    const files = tracks.flatMap((graded) => filesOf(graded, taken));
    const { value, problems } = await filedBy(async (take) => {
      const folder = new FolderReading(take);
      for (const { name, bytes } of files) await folder.add(name, bytes);
      return folder.answer();
    });
    expect(problems).toEqual([]);
    expect(value?.tracks).toEqual(tracks);
  });
});

function gpxOf(graded: GradedTrack): Uint8Array {
  return filesOf(graded, new Set()).find(({ name }) => name.endsWith('.gpx'))!.bytes;
}

describe.each(cases)('%s stays text', (_, text) => {
  beforeAll(engine);

  test('in the GPX of a graded track, its waypoints and lines', () => {
    const gpx = gpxOf(saying(text));
    const faults: string[] = [];
    const parser = new DOMParser({
      onError: (level, message) => level !== 'warning' && faults.push(`${level}: ${message}`),
    });
    const all = (xml: string) =>
      Array.from(parser.parseFromString(xml, 'text/xml').getElementsByTagName('*'));
    const decoded = (bytes: Uint8Array) => all(new TextDecoder().decode(bytes));
    const found = decoded(gpx);
    expect(faults).toEqual([]);
    const plain = decoded(gpxOf(saying('plain')));
    expect(found.map(({ tagName }) => tagName)).toEqual(plain.map(({ tagName }) => tagName));
    const named = found
      .filter(({ tagName }) => tagName === 'name')
      .map((one) => asRead(one.textContent ?? ''));
    expect(named.filter((name) => name === asRead(text)).length).toBeGreaterThanOrEqual(2);
  });

  test('in a file of tracks with their history, who wrote it and what they disagreed on', () => {
    const who = { ...BEN, by: text };
    const first = firstFiled(saying('before'), { ...ANN, by: text });
    const other = edited(replicaFrom([replicaToBytes(first)])!, saying(`${text}!`), who);
    const both = merged(edited(first, saying(text), { ...ANN, by: text }), other);
    const { value, problems } = copiesFrom(copiesToBytes([replicaToBytes(both)]));
    expect(problems).toEqual([]);
    const [{ replica }] = value!;
    const { name, surveyed } = read(replica);
    expect([text, `${text}!`]).toContain(name);
    expect(surveyed[0].visits).toHaveLength(2);
    const conflicts = conflictsOf(replica).flatMap(({ claims }) => claims);
    expect(conflicts.length).toBeGreaterThan(0);
    for (const { by } of conflicts) expect(by).toBe(asUtf8(text));
    for (const { by } of historyOf(replica)) expect(by).toBe(asUtf8(text));
    const alone = edited(firstFiled(saying('before'), ANN), saying(text), who);
    expect(read(alone)).toEqual(canonical(saying(text)));
  });

  test('out of GPX in a zip, under a name of that kind, with waypoints', async () => {
    const gpx = gpxSaying(text);
    const alone = await readGpx(gpx);
    expect(asRead(alone.value!.waypoints[0].name)).toBe(asRead(text));
    expect(asRead(alone.value!.waypoints[0].description)).toBe(asRead(text));
    const { value, problems } = await readZip(zipSync({ [`${asUtf8(text).slice(0, 200)}.gpx`]: gpx }));
    if (value!.tracks.length === 0) expect(problems.some(({ severity }) => severity === 'error')).toBe(true);
    for (const { name, note, waypoints } of value!.tracks) {
      expect(asRead(name)).toBe(asRead(text));
      expect(asRead(note)).toBe(asRead(text));
      expect(asRead(waypoints[0].name)).toBe(asRead(text));
    }
  });

  test('out of GeoJSON and GeoPackage of a stranger, in names of lines, layers and values', async () => {
    const line = [
      [8, 50],
      [8.1, 50.1],
    ];
    const feature = (properties: unknown) => ({
      type: 'Feature',
      id: text,
      properties,
      geometry: { type: 'LineString', coordinates: line },
    });
    const features = [feature({ name: text, description: text, [text]: text, track_id: text })];
    const { value } = readGeoJson(JSON.stringify({ type: 'FeatureCollection', name: text, features }));
    expect(value?.tracks.map(({ name, note }) => [name, note])).toEqual([[printable(text), text]]);

    const table = asUtf8(text).replaceAll('\0', '').slice(0, 500);
    const found = await readGeoPackage(await strangers(table, asUtf8(text)));
    const { tracks: read, trips } = found.value!;
    expect(trips).toEqual([]);
    expect(read.map(({ name }) => upToNul(name))).toEqual([upToNul(printable(asUtf8(text)))]);
    expect(found.problems.every(({ where }) => where.length < 100)).toBe(true);
  });
});

/** What a library that ends texts at the first zero gives. */
function upToNul(text: string): string {
  return text.split('\0')[0];
}

function gpxSaying(text: string): Uint8Array<ArrayBuffer> {
  const said = `<name>${xmlText(text)}</name><desc>${xmlText(text)}</desc>`;
  const points = '<trkpt lat="1" lon="2"/><trkpt lat="1.1" lon="2"/>';
  return strToU8(
    `<gpx version="1.1" creator="t" xmlns="http://www.topografix.com/GPX/1/1"><wpt lat="1" lon="2">${said}</wpt>` +
      `<trk>${said}<trkseg>${points}</trkseg></trk></gpx>`,
  );
}

/** A file of somebody else's with one line, in a layer of a name of theirs. */
async function strangers(table: string, name: string): Promise<Uint8Array> {
  const sqlite = await init();
  const db = new sqlite.oo1.DB(':memory:', 'c');
  const quoted = `"${table.replaceAll('"', '""')}"`;
  db.exec(
    `${STANDARD_TABLES} CREATE TABLE ${quoted} (fid INTEGER PRIMARY KEY, geom BLOB, name TEXT, note TEXT)`,
  );
  db.exec({
    sql: `INSERT INTO gpkg_contents (table_name, data_type, identifier, srs_id) VALUES (?, 'features', ?, ${WGS84})`,
    bind: [table, table],
  });
  db.exec({
    sql: `INSERT INTO gpkg_geometry_columns VALUES (?, 'geom', 'LINESTRING', ${WGS84}, 0, 0)`,
    bind: [table],
  });
  const path = {
    lng: Float64Array.of(8, 8.1),
    lat: Float64Array.of(50, 50.1),
    elevationM: Float64Array.of(1, 2),
  };
  db.exec({
    sql: `INSERT INTO ${quoted} (geom, name, note) VALUES (?, ?, ?)`,
    bind: [linesBlob([path], WGS84), name, name],
  });
  const bytes = sqlite.capi.sqlite3_js_db_export(db);
  db.close();
  return bytes;
}
