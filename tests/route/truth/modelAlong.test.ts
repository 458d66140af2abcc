import { execFileSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { camberAt } from '../../../src/route/camber.ts';
import { readGeoTiff } from '../../../src/route/geoTiff.ts';
import { modelAlong } from '../../../src/route/modelAlong.ts';
import { slopeAt, slopeOf } from '../../../src/route/slope.ts';
import type { Track } from '../../../src/route/track.ts';
import { degrees, rad } from '../../../src/units.ts';
import { gdal, needGdal, scratchFolder } from '../../gdal.ts';
import { trackOf } from '../recorded.ts';

/**
 * Against GDAL (gdal.org, 3.6.2 in Debian 12), which makes the model, in UTM with 30 m cells, and reads it by code of its
 * own: heights by gdallocationinfo; slope and aspect by gdaldem with the formula of Zevenbergen and Thorne (Earth Surface
 * Processes and Landforms 12, 1987), one cell to either side. Aspect is the way the ground falls, clockwise from north.
 */

const folder = scratchFolder();
const [COLUMNS, ROWS] = [160, 150];
const CELL_M = 30;
const file = (name: string) => join(folder, `${name}.tif`);

/** The cells of a way to the north-east near the middle meridian of its zone, where grid north is north to 0.02°. */
const CELLS = Array.from({ length: 100 }, (_, i) => [20 + i, 125 - i] as const);
const BEARING = 45;

let track: Track;

function theirs(name: string): number[] {
  const input = CELLS.map((cell) => cell.join(' ')).join('\n');
  const text = execFileSync('gdallocationinfo', ['-valonly', file(name)], { input, encoding: 'utf8' });
  return text.trim().split('\n').map(Number);
}

/** Rise over run towards a bearing, by GDAL's slope and aspect. */
function risesTowards(bearing: number): number[] {
  const aspects = theirs('aspect');
  return theirs('slope').map((slope, i) => Math.tan(rad(slope)) * Math.cos(rad(bearing - aspects[i] - 180)));
}

beforeAll(async () => {
  needGdal();
  const rows = Array.from({ length: ROWS }, (_, row) =>
    Array.from({ length: COLUMNS }, (_, column) =>
      (600 + 120 * Math.sin(column / 13) + 90 * Math.cos(row / 11)).toFixed(3),
    ).join(' '),
  );
  const ascii = join(folder, 'hills.asc');
  writeFileSync(
    ascii,
    `ncols ${COLUMNS}\nnrows ${ROWS}\nxllcorner 498000\nyllcorner 5200000\ncellsize ${CELL_M}\n${rows.join('\n')}\n`,
  );
  gdal('gdal_translate', '-q', '-a_srs', 'EPSG:32633', '-ot', 'Float32', ascii, file('hills'));
  for (const what of ['slope', 'aspect'])
    gdal('gdaldem', what, '-q', '-alg', 'ZevenbergenThorne', file('hills'), file(what));
  const placed = execFileSync('gdaltransform', ['-t_srs', 'EPSG:4326', file('hills')], {
    input: CELLS.map(([x, y]) => `${x + 0.5} ${y + 0.5}`).join('\n'),
    encoding: 'utf8',
  });
  const places = placed
    .trim()
    .split('\n')
    .map((line) => line.split(' ').map(Number));
  const grid = (await readGeoTiff(new Blob([readFileSync(file('hills'))]))).value!;
  const bare = trackOf(places.map(([lng, lat]) => [lng, lat, 0] as const));
  track = { ...bare, model: { ...modelAlong(bare, grid, 'hills.tif')!, isUsed: true } };
}, 300_000);

describe('a model along a track', () => {
  test('has the heights that GDAL reads there, to 0.5 m', () => {
    // Read off twice between nodes, of ground that bends by at most 1.1 mm a metre and metre: 30² / 8 × 0.0011 m each time.
    theirs('hills').forEach((height, i) =>
      expect(Math.abs(track.model!.elevationM[i] - height)).toBeLessThan(0.5),
    );
  });

  test('has its cross slopes, to half a degree, on ground of up to 25°', () => {
    const wanted = risesTowards(BEARING - 90).map((rise) => degrees(Math.atan(rise)));
    expect(Math.max(...wanted.map(Math.abs))).toBeGreaterThan(15);
    wanted.forEach((camber, i) => {
      const { camberRad } = camberAt(track, track.distanceM[i])!;
      expect(Math.abs(degrees(camberRad) - camber)).toBeLessThan(0.5);
    });
  });

  test('has its slopes, to half a degree and within its own ±', () => {
    const profile = slopeOf(track);
    expect(profile.from).toBe('model');
    const wanted = risesTowards(BEARING).map((rise) => degrees(Math.atan(rise)));
    expect(Math.max(...wanted.map(Math.abs))).toBeGreaterThan(15);
    // The straight line over one baseline ends at the ends of the track, where it says what lies half a baseline inward.
    for (let i = 2; i < CELLS.length - 2; i++) {
      const { slopeRad, plusMinusRad } = slopeAt(profile, track.distanceM[i]);
      expect(Math.abs(degrees(slopeRad) - wanted[i])).toBeLessThan(0.5);
      expect(Math.abs(degrees(slopeRad) - wanted[i])).toBeLessThan(degrees(plusMinusRad));
    }
  });
});
