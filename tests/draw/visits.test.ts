import { describe, expect, it } from 'vitest';
import type { VisitsView } from '../../src/draw/visits.ts';
import { visitsSvg } from '../../src/draw/visits.ts';
import { conditionOf } from '../../src/terrain/condition.ts';
import type { Feature } from '../../src/terrain/feature.ts';
import { presetNamed, stretchFrom } from '../../src/terrain/preset.ts';
import type { How } from '../../src/terrain/measure.ts';
import { expectGolden } from '../golden.ts';

const DAYS = ['2023-04-08', '2023-10-14', '2024-05-01', '2025-09-27'].map((day) => Date.parse(day));
const NOW = Date.parse('2025-11-20');

function visit(depthM: number, how: How, waterM: number | null) {
  const stretch = stretchFrom(presetNamed('rutted climb')!, { leftDepthM: depthM, rightDepthM: 0.1 }, how);
  const water: Feature[] =
    waterM === null ? [] : [{ kind: 'water', fromM: -2, toM: 2, depthM: waterM, flowMps: 0.2 }];
  return { ...stretch, features: [...stretch.features, ...water] };
}

const STRETCHES = [
  visit(0.2, 'taped', null),
  visit(0.31, 'by eye', 0.3),
  visit(0.34, 'taped', null),
  visit(0.52, 'taped', 0.4),
];

function view(more: Partial<VisitsView> = {}): VisitsView {
  return {
    series: conditionOf(STRETCHES),
    atMs: DAYS,
    nowMs: NOW,
    staleFromMs: NaN,
    dateOf: (ms) => new Date(ms).toISOString().slice(0, 10),
    system: 'metric',
    widthPx: 420,
    ...more,
  };
}

/** Middles of the dots of the first drawing. */
function dots(svg: string): [number, number][] {
  return [...svg.matchAll(/<circle [^>]*cx="([\d.]+)" cy="([\d.]+)"/g)].map(([, x, y]) => [+x, +y]);
}

describe('the condition of a place, drawn', () => {
  it('keeps the days apart as they are, and the depths', () => {
    const [a, b, c, d] = dots(visitsSvg(view()));
    const perDay = (d[0] - a[0]) / (DAYS[3] - DAYS[0]);
    expect((b[0] - a[0]) / (DAYS[1] - DAYS[0])).toBeCloseTo(perDay, 10);
    expect((a[1] - c[1]) / (a[1] - d[1])).toBeCloseTo((0.34 - 0.2) / (0.52 - 0.2), 1);
  });

  it('gives a wider whisker to what was judged by eye', () => {
    const svg = visitsSvg(view());
    expect(svg).toContain('31 cm ± 8 cm, by eye');
    expect(svg).toContain('34 cm ± 2 cm, taped');
  });

  it('joins no dots over a visit that found none', () => {
    const water = { ...view(), series: conditionOf(STRETCHES).filter(({ kind }) => kind === 'water') };
    expect(visitsSvg(water)).not.toContain('class="course"');
    expect(visitsSvg(water).match(/class="none-found"/g)).toHaveLength(2);
  });

  it('says by word and mark that it is not known since', () => {
    const stale = visitsSvg(view({ staleFromMs: Date.parse('2025-10-27') }));
    expect(stale).toContain('not known since');
    expect(stale).toContain('class="dot open"');
    expect(visitsSvg(view({ staleFromMs: Date.parse('2026-10-27') }))).not.toContain('not known since');
  });

  it('of a single visit is drawn too', () => {
    const one = view({ series: conditionOf(STRETCHES.slice(0, 1)), atMs: DAYS.slice(0, 1), nowMs: DAYS[0] });
    expect(visitsSvg(one)).not.toContain('NaN');
  });

  it('is as it was', () => {
    expectGolden('tests/draw/out/visits-ruts-and-water.svg', visitsSvg(view()));
    expectGolden(
      'tests/draw/out/visits-stale-imperial.svg',
      visitsSvg(
        view({
          staleFromMs: Date.parse('2025-10-20'),
          system: 'imperial',
          atMs: DAYS.slice(0, 4),
          widthPx: 640,
        }),
      ),
    );
  });
});
