import { nearestPointOnLine } from '@turf/turf';
import { describe, expect, it } from 'vitest';
import { stepM } from '../../src/route/ellipsoid.ts';
import { offsetPath, simplified } from '../../src/route/geo.ts';
import { nearestOn, pointAt, sliceOf } from '../../src/route/station.ts';
import type { Recorded } from './recorded.ts';
import { every, northward, random, trackOf } from './recorded.ts';

const EAST_45 = 78_846.8; // metres to a degree of longitude at 45 degrees, WGS 84
const NORTH_45 = 111_131.8;

/** A winding recording of `count` points some 8 m apart. */
function winding(count: number): Recorded[] {
  const next = random(5);
  const points: Recorded[] = [];
  let [lng, lat, heading] = [10, 45, 0.5];
  for (let i = 0; i < count; i++) {
    points.push([lng, lat, i]);
    heading += (next() - 0.5) * 0.6;
    lng += (8 * Math.sin(heading)) / EAST_45;
    lat += (8 * Math.cos(heading)) / NORTH_45;
  }
  return points;
}

describe('the place at a station', () => {
  const track = trackOf(
    northward([0, 100, 300], (s) => 500 + s / 10),
    northward([5_000, 5_200], () => 700),
  );

  it('lies between the points, with its elevation and direction', () => {
    const place = pointAt(track, 200);
    expect(stepM(10, 45, place.lng, place.lat)).toBeCloseTo(200, 2);
    expect(place.elevationM).toBeCloseTo(520, 4);
    expect(place.bearingRad).toBeCloseTo(0, 9);
  });

  it('is an end beyond the ends', () => {
    expect(pointAt(track, -5)).toMatchObject({ lng: 10, lat: 45, elevationM: 500 });
    expect(pointAt(track, 9_999).lat).toBe(track.lat[4]);
    expect(pointAt(track, 9_999).bearingRad).toBeCloseTo(0, 9);
  });

  it('at a gap is its far side', () => {
    expect(pointAt(track, track.distanceM[2]).lat).toBe(track.lat[3]);
    expect(pointAt(track, track.distanceM[2] - 1).lat).toBeLessThan(track.lat[2]);
  });

  it('crosses the 180th meridian', () => {
    const across = trackOf([
      [179.999, 0, 0],
      [-179.999, 0, 10],
    ]);
    const place = pointAt(across, across.distanceM[1] * 0.75);
    expect(place.lng).toBeCloseTo(-179.9995, 6);
    expect(place.bearingRad).toBeCloseTo(Math.PI / 2, 6);
  });
});

describe('the nearest place', () => {
  it('has its distance to the left positive, to the right negative', () => {
    const track = trackOf(northward([0, 100, 200], () => 0));
    const left = nearestOn(track, 10 - 5 / EAST_45, 45 + 150 / NORTH_45);
    expect(left.acrossM).toBeCloseTo(5, 2);
    expect(left.stationM).toBeCloseTo(150, 1);
    expect(nearestOn(track, 10 + 5 / EAST_45, 45 + 50 / NORTH_45).acrossM).toBeCloseTo(-5, 2);
    expect(nearestOn(track, 10, 45 - 30 / NORTH_45)).toMatchObject({ stationM: 0, lng: 10, lat: 45 });
  });

  it('is never on a gap', () => {
    const track = trackOf(
      northward([0, 100], () => 0),
      northward([500, 600], () => 0),
    );
    const foot = nearestOn(track, 10 + 1 / EAST_45, 45 + 280 / NORTH_45);
    expect(foot.stationM).toBeCloseTo(100, 1);
    expect(nearestOn(trackOf([[10, 45]]), 10.001, 45).stationM).toBe(0);
  });

  // Reference: nearestPointOnLine of @turf/turf 7.4.0, on a sphere; distances differ by 0.56 % at most.
  it('is where turf finds it', () => {
    const points = winding(600);
    const track = trackOf(points);
    const line = { type: 'LineString' as const, coordinates: points.map(([lng, lat]) => [lng, lat]) };
    const next = random(8);
    for (let i = 0; i < 40; i++) {
      const [lng, lat] = points[Math.floor(next() * points.length)];
      const [x, y] = [lng + (next() - 0.5) * 1e-3, lat + (next() - 0.5) * 1e-3];
      const ours = nearestOn(track, x, y);
      const theirs = nearestPointOnLine(line, [x, y], { units: 'meters' });
      const [theirLng, theirLat] = theirs.geometry.coordinates;
      const away = stepM(x, y, theirLng, theirLat);
      expect(Math.abs(ours.acrossM)).toBeLessThan(away * 1.0001 + 1e-6);
      expect(Math.abs(ours.acrossM)).toBeGreaterThan(away * 0.99);
    }
  });

  it('of a place on the track is that place', () => {
    const track = trackOf(winding(300));
    for (const stationM of every(37, 2_300)) {
      const { lng, lat } = pointAt(track, stationM);
      const foot = nearestOn(track, lng, lat);
      expect(Math.abs(foot.acrossM)).toBeLessThan(1e-3);
      expect(stepM(foot.lng, foot.lat, lng, lat)).toBeLessThan(1e-3);
    }
  });
});

describe('a slice', () => {
  const track = trackOf(
    northward(every(50, 300), () => 0),
    northward(every(50, 1_300, 1_000), () => 0),
  );
  const lengthOf = ({ lng, lat }: { lng: Float64Array; lat: Float64Array }) =>
    lng.reduce((sum, x, i) => (i === 0 ? 0 : sum + stepM(lng[i - 1], lat[i - 1], x, lat[i])), 0);

  it('ends exactly at its stations', () => {
    const [path, ...rest] = sliceOf(track, 120, 230);
    expect(rest).toEqual([]);
    expect(path.lng).toHaveLength(4);
    expect(lengthOf(path)).toBeCloseTo(110, 6);
    expect(sliceOf(track, track.distanceM[2], track.distanceM[4])[0].lng).toHaveLength(3);
  });

  it('never bridges a gap', () => {
    const paths = sliceOf(track, 250, 400);
    expect(paths.map((path) => lengthOf(path).toFixed(2))).toEqual(['50.00', '100.00']);
    expect(sliceOf(track, 0, 1e9).map((path) => path.lng.length)).toEqual([7, 7]);
    expect(sliceOf(track, 50, 50)).toEqual([]);
  });
});

describe('an offset path', () => {
  it('lies beside a straight one at its distance, left positive, at any latitude', () => {
    for (const lat of [0, 45, 60, -70]) {
      for (const [dLng, dLat, leftLng, leftLat] of [
        [1, 0, 0, 1],
        [0, 1, -1, 0],
        [-1, 0, 0, -1],
        [0, -1, 1, 0],
      ]) {
        const lng = Float64Array.from([0, 1, 2], (i) => 10 + i * dLng * 1e-3);
        const path = { lng, lat: Float64Array.from([0, 1, 2], (i) => lat + i * dLat * 1e-3) };
        const moved = offsetPath(path, 3);
        for (let i = 0; i < 3; i++) {
          expect(stepM(path.lng[i], path.lat[i], moved.lng[i], moved.lat[i])).toBeCloseTo(3, 4);
          expect(Math.sign(Math.round((moved.lng[i] - path.lng[i]) * 1e8))).toBe(leftLng);
          expect(Math.sign(Math.round((moved.lat[i] - path.lat[i]) * 1e8))).toBe(leftLat);
        }
      }
    }
  });

  it('keeps its distance around a corner, and goes no farther than twice it at a hairpin', () => {
    const [x, y] = [(m: number) => 10 + m / EAST_45, (m: number) => 45 + m / NORTH_45];
    const corner = { lng: Float64Array.of(x(0), x(50), x(50)), lat: Float64Array.of(y(0), y(0), y(50)) };
    const inner = offsetPath(corner, 2);
    expect(stepM(inner.lng[1], inner.lat[1], x(48), y(2))).toBeLessThan(0.01);
    const hairpin = { lng: Float64Array.of(x(0), x(50), x(0)), lat: Float64Array.of(y(0), y(0), y(0.5)) };
    const outer = offsetPath(hairpin, -2);
    expect(stepM(outer.lng[1], outer.lat[1], x(50), y(0))).toBeLessThan(4.01);
  });

  it('is unmoved by points that repeat', () => {
    const still = { lng: Float64Array.of(10, 10, 10, 10.001), lat: Float64Array.of(45, 45, 45, 45) };
    const moved = offsetPath(still, 3);
    for (let i = 0; i < 4; i++) expect(stepM(still.lng[i], 45, moved.lng[i], moved.lat[i])).toBeCloseTo(3, 3);
    const point = { lng: Float64Array.of(10, 10), lat: Float64Array.of(45, 45) };
    expect([...offsetPath(point, 3).lng].every(Number.isFinite)).toBe(true);
  });
});

describe('a simplified path', () => {
  it('keeps its ends and stays within the tolerance', () => {
    const track = trackOf(winding(2_000));
    const path = simplified(track, 5);
    expect(path.lng.length).toBeLessThan(700);
    expect([path.lng[0], path.lat.at(-1)]).toEqual([track.lng[0], track.lat.at(-1)]);
    const thin = trackOf(Array.from(path.lng, (lng, i) => [lng, path.lat[i]] as const));
    for (let i = 0; i < track.length; i++) {
      expect(Math.abs(nearestOn(thin, track.lng[i], track.lat[i]).acrossM)).toBeLessThan(5.05);
    }
  });

  it('may have any number of points that all matter', () => {
    const zigzag = { lng: new Float64Array(30_000), lat: new Float64Array(30_000) };
    for (let i = 0; i < zigzag.lng.length; i++) {
      zigzag.lng[i] = 10 + i * 1e-6;
      zigzag.lat[i] = 10 + (i % 2) * 1e-8 * i;
    }
    expect(simplified(zigzag, 2).lng.length).toBeGreaterThan(20_000);
  });

  it('runs on past 180 degrees', () => {
    const path = simplified(
      { lng: Float64Array.of(179.9, -180, -179.9), lat: Float64Array.of(0, 0.1, 0) },
      1,
    );
    expect([...path.lng].map((lng) => +lng.toFixed(6))).toEqual([179.9, 180, 180.1]);
  });
});
