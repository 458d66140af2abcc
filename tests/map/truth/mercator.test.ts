import { describe, expect, it } from 'vitest';
import { placeOfTile } from '../../../src/map/groundTile.ts';

/** Half the side of the Web Mercator square: pi times the semi-major axis of WGS 84. */
const HALF_M = Math.PI * 6_378_137;

/**
 * IOGP Publication 373-7-2, Geomatics Guidance Note 7 part 2, Popular Visualisation Pseudo-Mercator (EPSG method 1024),
 * worked example for EPSG:3857; values from memory.
 */
const EXAMPLE = {
  lat: 24 + 22 / 60 + 54.433 / 3600,
  lng: -(100 + 20 / 60),
  eastingM: -11_169_055.58,
  northingM: 2_800_000.0,
};

describe('the place of a tile', () => {
  it.each([0, 7, 14])('at zoom %i is that of the published projection within 1 cm', (zoom) => {
    const tiles = 2 ** zoom;
    const x = ((EXAMPLE.eastingM + HALF_M) / (2 * HALF_M)) * tiles;
    const y = ((HALF_M - EXAMPLE.northingM) / (2 * HALF_M)) * tiles;
    const { lng, lat } = placeOfTile(zoom, x, y);
    expect(Math.abs(lng - EXAMPLE.lng) * 101_000).toBeLessThan(0.01);
    expect(Math.abs(lat - EXAMPLE.lat) * 111_000).toBeLessThan(0.01);
  });
});
