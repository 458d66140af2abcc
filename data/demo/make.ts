/**
 * Makes the demonstration's ground, recording and outing, all invented, the same on every run:
 *   npx tsx data/demo/make.ts
 */
import { writeFileSync } from 'node:fs';
import { gzipSync } from 'fflate';
import type { ElevationGrid } from '../../src/route/elevation.ts';
import { tripToJson } from '../../src/archive/share.ts';
import { problemText } from '../../src/problem.ts';
import { readGpx } from '../../src/route/gpx.ts';
import { outing } from './outing.ts';
import { gridOf, invented } from './place.ts';
import type { Fix } from './recording.ts';
import { driven } from './recording.ts';
import { wayThrough } from './way.ts';

const SEED = 7;
const START_S = Date.UTC(2025, 4, 17, 22, 4, 10) / 1000;

/** Places the track goes through, metres east and north of the corner of the sheet. */
const VIA = [
  [1200, 145],
  [2050, 545],
  [2750, 1345],
  [4080, 2645],
  [4300, 3115],
  [3520, 3725],
  [2900, 3895],
  [2150, 3645],
  [2450, 2545],
  [600, 1745],
] as const;

/** Where the driver got out to look, and where the valley wall hid the sky, metres along. */
const HALTS_M = [725, 3560, 6610];
const LOST_M = [8_960, 9_140] as const;

const NAMED: readonly (readonly [string, string, number])[] = [
  ['Thimble Flat', 'Air down here; room for a dozen vehicles.', 30],
  ['First ford', 'Thimble Creek, firm gravel when low.', 735],
  ['Lantern Saddle', '', 4_395],
  ['Ember Top', 'Highest place; radio reaches both valleys.', 5_110],
  ['Second ford', 'Walk it first: cobbles > 30 cm & a ledge on the far side.', 9_640],
  ['Bellows Gate', 'Leave it as found.', 12_640],
];

const place = invented(SEED);
const way = wayThrough(place, VIA);
const fixes = driven(place, way, START_S, HALTS_M, SEED + 10);
const recorded = new TextEncoder().encode(gpx(fixes));
writeFileSync('public/demo/hobnail-spur.gpx', recorded);
writeFileSync('public/demo/ember-range.asc.gz', gzipSync(ascii(gridOf(place)), { level: 9, mtime: 0 }));

const { value: recording, problems } = await readGpx(recorded);
if (recording === null || problems.length > 0) throw new Error(problems.map(problemText).join('\n'));
writeFileSync('public/demo/outing.json', tripToJson(outing(recording)));

function ascii(grid: ElevationGrid): Uint8Array {
  const header = [
    `ncols ${grid.columns}`,
    `nrows ${grid.rows}`,
    `xllcenter ${grid.west}`,
    `yllcenter ${grid.south}`,
    `cellsize ${grid.lngStepDeg}`,
    'NODATA_value -9999',
  ];
  const rows = Array.from({ length: grid.rows }, (_, row) =>
    Array.from(grid.elevationM.subarray(row * grid.columns, (row + 1) * grid.columns), (z) =>
      String(Math.round(z * 10) / 10),
    ).join(' '),
  );
  return new TextEncoder().encode([...header, ...rows, ''].join('\n'));
}

function gpx(all: readonly Fix[]): string {
  const kept = [all.filter((f) => f.alongM < LOST_M[0]), all.filter((f) => f.alongM > LOST_M[1])];
  const waypoints = NAMED.map(([name, description, alongM]) => {
    const fix = all.find((f) => f.alongM >= alongM) ?? all[all.length - 1];
    const text = description && `<desc>${escaped(description)}</desc>`;
    return `  <wpt ${position(fix)}><ele>${fix.elevationM.toFixed(1)}</ele><name>${name}</name>${text}</wpt>`;
  });
  const segments = kept.flatMap((fixesOf) => [
    '    <trkseg>',
    ...fixesOf.map(
      (f) =>
        `      <trkpt ${position(f)}><ele>${f.elevationM.toFixed(1)}</ele><time>${time(f.timeS)}</time></trkpt>`,
    ),
    '    </trkseg>',
  ]);
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    '<gpx version="1.1" creator="data/demo/make.ts" xmlns="http://www.topografix.com/GPX/1/1">',
    `  <metadata><name>Hobnail Spur</name><time>${time(START_S)}</time></metadata>`,
    ...waypoints,
    '  <trk>',
    '    <name><![CDATA[Hobnail Spur & Thimble Creek]]></name>',
    '    <desc>An invented track in the invented Ember Range: up the spur, over Lantern Saddle &amp; back down the creek.</desc>',
    ...segments,
    '  </trk>',
    '</gpx>',
    '',
  ].join('\n');
}

function position(fix: Fix): string {
  return `lat="${fix.lat.toFixed(7)}" lon="${fix.lng.toFixed(7)}"`;
}

function time(seconds: number): string {
  return new Date(seconds * 1000).toISOString().replace('.000', '');
}

function escaped(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
}
