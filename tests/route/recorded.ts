import { metresPerDegree } from '../../src/route/ellipsoid.ts';
import { Points } from '../../src/route/points.ts';
import type { Track } from '../../src/route/track.ts';

/** One point of a made-up recording: degrees, metres. */
export type Recorded = readonly [lng: number, lat: number, elevationM?: number];

/** A track of these points; each list is a recorded segment. */
export function trackOf(...segments: readonly (readonly Recorded[])[]): Track {
  const points = new Points();
  for (const segment of segments) {
    for (const [lng, lat, elevationM = NaN] of segment) points.push(lng, lat, elevationM, NaN);
    points.endSegment();
  }
  return points.take('track', 'made up', '');
}

/** Points due north from 10 E 45 N at these distances, with a height for each. */
export function northward(stationsM: readonly number[], heightM: (stationM: number) => number): Recorded[] {
  const { north } = metresPerDegree(45);
  return stationsM.map((stationM) => [10, 45 + stationM / north, heightM(stationM)]);
}

/** `from`, `from + step`, ... up to and including `to`. */
export function every(stepM: number, toM: number, fromM = 0): number[] {
  return Array.from({ length: Math.floor((toM - fromM) / stepM + 1e-9) + 1 }, (_, i) => fromM + i * stepM);
}

/** A seeded stream of numbers in [0, 1): the minimal standard generator of Park and Miller, CACM 31 (1988). */
export function random(seed: number): () => number {
  let state = seed;
  return () => (state = (state * 16_807) % 2_147_483_647) / 2_147_483_647;
}
