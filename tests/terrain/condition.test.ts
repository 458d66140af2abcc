import { describe, expect, it } from 'vitest';
import { changeBetween, conditionOf } from '../../src/terrain/condition.ts';
import type { Feature } from '../../src/terrain/feature.ts';
import { presetNamed, stretchFrom } from '../../src/terrain/preset.ts';
import { rad } from '../../src/units.ts';

const ruts = (leftDepthM: number, rightDepthM: number) =>
  stretchFrom(presetNamed('rutted climb')!, { slopeRad: rad(10), leftDepthM, rightDepthM });

describe('the condition of a place through its visits', () => {
  it('is told by the deepest of each shape', () => {
    const [series, ...others] = conditionOf([ruts(0.2, 0.3), ruts(0.45, 0.3)]);
    expect(others).toEqual([]);
    expect(series.kind).toBe('rut');
    expect(series.found.map((found) => found?.value)).toEqual([0.3, 0.45]);
  });

  it('leaves a visit open that found no such shape', () => {
    const water: Feature = { kind: 'water', fromM: -2, toM: 2, depthM: 0.4, flowMps: 0 };
    const wet = { ...ruts(0.2, 0.2), features: [...ruts(0.2, 0.2).features, water] };
    const series = conditionOf([ruts(0.2, 0.2), wet]).find(({ kind }) => kind === 'water');
    expect(series?.found.map((found) => found?.value ?? null)).toEqual([null, 0.4]);
  });

  it('is worst where ground is softest', () => {
    const bog = (coneIndexPa: number) => stretchFrom(presetNamed('soft ground')!, { coneIndexPa });
    const two = { ...bog(3e5), features: [...bog(3e5).features, ...bog(1e5).features] };
    expect(conditionOf([two])[0].found[0]?.value).toBe(1e5);
  });

  it('has changed only by more than both ± together', () => {
    const [{ found }] = conditionOf([ruts(0.3, 0.1), ruts(0.31, 0.1), ruts(0.5, 0.1)]);
    const [first, second, third] = found.map((one) => one!);
    expect(changeBetween('rut', first, second)).toBe('same');
    expect(changeBetween('rut', first, third)).toBe('harder');
    expect(changeBetween('rut', third, first)).toBe('easier');
    expect(changeBetween('softPatch', first, third)).toBe('easier');
  });
});
