import fc from 'fast-check';
import { expect, test } from 'vitest';
import { boxOfTile, tileOf, tilesAlong } from '../../src/archive/publish/webTile.ts';

const ZOOM = 12;
const lng = fc.double({ min: -179.9, max: 179.9, noNaN: true });
const lat = fc.double({ min: -84, max: 84, noNaN: true });

test('a position lies in the ground of its tile', () => {
  fc.assert(
    fc.property(lng, lat, fc.integer({ min: 0, max: 15 }), (x, y, zoom) => {
      const [west, south, east, north] = boxOfTile(tileOf(x, y, zoom), zoom);
      const slack = 1e-9;
      expect(x).toBeGreaterThanOrEqual(west - slack);
      expect(x).toBeLessThanOrEqual(east + slack);
      expect(y).toBeGreaterThanOrEqual(south - slack);
      expect(y).toBeLessThanOrEqual(north + slack);
    }),
    { seed: 5, numRuns: 2_000 },
  );
});

test('wherever a path passes, one of its tiles is there or beside, and none of them is told twice over', () => {
  const step = fc.double({ min: -0.6, max: 0.6, noNaN: true });
  const path = fc.tuple(
    fc.double({ min: -170, max: 170, noNaN: true }),
    fc.double({ min: -70, max: 70, noNaN: true }),
    fc.array(fc.tuple(step, step), { minLength: 1, maxLength: 12 }),
  );
  fc.assert(
    fc.property(path, ([startLng, startLat, steps]) => {
      const places = [{ lng: startLng, lat: startLat }];
      for (const [dx, dy] of steps) {
        const last = places[places.length - 1];
        places.push({ lng: last.lng + dx / 3, lat: last.lat + dy / 3 });
      }
      const first = tileOf(startLng, startLat, ZOOM);
      const columns = { lng: places.map((one) => one.lng), lat: places.map((one) => one.lat) };
      const tiles = tilesAlong(first, [columns], ZOOM);
      expect(tiles[0]).toEqual(first);
      const touching = tiles.filter(([x, y], i) =>
        tiles.slice(0, i).some(([tx, ty]) => Math.abs(tx - x) <= 1 && Math.abs(ty - y) <= 1),
      );
      expect(touching).toEqual([]);
      const missed: unknown[] = [];
      const isNear = ([x, y]: readonly [number, number]) =>
        tiles.some(([tx, ty]) => Math.abs(tx - x) <= 1 && Math.abs(ty - y) <= 1);
      for (let i = 1; i < places.length; i++)
        for (let part = 0; part <= 1; part += 0.01) {
          const [from, to] = [places[i - 1], places[i]];
          // Between two points a track runs straight on the map that tiles are cut from.
          const at = tileOf(from.lng + part * (to.lng - from.lng), between(from.lat, to.lat, part), ZOOM);
          if (!isNear(at)) missed.push(at);
        }
      expect(missed).toEqual([]);
    }),
    { seed: 6, numRuns: 300 },
  );
});

function between(from: number, to: number, part: number): number {
  const y = (deg: number) => Math.asinh(Math.tan((deg * Math.PI) / 180));
  return (Math.atan(Math.sinh(y(from) + part * (y(to) - y(from)))) * 180) / Math.PI;
}
