import { readFileSync } from 'node:fs';
import { readTrip } from '../../src/archive/share.ts';
import type { Trip } from '../../src/archive/trip.ts';
import { Points } from '../../src/route/points.ts';

export const DEMO: Trip = readTrip(
  readFileSync(new URL('../../public/demo/outing.json', import.meta.url), 'utf8'),
).value!;

/** Names that try to be something else: markup, entities, control characters, the other direction of writing. */
export const CORPUS = [
  `</name><script>alert(1)</script>`,
  `"'><img src=x onerror=alert(1)>`,
  ']]><!--',
  '<![CDATA[x]]>',
  '&lt;b&gt; &amp; &#60; &nbsp;',
  '<?xml version="1.0"?><!DOCTYPE a [<!ENTITY e SYSTEM "file:///etc/passwd">]>&e;',
  '${7*7} {{7*7}} <%= 7 %>',
  '\u202Eright to left\u202C',
  'emoji 🚙, ruts ≥ 30 cm, Grüße, 道',
  'tab\tand\nline',
  '","geometry":null,"x":"',
];

/** Every text of a trip replaced. */
export function named(text: string): Trip {
  const [obstacle] = DEMO.obstacles;
  return {
    ...DEMO,
    name: text,
    note: text,
    track: { ...DEMO.track!, name: text, description: text },
    waypoints: DEMO.waypoints.slice(0, 1).map((one) => ({ ...one, name: text, description: text })),
    obstacles: [
      {
        ...obstacle,
        name: text,
        note: text,
        preset: text,
        lines: obstacle.lines.map((line) => ({ ...line, name: text })),
      },
    ],
  };
}

/** A trip over the antimeridian, at sea level and below, with and without times and heights. */
export function overTheAntimeridian(): Trip {
  const points = new Points();
  const rows: readonly (readonly [lng: number, lat: number, elevationM: number, timeS: number])[] = [
    [179.999, -17, 0, 1_000_000_000],
    [179.9995, -17.0001, -3.25, 1_000_000_001.5],
    [-179.9995, -17.0002, NaN, NaN],
    [-179.999, -17.0003, 1e-7, 1_000_000_005],
  ];
  for (const row of rows) points.push(...row);
  return { ...DEMO, track: points.take('track', 'Over', ''), obstacles: [], waypoints: [] };
}
