import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readTrip } from '../src/archive/share.ts';
import { rowOf } from '../src/convoy/matrix.ts';
import { placesOn } from '../src/convoy/places.ts';
import { readAsciiGrid } from '../src/route/asciiGrid.ts';
import { heightAt } from '../src/route/elevation.ts';

const { value, problems } = readTrip(readFileSync('public/demo/outing.json', 'utf8'));
const trip = value!;
const places = placesOn(trip.track, trip.obstacles);

function rowAt(name: string) {
  const place = places.find(({ obstacle }) => obstacle.name === name)!;
  const cells = rowOf(place, trip.vehicles, 'as recorded');
  return (vehicle: string) => {
    const cell = cells[trip.vehicles.findIndex((one) => one.name === vehicle)];
    const on = (lineId: string) => cell.verdicts.find((one) => one.lineId === lineId)!.verdict;
    return { best: cell.verdicts[cell.best], on };
  };
}

describe('the demonstration', () => {
  it('reads without a word: about 12 km, at least eight obstacles of different kinds, six vehicles', () => {
    expect(problems).toEqual([]);
    expect(trip.track!.distanceM.at(-1)! / 1000).toBeCloseTo(12.6, 1);
    expect(new Set(trip.obstacles.map((obstacle) => obstacle.preset)).size).toBeGreaterThanOrEqual(8);
    expect(trip.vehicles).toHaveLength(6);
  });

  it('lies on its own ground', () => {
    const grid = readAsciiGrid(readFileSync('public/demo/ember-range.asc.gz')).value!;
    const { lng, lat, elevationM, length } = trip.track!;
    const off = Array.from({ length }, (_, i) => Math.abs(elevationM[i] - heightAt(grid, lng[i], lat[i])));
    expect(off.toSorted((a, b) => a - b)[Math.floor(length / 2)]).toBeLessThan(5);
  });

  it('has a rutted climb that a wide vehicle with open differentials does not climb, and with lockers does', () => {
    const ruts = rowAt('Hobnail ruts');
    const [open, locked] = ['Oxbow', 'Bracken'].map((name) =>
      trip.vehicles.find((one) => one.name === name)!,
    );
    for (const field of ['widthM', 'frontTrackWidthM', 'tyreDiameterM', 'massKg', 'crawlRatio'] as const)
      expect(open.values[field]).toBe(locked.values[field]);
    for (const line of ['main', 'left', 'right'])
      expect(['needs a pull', 'does not go']).toContain(ruts('Oxbow').on(line).word);
    const { verdict } = ruts('Bracken').best;
    expect(['goes', 'goes with care']).toContain(verdict.word);
    expect(verdict.rung.aids.rearLocked).toBe(true);
    expect(verdict.entrySpeedMps).toBe(0);
  });

  it('and that a narrow vehicle passes on an offset line on one side only', () => {
    const pebble = rowAt('Hobnail ruts')('Pebble');
    expect(pebble.best.lineId).toBe('right');
    expect(pebble.on('right').word).toBe('goes');
    expect(pebble.on('left').word).toBe('does not go');
    expect(pebble.on('left').cause).toMatch(/slide/);
  });
});
