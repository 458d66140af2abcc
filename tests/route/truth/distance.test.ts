import geodesic from 'geographiclib-geodesic';
import { describe, expect, it } from 'vitest';
import { bearingRad, metresPerDegree, stepM } from '../../../src/route/ellipsoid.ts';
import { cumulativeM } from '../../../src/route/points.ts';

// C. F. F. Karney, Algorithms for geodesics, Journal of Geodesy 87 (2013), as geographiclib-geodesic 2.2.0.
const WGS84 = geodesic.Geodesic.WGS84;

const PPM = 1e-6;
const LATITUDES = [-85, -60, -37, -0.01, 0, 12, 45, 60, 70, 80, 85];
const AZIMUTHS = Array.from({ length: 72 }, (_, i) => i * 5);

/** Karney's end point of a geodesic. */
function destination(lng: number, lat: number, azimuth: number, lengthM: number): [number, number] {
  const { lon2, lat2 } = WGS84.Direct(lat, lng, azimuth, lengthM);
  return [lon2!, lat2!];
}

describe('a step', () => {
  it.each([0.5, 5, 100, 999, 1_001, 9_999, 100_000])('of %s m is within 1 ppm of the geodesic', (lengthM) => {
    for (const lat of LATITUDES) {
      for (const azimuth of AZIMUTHS) {
        const [lng2, lat2] = destination(10, lat, azimuth, lengthM);
        expect(Math.abs(stepM(10, lat, lng2, lat2) - lengthM)).toBeLessThan(lengthM * PPM);
      }
    }
  });

  it('across the 180th meridian is as good', () => {
    for (const azimuth of [45, 90, 135, 225, 270, 315]) {
      const start = azimuth < 180 ? 179.99 : -179.99;
      const [lng2, lat2] = destination(start, -17, azimuth, 5_000);
      expect(Math.abs(stepM(start, -17, lng2, lat2) - 5_000)).toBeLessThan(5_000 * PPM);
    }
  });

  it('of a third of the globe is within 0.3 %, and never NaN', () => {
    for (const [lng2, lat2] of [
      [100, 10],
      [-100, -60],
      [179, 1],
      [0, 89],
      [180, 0],
    ]) {
      const truth = WGS84.Inverse(5, 0, lat2, lng2).s12!;
      expect(stepM(0, 5, lng2, lat2)).not.toBeNaN();
      if (truth < 13e6) expect(Math.abs(stepM(0, 5, lng2, lat2) / truth - 1)).toBeLessThan(0.003);
    }
  });
});

describe('a whole track', () => {
  it('of 2,000 steps is within 1 ppm of the sum of geodesics', () => {
    const lng = new Float64Array(2_000);
    const lat = new Float64Array(2_000);
    [lng[0], lat[0]] = [11.5, 37.2];
    let truth = 0;
    for (let i = 1; i < lng.length; i++) {
      const azimuth = (i * 137.5) % 360;
      const lengthM = 3 + (i % 40);
      [lng[i], lat[i]] = destination(lng[i - 1], lat[i - 1], azimuth, lengthM);
      truth += lengthM;
    }
    const total = cumulativeM(lng, lat, Uint32Array.of(0)).at(-1)!;
    expect(Math.abs(total - truth)).toBeLessThan(truth * PPM);
  });
});

describe('a bearing', () => {
  it('is within 0.01 degrees of the azimuth half way, over 1 km', () => {
    for (const lat of [-60, -37, 0, 45, 60, 70]) {
      for (const azimuth of AZIMUTHS) {
        const [lng2, lat2] = destination(10, lat, azimuth, 1_000);
        const { azi1, azi2 } = WGS84.Inverse(lat, 10, lat2, lng2);
        const half = azi1! + turnDeg(azi2! - azi1!) / 2;
        const ours = (bearingRad(10, lat, lng2, lat2) * 180) / Math.PI;
        expect(Math.abs(turnDeg(ours - half))).toBeLessThan(0.01);
      }
    }
  });
});

describe('a degree', () => {
  it.each([0, 30, 45, 60, 80])('at latitude %s measures what its geodesic does', (lat) => {
    const { east, north } = metresPerDegree(lat);
    const small = 1e-3;
    expect(east * small).toBeCloseTo(WGS84.Inverse(lat, 0, lat, small).s12!, 4);
    expect(north * small).toBeCloseTo(WGS84.Inverse(lat - small / 2, 0, lat + small / 2, 0).s12!, 4);
  });
});

function turnDeg(degrees: number): number {
  return ((((degrees + 180) % 360) + 360) % 360) - 180;
}
