import { gpx as toGeoJson } from '@tmcw/togeojson';
import type { LineString } from 'geojson';
import GpxParser from 'gpxparser';
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readGpx } from '../../../src/route/gpx.ts';
import { slopeOf } from '../../../src/route/slope.ts';
import { trackOf } from '../recorded.ts';

// Reference readers: gpxparser 3.0.8 and @tmcw/togeojson 7.1.3, both from the npm registry. gpxparser brings a document
// model to Node and makes it global.

const file = (name: string) => readFileSync(new URL(`../in/${name}.gpx`, import.meta.url), 'utf8');

async function ours(text: string) {
  const { value, problems } = await readGpx(new TextEncoder().encode(text));
  return { value, tracks: value?.tracks ?? [], problems };
}

function theirs(text: string): GpxParser {
  const parser = new GpxParser();
  parser.parse(text);
  return parser;
}

function geoJson(text: string) {
  return toGeoJson(new window.DOMParser().parseFromString(text, 'text/xml'));
}

describe('a plain track of one segment', () => {
  it('is read as gpxparser reads it', async () => {
    const reference = theirs(file('plain'));
    const { value, tracks } = await ours(file('plain'));
    expect(reference.tracks).toHaveLength(1);
    expect(tracks).toHaveLength(1);
    expect(tracks[0].name).toBe(reference.tracks[0].name);
    expect(value?.name).toBe(reference.metadata.name);
    const points = reference.tracks[0].points;
    expect([...tracks[0].lat]).toEqual(points.map((point) => point.lat));
    expect([...tracks[0].lng]).toEqual(points.map((point) => point.lon));
    expect([...tracks[0].elevationM]).toEqual(points.map((point) => point.ele));
    expect([...tracks[0].timeS]).toEqual(points.map((point) => point.time.getTime() / 1000));
    expect(value?.waypoints.map(({ name, lng, lat, elevationM }) => [name, lng, lat, elevationM])).toEqual(
      reference.waypoints.map(({ name, lon, lat, ele }) => [name, lon, lat, ele]),
    );
    // Its distance is that of a sphere: 0.56 % off at most.
    expect(Math.abs(tracks[0].distanceM.at(-1)! / reference.tracks[0].distance.total - 1)).toBeLessThan(
      0.0056,
    );
  });

  it.each(['plain', 'version-1-0', 'exponents'])('%s is read as togeojson reads it', async (name) => {
    const lines = geoJson(file(name)).features.filter((feature) => feature.geometry?.type === 'LineString');
    const { tracks } = await ours(file(name));
    const byName = (a: { name: string }, b: { name: string }) => a.name.localeCompare(b.name);
    const found = tracks.map((track) => ({
      name: track.name,
      positions: Array.from(track.lng, (lng, i) => [lng, track.lat[i]]),
    }));
    const expected = lines.map((line) => ({
      name: String(line.properties?.name ?? ''),
      positions: (line.geometry as LineString).coordinates.map(([lng, lat]) => [lng, lat]),
    }));
    expect(found.sort(byName)).toEqual(expected.sort(byName));
  });

  it('of several segments, is cut as togeojson cuts it', async () => {
    const { tracks } = await ours(file('segments'));
    const [feature] = geoJson(file('segments')).features;
    const lengths =
      feature.geometry?.type === 'MultiLineString' ? feature.geometry.coordinates.map((c) => c.length) : [];
    const starts = [...tracks[0].segmentStart, tracks[0].length];
    expect(starts.slice(1).map((end, i) => end - starts[i])).toEqual(lengths.filter((length) => length > 0));
    expect(tracks[0].name).toBe(feature.properties?.name);
  });
});

describe('where gpxparser goes wrong, we', () => {
  /** In degrees of latitude at the equator. */
  const metre = 1 / 110_574;
  const straight = (points: readonly (readonly [northM: number, elevationM: number])[]) =>
    `<gpx version="1.1" creator="t"><trk><name>n</name><trkseg>${points
      .map(([northM, ele]) => `<trkpt lat="${(northM * metre).toFixed(9)}" lon="0"><ele>${ele}</ele></trkpt>`)
      .join('')}</trkseg></trk></gpx>`;

  it('give each leg its own slope: it shifts them by one and ends with Infinity', async () => {
    const legs = [
      [0, 0],
      [100, 10],
      [300, 20],
      [700, 30],
    ] as const;
    const slopes = theirs(straight(legs)).tracks[0].slopes;
    expect(slopes.at(-1)).toBe(Infinity);
    const filled = Array.from({ length: 71 }, (_, i) => {
      const at = i * 10;
      const leg = legs.findIndex(([from]) => from >= at) || 1;
      const [[from, low], [to, high]] = [legs[leg - 1], legs[leg]];
      return [at, low + ((high - low) * (at - from)) / (to - from)] as const;
    });
    const { tracks } = await ours(straight(filled));
    const known = slopeOf(tracks[0], { toleranceM: 0.8, baselineM: 40 }).segments;
    expect(known).toHaveLength(3);
    for (const [i, slope] of [0.1, 0.05, 0.025].entries()) {
      expect(Math.abs(Math.tan(known[i].slopeRad) - slope)).toBeLessThan(0.006);
    }
  });

  it('read a track of 130,000 points: it overflows the stack', async () => {
    const many = Array.from({ length: 130_000 }, (_, i) => [i, i % 500] as const);
    const parser = new GpxParser() as unknown as { calcElevation(points: { ele: number }[]): unknown };
    expect(() => parser.calcElevation(many.map(([, ele]) => ({ ele })))).toThrow(RangeError);
    expect((await ours(straight(many))).tracks[0].length).toBe(130_000);
  });

  it('keep segments apart: it joins them over the gap', async () => {
    const two =
      '<gpx version="1.1" creator="t"><trk><name>n</name>' +
      '<trkseg><trkpt lat="0" lon="0"/><trkpt lat="0.0009" lon="0"/></trkseg>' +
      '<trkseg><trkpt lat="1" lon="0"/><trkpt lat="1.0009" lon="0"/></trkseg></trk></gpx>';
    expect(theirs(two).tracks[0].distance.total).toBeGreaterThan(110_000);
    expect((await ours(two)).tracks[0].distanceM.at(-1)).toBeCloseTo(199, 0);
  });

  it('decode names: it leaves entities and CDATA marks in them', async () => {
    const named = straight([
      [0, 0],
      [10, 1],
    ]).replace('>n<', '>Rock &amp; <![CDATA[<Roll>]]><');
    expect(theirs(named).tracks[0].name).toContain('&amp;');
    expect((await ours(named)).tracks[0].name).toBe('Rock & <Roll>');
  });

  it('report what is broken: it is silent', async () => {
    const broken = straight([
      [0, 0],
      [10, 1],
    ]).slice(0, -20);
    expect(() => theirs(broken)).not.toThrow();
    expect((await ours(broken)).problems[0].severity).toBe('error');
  });

  it('keep a missing elevation unknown: it makes it 0', async () => {
    const holed = straight([
      [0, 500],
      [100, 505],
      [200, 510],
    ]).replace('<ele>505</ele>', '');
    expect(theirs(holed).tracks[0].slopes.some((slope) => Math.abs(slope) > 400)).toBe(true);
    const { tracks } = await ours(holed);
    expect(tracks[0].elevationM[1]).toBeNaN();
    for (const { slopeRad } of slopeOf(tracks[0]).segments)
      expect(Math.abs(Math.tan(slopeRad)) > 0.2).toBe(false);
  });

  it('refuse impossible positions: it accepts them', async () => {
    const wild = straight([
      [0, 1],
      [10, 2],
    ]).replace('lat="0.000090437"', 'lat="95"');
    expect(theirs(wild).tracks[0].points[1].lat).toBe(95);
    const { tracks, problems } = await ours(wild);
    expect(tracks[0].length).toBe(1);
    expect(problems[0].what).toMatch(/beyond 90/);
  });

  it('do not lend a nameless track the name of a point', async () => {
    const nameless = straight([
      [0, 1],
      [10, 2],
    ])
      .replace('<name>n</name>', '')
      .replace('<ele>1</ele>', '<ele>1</ele><name>Point 1</name>');
    expect(theirs(nameless).tracks[0].name).toBe('Point 1');
    expect((await ours(nameless)).tracks[0].name).toBe('');
  });

  it('know no extreme of nothing: it gives an elevation of -Infinity', () => {
    const bare = straight([
      [0, 1],
      [10, 2],
    ]).replace(/<ele>\d<\/ele>/g, '');
    expect(theirs(bare).tracks[0].elevation.max).toBe(-Infinity);
    const profile = slopeOf(
      trackOf([
        [0, 0],
        [0, 1e-4],
      ]),
    );
    expect(profile.segments.every((segment) => !segment.known)).toBe(true);
  });
});
