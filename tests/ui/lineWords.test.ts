import { describe, expect, it } from 'vitest';
import type { Cell } from '../../src/convoy/matrix.ts';
import type { VerdictWord } from '../../src/grade/verdict.ts';
import type { Line, Obstacle } from '../../src/terrain/obstacle.ts';
import { fareOf, wordsForConvoy, wordsForOne } from '../../src/ui/lineWords.ts';
import { classValues } from '../../src/vehicle/classes.ts';
import type { Vehicle } from '../../src/vehicle/vehicle.ts';

const MAIN: Line = { id: 'main', kind: 'main', name: 'main line', offsetM: 0 };
const LEFT: Line = { id: 'left', kind: 'offset', name: 'by the bank', offsetM: 0.4 };
const OBSTACLE = { id: 'o', lines: [MAIN, LEFT] } as unknown as Obstacle;

const VEHICLES = [1.42, 1.6].map((widthM, i): Vehicle => {
  const values = { ...classValues('compact 4x4'), frontTrackWidthM: widthM, rearTrackWidthM: widthM };
  return { id: `v${i}`, name: `v${i}`, driver: '', vehicleClass: 'compact 4x4', values, estimated: [] };
});

function cell(vehicleId: string, best: number, ...words: VerdictWord[]): Cell {
  const verdicts = words.map((word, i) => ({
    lineId: OBSTACLE.lines[i].id,
    verdict: { word } as Cell['verdicts'][number]['verdict'],
  }));
  return { obstacleId: 'o', vehicleId, verdicts, best };
}

describe('words beside the lines of an obstacle', () => {
  const cells = [cell('v0', 1, 'does not go', 'goes'), cell('v1', 0, 'needs a pull', 'does not go')];

  it('are the track widths that all lines but the main line are open to', () => {
    expect(wordsForConvoy(OBSTACLE, VEHICLES, cells, 'as recorded', 'metric')).toEqual([
      [LEFT, { call: 'left 0.40 m', note: 'track width 1.42 m' }],
    ]);
  });

  it('tell no width before all verdicts are there', () => {
    expect(wordsForConvoy(OBSTACLE, VEHICLES, cells.slice(0, 1), 'reversed', 'metric')).toEqual([
      [LEFT, { call: 'right 0.40 m', note: '' }],
    ]);
  });

  it('are the verdicts of one vehicle where it is looked at alone, where there is a choice', () => {
    expect(wordsForOne(OBSTACLE, cells[0], 'as recorded', 'metric')).toEqual([
      [MAIN, { call: 'main line', note: 'does not go' }],
      [LEFT, { call: 'left 0.40 m', note: 'goes' }],
    ]);
    expect(wordsForOne({ ...OBSTACLE, lines: [MAIN] }, cells[0], 'as recorded', 'metric')).toEqual([]);
    expect(wordsForOne(OBSTACLE, undefined, 'as recorded', 'metric')[1][1].note).toBe('');
  });
});

describe('how one vehicle fares at an obstacle', () => {
  it('is its best line, and a word where more is asked than to drive on', () => {
    const goes = fareOf(OBSTACLE, cell('v0', 1, 'does not go', 'goes'), 'Pebble');
    expect(goes).toMatchObject({ line: LEFT, word: '', spoken: 'Pebble: goes on by the bank', fill: 'goes' });
    const pulled = fareOf(OBSTACLE, cell('v0', 0, 'needs a pull', 'does not go'), '');
    expect(pulled).toMatchObject({ line: MAIN, word: 'needs a pull', fill: 'needs-a-pull' });
    expect(pulled.spoken).toBe('the vehicle: needs a pull on main line');
  });

  it.each(['does not go', 'not known'] as const)('points out no line where it %s', (word) => {
    const fare = fareOf(OBSTACLE, cell('v0', 0, word, word), 'Pebble');
    expect(fare).toMatchObject({ line: null, word, spoken: `Pebble: ${word}` });
  });

  it('has a mark of its own for each word', () => {
    const words = [
      'goes',
      'goes with care',
      'needs momentum',
      'needs a pull',
      'does not go',
      'not known',
    ] as const;
    const marks = words.map((word) => fareOf(OBSTACLE, cell('v0', 0, word, word), '').mark);
    expect(new Set(marks).size).toBe(words.length);
  });
});
