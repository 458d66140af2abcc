import { describe, expect, it } from 'vitest';
import type { Spot } from '../../src/archive/spot.ts';
import { featureFields } from '../../src/terrain/feature.ts';
import { changeText } from '../../src/ui/historyText.ts';
import { mergeText } from '../../src/ui/mergeText.ts';
import { spotText, valueText } from '../../src/ui/spotText.ts';
import { EVERYTHING, isNarrow, isOld, wantedOf } from '../../src/ui/trackQuery.ts';

const DEPTH: Spot = {
  of: 'visit',
  obstacleId: 'o',
  obstacleName: 'North step',
  id: 'v',
  name: '',
  atMs: new Date(2025, 4, 4, 12).getTime(),
  feature: { kind: 'rut', number: 1 },
  field: 'depthM',
  table: featureFields.rut.depthM,
  isJudged: true,
};
const NAME: Spot = {
  ...DEPTH,
  of: 'track',
  obstacleId: null,
  obstacleName: '',
  atMs: null,
  feature: null,
  field: 'name',
  table: null,
};
const told = (value: unknown) => ({ value, how: null });

describe('a value of a graded track in words', () => {
  it('is found from the obstacle inwards', () => {
    expect(spotText(DEPTH)).toBe('North step, visit of 4 May 2025, rut 1, depth');
    expect(spotText(NAME)).toBe('name');
  });

  it('has its unit and how it was got', () => {
    expect(valueText(DEPTH, { value: 0.35, how: 'taped' }, 'metric')).toBe('35 cm, taped');
    expect(valueText(DEPTH, told(0.35), 'imperial')).toBe('13.8 in');
    expect(valueText({ ...NAME, field: 'there' }, told(false), 'metric')).toBe('removed');
    expect(valueText(NAME, told(''), 'metric')).toBe('empty');
    expect(valueText(NAME, told(new Uint8Array(3)), 'metric')).toBe('a picture');
    expect(valueText(NAME, told(null), 'metric')).toBe('not known');
  });

  it('changes in a sentence, whether new, other, chosen, or gone', () => {
    const change = (before: readonly unknown[], after: unknown, spot = DEPTH) =>
      changeText({ spot, before: before.map(told), after: told(after) }, 'metric');
    expect(change([], 0.2)).toBe('North step, visit of 4 May 2025, rut 1, depth: 20 cm');
    expect(change([0.2], 0.3)).toContain('20 cm → 30 cm');
    expect(change([0.2, 0.3], 0.3)).toContain('chose 30 cm over 20 cm');
    expect(change([true], false, { ...DEPTH, feature: null, table: null, field: 'there' })).toBe(
      'North step, visit of 4 May 2025: removed',
    );
  });
});

describe('what a file brought, in words', () => {
  const counts = { name: 'Ember', obstacleCount: 3, visitCount: 2, outcomeCount: 5, conflictCount: 0 };

  it('is all new, or so much more, or nothing', () => {
    expect(mergeText(undefined, counts)).toBe('Ember: new here.');
    expect(mergeText(counts, { ...counts, visitCount: 3, outcomeCount: 7 })).toBe(
      'Ember: 1 day of measuring, 2 outcomes taken in.',
    );
    expect(mergeText(counts, counts)).toContain('no visits, outcomes or obstacles that were not here');
  });

  it('names what must be chosen', () => {
    expect(mergeText(counts, { ...counts, conflictCount: 2 })).toContain('2 values to choose.');
  });
});

describe('what is asked of the list', () => {
  const nowMs = Date.parse('2025-11-25');

  it('is everything until something is asked', () => {
    expect(wantedOf(EVERYTHING, 'australia', [0, 0, 1, 1], nowMs)).toEqual({ order: 'name' });
    expect(isNarrow(EVERYTHING)).toBe(false);
  });

  it('goes to the archive as it is meant', () => {
    const query = {
      ...EVERYTHING,
      text: 'ember',
      level: 2,
      mostM: 9000,
      visited: 'within',
      inView: true,
    } as const;
    expect(wantedOf(query, 'south africa', [0, 0, 1, 1], nowMs)).toMatchObject({
      text: 'ember',
      levels: { 'south africa': [2] },
      lengthM: [0, 9000],
      box: [0, 0, 1, 1],
    });
    expect(isNarrow(query)).toBe(true);
  });

  it('a track that nobody measured for over a year is old', () => {
    const row = { lastVisitMs: nowMs - 366 * 86_400_000 } as Parameters<typeof isOld>[0];
    expect(isOld(row, nowMs)).toBe(true);
    expect(isOld({ ...row, lastVisitMs: nowMs - 10 }, nowMs)).toBe(false);
    expect(isOld({ ...row, lastVisitMs: null }, nowMs)).toBe(true);
  });
});
