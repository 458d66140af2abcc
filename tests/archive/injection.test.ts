import { DOMParser } from '@xmldom/xmldom';
import { XMLValidator } from 'fast-xml-parser';
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { outText } from '../../src/archive/out/formats.ts';
import { xmlText } from '../../src/archive/out/xmlText.ts';
import { readTrip, tripToJson } from '../../src/archive/share.ts';
import type { Trip } from '../../src/archive/trip.ts';
import { readGpx } from '../../src/route/gpx.ts';
import { asReadFromXml, INJECTIONS, obstacleSaying } from '../injections.ts';

const cases = Object.entries(INJECTIONS);

const whole = readTrip(readFileSync('tests/archive/in/version-2.json', 'utf8')).value!;

/** A trip with one text in every place where a person can write one. */
function named(text: string): Trip {
  return {
    ...whole,
    name: text,
    note: text,
    track: { ...whole.track!, name: text, description: text },
    waypoints: [{ name: text, description: text, lng: 12, lat: 44, elevationM: NaN }],
    obstacles: whole.obstacles.map((obstacle) => obstacleSaying(obstacle, text)),
    vehicles: whole.vehicles.map((vehicle) => ({ ...vehicle, name: text, driver: text })),
  };
}

function asRead(text: string): string {
  return asReadFromXml(text, '\uFFFD');
}

/** Names of the elements and attributes of a document, each once, and all of its text by element. */
function partsOf(xml: string): { names: string[]; texts: string[] } {
  const faults: string[] = [];
  const parser = new DOMParser({
    onError: (level, message) => level !== 'warning' && faults.push(`${level}: ${message}`),
  });
  const all = Array.from(parser.parseFromString(xml, 'text/xml').getElementsByTagName('*'));
  expect(faults).toEqual([]);
  const names = all.flatMap((one) => [one.tagName, ...Array.from(one.attributes, ({ name }) => `@${name}`)]);
  return { names: [...new Set(names)].sort(), texts: all.map((one) => asRead(one.textContent ?? '')) };
}

describe.each(cases)('%s stays text', (_, text) => {
  test.each(['gpx', 'kml'] as const)('in %s', (format) => {
    const xml = outText(named(text), format, 'metric');
    expect(XMLValidator.validate(xml)).toBe(true);
    const { names, texts } = partsOf(xml);
    expect(names).toEqual(partsOf(outText(named('plain'), format, 'metric')).names);
    expect(texts).toContain(asRead(text));
    expect(texts).toContain(asRead(`1 ${text}`));
  });

  test('in the balloons of KML, which readers show as HTML', () => {
    const xml = outText(named(text), 'kml', 'metric');
    const described = [...xml.matchAll(/<description>([^<]*)<\/description>/g)].map(([, inside]) => inside);
    expect(described.length).toBeGreaterThan(0);
    for (const inside of described) {
      const markup = inside.replace(/&#(\d+);/g, (_all, code: string) => String.fromCharCode(Number(code)));
      expect(markup).not.toMatch(/[<>"']/);
    }
  });

  test('in GeoJSON', () => {
    const keys = (value: unknown): string[] =>
      typeof value !== 'object' || value === null
        ? []
        : Object.entries(value).flatMap(([key, inner]) => [/^\d+$/.test(key) ? '' : key, ...keys(inner)]);
    const said = JSON.parse(outText(named(text), 'geojson', 'metric')) as { name: string };
    const plain = JSON.parse(outText(named('plain'), 'geojson', 'metric')) as unknown;
    expect(said.name).toBe(text);
    expect(new Set(keys(said))).toEqual(new Set(keys(plain)));
  });

  test('in a trip file, written and read', () => {
    const trip = named(text);
    const json = tripToJson(trip);
    const { value } = readTrip(json);
    expect(value).toMatchObject({ name: text, note: text });
    expect(value?.obstacles[0]).toMatchObject({ name: text, note: text, preset: text });
    expect(value?.obstacles[0].photos).toMatchObject([{ caption: text }]);
    expect(value?.vehicles[0]).toMatchObject({ name: text, driver: text });
    expect(value?.obstacles[0].lines.every(({ name }) => name === text)).toBe(true);
    expect(tripToJson(value!)).toBe(json);
  });

  test('out of a GPX file', async () => {
    const name = `<name>${xmlText(text)}</name><desc>${xmlText(text)}</desc>`;
    const points = '<trkpt lat="1" lon="2"/><trkpt lat="1.1" lon="2"/>';
    const gpx = `<gpx version="1.1" creator="t" xmlns="http://www.topografix.com/GPX/1/1"><trk>${name}<trkseg>${points}</trkseg></trk></gpx>`;
    const { value } = await readGpx(new TextEncoder().encode(gpx));
    expect(asRead(value!.tracks[0].name)).toBe(asRead(text));
    expect(asRead(value!.tracks[0].description)).toBe(asRead(text));
    expect(value!.tracks[0]).toHaveLength(2);
  });
});
