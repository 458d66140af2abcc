import { describe, expect, it } from 'vitest';
import type { Condition, Material } from '../../../src/terrain/surface.ts';
import { gripOf } from '../../../src/terrain/surface.ts';

type Printed = readonly [source: string, low: number, high: number];

// Engineering ToolBox, "Tractive effort", table of adhesion of car tyres, and "Rolling friction and rolling resistance".
const TOOLBOX = 'Engineering ToolBox';
// R. K. Noon, Engineering Analysis of Vehicular Accidents, 1994, coefficients of traction, in a reprint.
const NOON = 'Noon 1994';
// Handbook table of adhesion, dry and wet, in a reprint of a tyre supplier that does not name it.
const HANDBOOK = 'handbook table, dry and wet';
// J. Carvill, Mechanical Engineer's Data Handbook, 1993, rolling resistance, in a reprint.
const CARVILL = 'Carvill 1993';
// Marks' Standard Handbook for Mechanical Engineers, coefficients of rolling friction, after Moyer, in a reprint.
const MARKS = "Marks' handbook";
// Winching resistances of a strap supplier: low authority.
const STRAPS = 'strap supplier';

/** What the tables print for ground that they name as we do. */
const ADHESION: readonly [Material, Condition, readonly Printed[]][] = [
  ['gravel', 'dry', [[TOOLBOX, 0.6, 0.7], [NOON, 0.35, 0.35]]],
  ['gravel', 'wet', [[TOOLBOX, 0.3, 0.5]]],
  ['earth', 'dry', [[HANDBOOK, 0.5, 0.6], [NOON, 0.35, 0.35]]],
  ['earth', 'wet', [[HANDBOOK, 0.15, 0.25]]],
  ['clay', 'dry', [[TOOLBOX, 0.5, 0.6]]],
  ['sand', 'dry', [[TOOLBOX, 0.3, 0.4]]],
  ['grass', 'wet', [[NOON, 0.2, 0.2]]],
  ['snow', 'dry', [[TOOLBOX, 0.2, 0.2], [NOON, 0.2, 0.25], [HANDBOOK, 0.25, 0.35]]],
  ['ice', 'dry', [[TOOLBOX, 0.2, 0.2], [NOON, 0.1, 0.15], [HANDBOOK, 0.05, 0.15]]],
  ['ice', 'wet', [[TOOLBOX, 0.1, 0.1], [HANDBOOK, 0.05, 0.15]]],
  ['asphalt', 'dry', [[TOOLBOX, 0.9, 0.9], [NOON, 0.65, 0.65], [HANDBOOK, 0.7, 0.8]]],
  ['asphalt', 'wet', [[TOOLBOX, 0.6, 0.6], [NOON, 0.5, 0.5], [HANDBOOK, 0.45, 0.55]]],
  ['concrete', 'dry', [[TOOLBOX, 0.9, 0.9], [NOON, 0.75, 0.75], [HANDBOOK, 0.8, 0.9]]],
  ['concrete', 'wet', [[TOOLBOX, 0.6, 0.6], [NOON, 0.6, 0.6], [HANDBOOK, 0.5, 0.6]]],
]; // prettier-ignore

const ROLLING: readonly [Material, Condition, readonly Printed[]][] = [
  ['gravel', 'dry', [[MARKS, 0.012, 0.012], [CARVILL, 0.01, 0.04], [TOOLBOX, 0.02, 0.08]]],
  ['gravel', 'wet', [[MARKS, 0.06, 0.06]]],
  ['earth', 'dry', [[CARVILL, 0.08, 0.08], [TOOLBOX, 0.04, 0.08]]],
  ['sand', 'dry', [[CARVILL, 0.1, 0.2], [TOOLBOX, 0.2, 0.4]]],
  ['grass', 'dry', [[STRAPS, 0.14, 0.14]]],
  ['mud', 'wet', [[STRAPS, 0.33, 0.75]]],
  ['asphalt', 'dry', [[CARVILL, 0.01, 0.02], [TOOLBOX, 0.01, 0.02]]],
  ['concrete', 'dry', [[CARVILL, 0.01, 0.02], [TOOLBOX, 0.01, 0.015]]],
]; // prettier-ignore

const least = (rows: readonly Printed[]) => Math.min(...rows.map(([, low]) => low));
const most = (rows: readonly Printed[]) => Math.max(...rows.map(([, , high]) => high));
const names = (rows: readonly Printed[]) => [...new Set(rows.map(([source]) => source))].join('; ');

describe('adhesion as published: the least of all tables, and no more than the most (tolerance 0.001)', () => {
  it.each(ADHESION)('%s, %s', (material, condition, rows) => {
    const { peak, sliding } = gripOf({ material, condition });
    expect(Math.abs(peak.low - least(rows)), names(rows)).toBeLessThan(0.001);
    expect(peak.high, names(rows)).toBeLessThan(most(rows) + 0.001);
    expect(sliding.high, names(rows)).toBeLessThan(most(rows));
  });
});

describe('rolling resistance as published: the worst is none too small (tolerance 0.001)', () => {
  it.each(ROLLING)('%s, %s', (material, condition, rows) => {
    const { rolling } = gripOf({ material, condition });
    expect(rolling.high, names(rows)).toBeGreaterThan(most(rows) - 0.001);
    expect(rolling.low, names(rows)).toBeLessThan(most(rows) + 0.001);
  });
});
