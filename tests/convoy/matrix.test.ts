import { describe, expect, it } from 'vitest';
import { inOrderOfTravel, matrixOf, rowOf } from '../../src/convoy/matrix.ts';
import { rankOf } from '../../src/grade/verdict.ts';
import type { Obstacle } from '../../src/terrain/obstacle.ts';
import { PRESETS, stretchFrom } from '../../src/terrain/preset.ts';
import { rad } from '../../src/units.ts';
import { classValues } from '../../src/vehicle/classes.ts';
import type { Vehicle } from '../../src/vehicle/vehicle.ts';
import { VEHICLE_CLASSES } from '../../src/vehicle/vehicle.ts';

const places = PRESETS.slice(0, 4).map((preset, i) => ({
  obstacle: {
    id: preset.name,
    name: preset.name,
    preset: preset.name,
    lng: 0,
    lat: 0,
    stationM: i * 100,
    stretch: stretchFrom(preset, { slopeRad: rad(8) }),
    lines: [
      { id: 'main', kind: 'main', name: 'main', offsetM: 0 },
      { id: 'left', kind: 'offset', name: 'left', offsetM: 0.4 },
    ],
    note: '',
    photos: [],
  } satisfies Obstacle,
  trackSlope: null,
}));

const vehicles: Vehicle[] = VEHICLE_CLASSES.slice(0, 3).map((vehicleClass) => ({
  id: vehicleClass,
  name: vehicleClass,
  driver: '',
  vehicleClass,
  values: classValues(vehicleClass),
  estimated: [],
}));

describe('the matrix', () => {
  it('has obstacles in order of travel and vehicles in convoy order', () => {
    const { cells } = matrixOf(places, vehicles, 'reversed');
    expect(cells.map((row) => row[0].obstacleId)).toEqual(places.map((p) => p.obstacle.id).toReversed());
    expect(cells[0].map((cell) => cell.vehicleId)).toEqual(vehicles.map((v) => v.id));
  });

  it('no line of a cell has a better word than its best', () => {
    for (const row of matrixOf(places, vehicles, 'as recorded').cells)
      for (const cell of row)
        for (const { verdict } of cell.verdicts)
          expect(rankOf(cell.verdicts[cell.best].verdict.word)).toBeLessThanOrEqual(rankOf(verdict.word));
  });

  it('a cell asked alone is the cell of the matrix', () => {
    const { cells } = matrixOf(places, vehicles, 'as recorded');
    expect(rowOf(places[2], [vehicles[1]], 'as recorded')).toEqual([cells[2][1]]);
  });

  it('order of travel leaves what it was given alone', () => {
    const given = [1, 2, 3];
    expect(inOrderOfTravel(given, 'reversed')).toEqual([3, 2, 1]);
    expect(given).toEqual([1, 2, 3]);
  });
});
