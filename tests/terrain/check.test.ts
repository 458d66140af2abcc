import { describe, expect, it } from 'vitest';
import { checkStretch } from '../../src/terrain/check.ts';
import type { Feature } from '../../src/terrain/feature.ts';
import { PRESETS, presetNamed, stretchFrom } from '../../src/terrain/preset.ts';

const climb = stretchFrom(presetNamed('rutted climb')!, { slopeRad: 0.2 });
const rut = climb.features[0];

function places(features: readonly Feature[]): string[] {
  return checkStretch({ ...climb, features }, 'stretch').map((problem) => problem.where);
}

describe('a stretch', () => {
  it.each(PRESETS.map((preset) => [preset.name, preset] as const))(
    '%s as it starts has nothing wrong',
    (_, preset) => {
      expect(checkStretch(stretchFrom(preset), 'stretch')).toEqual([]);
    },
  );

  it('names ruts wider than the corridor', () => {
    expect(places([{ ...rut, centreYM: 1.5 } as Feature])).toEqual(['stretch.features[0].centreYM']);
  });

  it('names a hole deeper than its own sides allow', () => {
    const hole: Feature = { kind: 'hole', xM: 0, yM: 0.5, lengthM: 0.5, widthM: 0.5, depthM: 0.8 };
    expect(places([hole])).toEqual(['stretch.features[0].depthM']);
  });

  it('names a shape that ends before it starts, or lies beyond the ends', () => {
    expect(places([{ ...rut, fromM: 5, toM: 2 } as Feature])).toEqual(['stretch.features[0].toM']);
    expect(places([{ kind: 'ditch', xM: 30, widthM: 2, depthM: 0.3, skewRad: 0 }])).toEqual([
      'stretch.features[0].xM',
    ]);
  });

  it('names a value out of range', () => {
    expect(places([{ ...rut, depthM: 9, widthM: 2 } as Feature])).toContain('stretch.features[0].depthM');
  });
});
