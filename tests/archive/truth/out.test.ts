import { check } from '@placemarkio/check-geojson';
import { gpx as gpxToGeoJson, kml as kmlToGeoJson } from '@tmcw/togeojson';
import { booleanValid, length as lengthKm, lineString, nearestPointOnLine, point } from '@turf/turf';
import { DOMParser } from '@xmldom/xmldom';
import fc from 'fast-check';
import type { Feature, FeatureCollection, Geometry, Position } from 'geojson';
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { validateXML } from 'xmllint-wasm';
import type { OutFormat } from '../../../src/archive/out/formats.ts';
import { outText } from '../../../src/archive/out/formats.ts';
import type { Trip } from '../../../src/archive/trip.ts';
import { CORPUS, DEMO, named, overTheAntimeridian } from '../outTrips.ts';
import { anyTrip } from '../trips.ts';

// What leaves the program, read by what is not ours: libxml2 (xmllint-wasm 5.3.0) with the GPX 1.1 schema (2004),
// @placemarkio/check-geojson 0.1.14 (RFC 7946), @turf/turf 7.4.0, @tmcw/togeojson 7.1.3 (GPX 1.1, and KML 2.2 as of OGC
// 07-147r2) with @xmldom/xmldom 0.9.12.

const SCHEMA = readFileSync(new URL('gpx-1-1.xsd', import.meta.url), 'utf8');

function documentOf(text: string) {
  const faults: string[] = [];
  const parser = new DOMParser({ onError: (level, message) => faults.push(`${level}: ${message}`) });
  const parsed = parser.parseFromString(text, 'text/xml') as unknown as Document;
  expect(faults).toEqual([]);
  return parsed;
}

const READ: Readonly<Record<OutFormat, (text: string) => FeatureCollection>> = {
  gpx: (text) => gpxToGeoJson(documentOf(text)),
  kml: (text) => kmlToGeoJson(documentOf(text)) as FeatureCollection,
  geojson: (text) => check(text) as FeatureCollection,
};

function read(trip: Trip, format: OutFormat): FeatureCollection {
  return READ[format](outText(trip, format, 'metric'));
}

function nameOf(feature: Feature): string {
  return (feature.properties as { name?: string } | null)?.name ?? '';
}

/** The lines of a geometry; those of a KML MultiGeometry are read as a collection. */
function linesOf({ geometry }: { readonly geometry: Geometry }): Position[][] {
  if (geometry.type === 'GeometryCollection')
    return geometry.geometries.flatMap((one) => linesOf({ geometry: one }));
  if (geometry.type === 'LineString') return [geometry.coordinates];
  return geometry.type === 'MultiLineString' ? geometry.coordinates : [];
}

function find(collection: FeatureCollection, name: string): Feature {
  return collection.features.find((feature) => nameOf(feature) === name) ?? expect.fail(`no ${name}`);
}

/** What libxml2 finds against the GPX 1.1 schema. */
async function schemaFaults(texts: readonly string[]): Promise<string[]> {
  const xml = texts.map((contents, i) => ({ fileName: `trip-${i}.gpx`, contents }));
  const { errors } = await validateXML({ xml, schema: SCHEMA, maxMemoryPages: 4096 });
  return errors.map(({ rawMessage }) => rawMessage);
}

describe('GPX against the GPX 1.1 schema', () => {
  test('of the demonstration', async () => {
    expect(await schemaFaults([outText(DEMO, 'gpx', 'metric')])).toEqual([]);
  });

  test('of a planned route, of a track over the antimeridian, of an empty trip', async () => {
    const planned: Trip = { ...DEMO, track: { ...DEMO.track!, kind: 'route' } };
    const empty: Trip = { ...DEMO, track: null, obstacles: [], waypoints: [] };
    const trips = [planned, overTheAntimeridian(), empty];
    expect(await schemaFaults(trips.map((trip) => outText(trip, 'gpx', 'metric')))).toEqual([]);
  });

  test('of names that try to be markup', async () => {
    expect(await schemaFaults(CORPUS.map((text) => outText(named(text), 'gpx', 'metric')))).toEqual([]);
  });

  test('of any trip', async () => {
    const trips = fc.sample(anyTrip(), { numRuns: 60, seed: 11 });
    expect(await schemaFaults(trips.map((trip) => outText(trip, 'gpx', 'metric')))).toEqual([]);
  });

  test('and the schema does find faults', async () => {
    const text = outText(DEMO, 'gpx', 'metric');
    const broken = [
      text.replace('<trkseg>', '<trksegment>').replace('</trkseg>', '</trksegment>'),
      text.replace(/lon="[^"]*"/, 'lon="180"'),
      text.replace(/lat="[^"]*"/, 'lat="1e-7"'),
      text.replace(/<ele>([^<]*)<\/ele><name>([^<]*)<\/name>/, '<name>$2</name><ele>$1</ele>'),
    ];
    for (const one of broken) expect(await schemaFaults([one])).not.toEqual([]);
  });
});

describe.each(['gpx', 'geojson', 'kml'] as const)('%s, read by others', (format) => {
  const collection = read(DEMO, format);

  test('holds every obstacle and waypoint at its place', () => {
    const points = collection.features.filter(({ geometry }) => geometry?.type === 'Point');
    expect(points).toHaveLength(DEMO.obstacles.length + DEMO.waypoints.length);
    DEMO.obstacles.forEach(({ name, lng, lat }, i) => {
      const { geometry } = find(collection, `${i + 1} ${name}`);
      expect(geometry.type === 'Point' && geometry.coordinates.slice(0, 2)).toEqual([lng, lat]);
    });
    for (const { name, lng, lat } of DEMO.waypoints) {
      const { geometry } = find(collection, name);
      expect(geometry.type === 'Point' && geometry.coordinates.slice(0, 2)).toEqual([lng, lat]);
    }
  });

  test('holds the recording point by point, with its gap', () => {
    const track = DEMO.track!;
    const lines = linesOf(find(collection, track.name));
    expect(lines).toHaveLength(track.segmentStart.length);
    expect(lines.flat().map(([lng, lat]) => [lng, lat])).toEqual(
      Array.from(track.lng, (lng, i) => [lng, track.lat[i]]),
    );
  });

  test('holds each line as a way of its own, as long as the obstacle and as far aside as it is offset', () => {
    DEMO.obstacles.forEach(({ lines, stretch, stationM }, i) => {
      const main = linesOf(find(collection, `obstacle ${i + 1}: ${lines[0].name}`)).map((line) =>
        lineString(line.map(([lng, lat]) => [lng, lat])),
      );
      // On a sphere, 0.56 % off at most (Turf).
      const metres = main.reduce((sum, line) => sum + 1000 * lengthKm(line), 0);
      expect(Math.abs(metres - stretch.lengthM)).toBeLessThan(0.006 * stretch.lengthM + 0.01);
      expect(stationM).toBeGreaterThan(0);
      for (const line of lines) {
        if (line.kind !== 'offset') continue;
        const [moved] = linesOf(find(collection, `obstacle ${i + 1}: ${line.name}`));
        const middle = moved[Math.floor(moved.length / 2)];
        const foot = nearestPointOnLine(main[0], point([middle[0], middle[1]]));
        const asideM = 1000 * foot.properties.dist;
        expect(Math.abs(asideM - Math.abs(line.offsetM))).toBeLessThan(0.06 * Math.abs(line.offsetM) + 0.02);
      }
    });
  });

  test('of any trip is read without a fault, with as many places', () => {
    for (const trip of fc.sample(anyTrip(), { numRuns: 40, seed: 12 })) {
      const points = read(trip, format).features.filter(({ geometry }) => geometry?.type === 'Point');
      expect(points).toHaveLength(trip.obstacles.length + trip.waypoints.length);
    }
  });

  test.each(CORPUS)('keeps the name %j text', (text) => {
    const { features } = read(named(text), format);
    // XML readers may fold white space; nothing else may change.
    const folded = (words: string) => words.replace(/\s+/g, ' ').trim();
    expect(features.map((feature) => folded(nameOf(feature)))).toContain(folded(text));
    expect(features.map((feature) => folded(nameOf(feature)))).toContain(folded(`1 ${text}`));
    expect(features).toHaveLength(4);
  });
});

describe('GeoJSON', () => {
  test('has geometries that Turf holds to be valid', () => {
    for (const { geometry } of read(DEMO, 'geojson').features) expect(booleanValid(geometry)).toBe(true);
  });

  test('is cut at the antimeridian (RFC 7946, 3.1.9), and its heights stay with its points', () => {
    const [{ geometry, properties }] = read(overTheAntimeridian(), 'geojson').features;
    expect(geometry.type).toBe('MultiLineString');
    const [west, east] = linesOf({ geometry });
    expect(west.at(-1)![0]).toBe(180);
    expect(east[0][0]).toBe(-180);
    expect(west.at(-1)![1]).toBe(east[0][1]);
    expect(west.at(-1)![1]).toBeCloseTo(-17.00015, 9);
    for (const line of [west, east])
      line.slice(1).forEach(([lng], i) => expect(Math.abs(lng - line[i][0])).toBeLessThan(1));
    expect(properties!.elevationM).toEqual([[0, -3.25, null, 1e-7]]);
  });

  test('gives no height as a third number (RFC 7946, 3.1.1: above the ellipsoid, which nobody recorded)', () => {
    for (const feature of read(DEMO, 'geojson').features)
      if (feature.geometry.type !== 'Point')
        for (const position of linesOf(feature).flat()) expect(position).toHaveLength(2);
  });
});

test('KML keeps a description text where a reader shows it as HTML', () => {
  for (const text of CORPUS) {
    const document = documentOf(outText(named(text), 'kml', 'metric'));
    for (const description of Array.from(document.getElementsByTagName('description')))
      expect(description.textContent).not.toMatch(/[<>"']/);
  }
});

test('KML holds heights above sea level, and GPX heights and times as they were recorded', () => {
  const { elevationM, timeS, name } = DEMO.track!;
  const heights = (format: OutFormat) =>
    linesOf(find(read(DEMO, format), name))
      .flat()
      .map(([, , up]) => up);
  expect(heights('kml')).toEqual(Array.from(elevationM, (up) => (Number.isNaN(up) ? undefined : up)));
  const { coordinateProperties } = find(read(DEMO, 'gpx'), name).properties as {
    coordinateProperties?: { times: (string | null)[] | (string | null)[][] };
  };
  const times = coordinateProperties!.times
    .flat()
    .map((text) => (text === null ? NaN : Date.parse(text) / 1000));
  expect(times).toEqual(Array.from(timeS));
});
