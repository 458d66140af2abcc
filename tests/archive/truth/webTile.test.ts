import { expect, test } from 'vitest';
import { tileOf } from '../../../src/archive/publish/webTile.ts';

// OGC 17-083r4, Two Dimensional Tile Matrix Set (2022), WebMercatorQuad: level 1 has two by two tiles that meet at 0°, 0°, the
// first in the north-west. Which tile it is, is exact.
test('positions lie in the tiles that the standard puts them in', () => {
  expect(tileOf(-0.001, 0.001, 1)).toEqual([0, 0]);
  expect(tileOf(0.001, -0.001, 1)).toEqual([1, 1]);
  expect(tileOf(-180, 90, 3)).toEqual([0, 0]);
  expect(tileOf(180, -90, 3)).toEqual([7, 7]);
});

// IOGP Publication 373-7-2, Geomatics Guidance Note 7 part 2, Popular Visualisation Pseudo-Mercator (EPSG method 1024), worked
// example for EPSG:3857; values from memory. Half the side of the square is pi times the semi-major axis of WGS 84.
test.each([4, 10, 14])(
  'at zoom %i the published place lies in the tile around its published projection',
  (zoom) => {
    const [lng, lat] = [-(100 + 20 / 60), 24 + 22 / 60 + 54.433 / 3600];
    const [eastingM, northingM] = [-11_169_055.58, 2_800_000];
    const halfM = Math.PI * 6_378_137;
    const tileM = (2 * halfM) / 2 ** zoom;
    const around = [Math.floor((eastingM + halfM) / tileM), Math.floor((halfM - northingM) / tileM)];
    expect(tileOf(lng, lat, zoom)).toEqual(around);
  },
);
