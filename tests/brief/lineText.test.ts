import { describe, expect, it } from 'vitest';
import { lineCall, lineTag, lineText, openText } from '../../src/brief/lineText.ts';
import type { Line } from '../../src/terrain/obstacle.ts';
import { classValues } from '../../src/vehicle/classes.ts';
import type { Vehicle } from '../../src/vehicle/vehicle.ts';

const LEFT: Line = { id: 'l', kind: 'offset', name: 'by the bank', offsetM: 0.4 };

function named(...names: string[]): Vehicle[] {
  return names.map((name) => ({
    id: name,
    name,
    driver: '',
    vehicleClass: 'compact 4x4',
    values: classValues('compact 4x4'),
    estimated: [],
  }));
}

describe('a line in words', () => {
  it('has the side on which the convoy finds it', () => {
    expect(lineText(LEFT, 'as recorded', 'metric')).toBe('by the bank (40 cm to the left of the main line)');
    expect(lineCall(LEFT, 'reversed', 'metric')).toBe('40 cm right of main line');
    expect(lineTag(LEFT, 'as recorded', 'metric')).toBe('left 0.40 m');
    expect(lineTag(LEFT, 'reversed', 'imperial')).toBe('right 1.3 ft');
  });

  it('of its own ground is called by its name', () => {
    const bypass = { id: 'b', kind: 'bypass', name: 'old road', path: [] } as unknown as Line;
    expect(lineTag(bypass, 'reversed', 'metric')).toBe('bypass: old road');
  });
});

describe('to whom a line is open, in words', () => {
  const widths = { least: 1.42, greatest: 1.524 };

  it('is a range of track widths in the units of the look', () => {
    expect(openText({ trackWidthM: widths, shutTo: [] }, 'metric')).toBe('track widths 1.42–1.52 m');
    expect(openText({ trackWidthM: widths, shutTo: [] }, 'imperial')).toBe('track widths 4.7–5.0 ft');
  });

  it('is one width where there is one', () => {
    const one = { least: 1.42, greatest: 1.421 };
    expect(openText({ trackWidthM: one, shutTo: [] }, 'metric')).toBe('track width 1.42 m');
  });

  it('names who does not go though as wide, or says how many', () => {
    const text = (...names: string[]) => openText({ trackWidthM: widths, shutTo: named(...names) }, 'metric');
    expect(text('Larkspur')).toBe('track widths 1.42–1.52 m, not Larkspur');
    expect(text('Larkspur', '')).toBe('track widths 1.42–1.52 m, not Larkspur or unnamed');
    expect(text('a', 'b', 'c')).toBe('track widths 1.42–1.52 m, not 3 of those');
  });

  it('says so where it is nobody, and nothing where it is not known', () => {
    expect(openText({ trackWidthM: null, shutTo: [] }, 'metric')).toBe('open to none of this convoy');
    expect(openText(null, 'metric')).toBe('');
  });
});
