import { describe, expect, it } from 'vitest';
import type { Cell } from '../../src/convoy/matrix.ts';
import { rowOf } from '../../src/convoy/matrix.ts';
import { openTo, trackWidthOf } from '../../src/convoy/openTo.ts';
import type { VerdictWord } from '../../src/grade/verdict.ts';
import type { Obstacle } from '../../src/terrain/obstacle.ts';
import { PRESETS, stretchFrom } from '../../src/terrain/preset.ts';
import { rad } from '../../src/units.ts';
import { classValues } from '../../src/vehicle/classes.ts';
import type { Vehicle } from '../../src/vehicle/vehicle.ts';
import { VEHICLE_CLASSES } from '../../src/vehicle/vehicle.ts';

function vehicle(id: string, frontTrackWidthM: number, rearTrackWidthM = frontTrackWidthM): Vehicle {
  const values = { ...classValues('compact 4x4'), frontTrackWidthM, rearTrackWidthM };
  return { id, name: id, driver: '', vehicleClass: 'compact 4x4', values, estimated: [] };
}

function cell(vehicleId: string, word: VerdictWord): Cell {
  const verdict = { word } as Cell['verdicts'][number]['verdict'];
  const main = { word: 'does not go' } as Cell['verdicts'][number]['verdict'];
  return {
    obstacleId: 'o',
    vehicleId,
    verdicts: [
      { lineId: 'main', verdict: main },
      { lineId: 'left', verdict },
    ],
    best: 1,
  };
}

/** Vehicles of these widths with these words on the line `left`. */
function open(...words: (readonly [widthM: number, word: VerdictWord | null])[]) {
  const vehicles = words.map(([widthM], i) => vehicle(`v${i}`, widthM));
  const cells = words.flatMap(([, word], i) => (word === null ? [] : cell(`v${i}`, word)));
  return openTo('left', vehicles, cells);
}

describe('the track widths that a line is open to', () => {
  it('run from the least to the greatest of those that go, with care or without', () => {
    expect(open([1.66, 'does not go'], [1.42, 'goes'], [1.52, 'goes with care'])).toEqual({
      trackWidthM: { least: 1.42, greatest: 1.52 },
      shutTo: [],
    });
  });

  it.each(['needs momentum', 'needs a pull', 'does not go'] as const)('do not hold one that %s', (word) => {
    expect(open([1.42, 'goes'], [1.52, word])?.trackWidthM).toEqual({ least: 1.42, greatest: 1.42 });
  });

  it('count the wider of front and rear', () => {
    expect(trackWidthOf(vehicle('v', 1.4, 1.48))).toBe(1.48);
    expect(trackWidthOf(vehicle('v', 1.5, 1.48))).toBe(1.5);
  });

  it('name who does not go though as wide as those that do', () => {
    const found = open(
      [1.4, 'goes'],
      [1.57, 'needs a pull'],
      [1.58, 'goes'],
      [1.58, 'not known'],
      [1.66, 'does not go'],
    );
    expect(found?.trackWidthM).toEqual({ least: 1.4, greatest: 1.58 });
    expect(found?.shutTo.map(({ id }) => id)).toEqual(['v1', 'v3']);
  });

  it('are none where nobody goes', () => {
    expect(open([1.4, 'needs a pull'], [1.6, 'does not go'])).toEqual({ trackWidthM: null, shutTo: [] });
  });

  it('are not told while a verdict is still to come, or without a convoy', () => {
    expect(open([1.4, 'goes'], [1.6, null])).toBeNull();
    expect(open()).toBeNull();
    expect(openTo('right', [vehicle('v0', 1.4)], [cell('v0', 'goes')])).toBeNull();
  });

  it('are not said to be none where it is not known of all', () => {
    expect(open([1.4, 'does not go'], [1.6, 'not known'])).toBeNull();
  });

  it('are those that the matrix gives', () => {
    const obstacle = {
      id: 'o',
      name: 'o',
      preset: PRESETS[0].name,
      lng: 0,
      lat: 0,
      stationM: 0,
      stretch: stretchFrom(PRESETS[0], { slopeRad: rad(8) }),
      lines: [
        { id: 'main', kind: 'main', name: 'main', offsetM: 0 },
        { id: 'left', kind: 'offset', name: 'left', offsetM: 0.4 },
      ],
      note: '',
      photos: [],
    } satisfies Obstacle;
    const convoy = VEHICLE_CLASSES.map((vehicleClass): Vehicle => ({
      ...vehicle(vehicleClass, 1),
      vehicleClass,
      values: classValues(vehicleClass),
    }));
    const cells = rowOf({ obstacle, trackSlope: null }, convoy, 'as recorded');
    const inside = (v: Vehicle) =>
      ['goes', 'goes with care'].includes(cells[convoy.indexOf(v)].verdicts[1].verdict.word);
    const found = openTo('left', convoy, cells);
    const goes = convoy.filter(inside).map(trackWidthOf);
    expect(found).not.toBeNull();
    expect(found?.trackWidthM).toEqual(
      goes.length === 0 ? null : { least: Math.min(...goes), greatest: Math.max(...goes) },
    );
    for (const { id } of found!.shutTo) expect(inside(convoy.find((v) => v.id === id)!)).toBe(false);
  });
});
