import { describe, expect, test } from 'vitest';
import { number } from '../../src/field.ts';
import { rutFields } from '../../src/terrain/rut.ts';
import { planeFields } from '../../src/terrain/obstacle.ts';
import { boxText, rangeText, readTyped, turned } from '../../src/ui/numberText.ts';

const depth = rutFields.depthM;
const slope = planeFields.slopeRad;

describe('a typed number', () => {
  test.each([
    ['35', 0.35],
    ['35.5', 0.355],
    ['35,5', 0.355],
    [' 35 cm ', 0.35],
    ['+35', 0.35],
    ['.5e', null],
  ])('%s', (text, value) => {
    const read = readTyped(text, depth, 'metric');
    if (value === null) expect(read.ok).toBe(false);
    else expect(read).toEqual({ ok: true, value: expect.closeTo(value, 9) as number });
  });

  test('takes any of the minus signs that phones and word processors write', () => {
    for (const minus of ['-', '−', '–'])
      expect(readTyped(`${minus}5`, slope, 'metric')).toEqual({
        ok: true,
        value: expect.closeTo((-5 * Math.PI) / 180, 12) as number,
      });
  });

  test('is in the unit on the screen', () => {
    expect(readTyped('12', depth, 'imperial')).toEqual({
      ok: true,
      value: expect.closeTo(0.3048, 9) as number,
    });
  });

  test('a steepness may be typed in percent, and counts exactly', () => {
    const typed = (text: string) => readTyped(text, slope, 'metric');
    expect(typed('100 %')).toEqual({ ok: true, value: Math.atan(1) });
    expect(typed('−25%')).toEqual({ ok: true, value: -Math.atan(0.25) });
    expect(typed('12,5 %')).toEqual({ ok: true, value: Math.atan(0.125) });
    expect(typed('25')).toEqual({ ok: true, value: expect.closeTo((25 * Math.PI) / 180, 12) as number });
    const steep = typed('300 %');
    expect(steep.ok ? '' : steep.fault).toMatch(/^Slope is 71\.6°; it must lie between −60\.2° and 60\.2°/);
    expect(typed('%').ok).toBe(false);
    expect(readTyped('30 %', depth, 'metric').ok).toBe(false);
  });

  test('out of range says the range in the unit on the screen, and asks for the unit', () => {
    const read = readTyped('600', depth, 'metric');
    expect(read.ok ? '' : read.fault).toBe(
      'Depth is 600 cm; it must lie between 1 cm and 150 cm. Was another unit meant?',
    );
  });

  test('that is none says so and shows how to write one', () => {
    const read = readTyped('deep', depth, 'metric');
    expect(read.ok ? '' : read.fault).toMatch(/^“deep” is not a number\. Write it as \d+\.$/);
  });

  test('may be missing only where nobody need know it', () => {
    expect(readTyped('', slope, 'metric', true)).toEqual({ ok: true, value: null });
    expect(readTyped(' ', depth, 'metric').ok).toBe(false);
  });

  test('two decimal signs are no number', () => {
    expect(readTyped('1.234,5', depth, 'metric').ok).toBe(false);
  });
});

test('a bound typed as it is shown is the bound', () => {
  const field = number({ label: 'Slope', sentence: '' }, 'angle', -1.05, 1.05);
  expect(readTyped('60.2', field, 'metric')).toEqual({ ok: true, value: 1.05 });
  expect(readTyped('-60.2', field, 'metric')).toEqual({ ok: true, value: -1.05 });
  expect(readTyped('60.3', field, 'metric').ok).toBe(false);
});

test('an unknown value leaves its box empty', () => {
  expect(boxText(null, depth, 'metric')).toBe('');
  expect(boxText(NaN, depth, 'metric')).toBe('');
  expect(boxText(-0.1, slope, 'metric')).toBe('−5.7');
});

test('a range reads as people say it', () => {
  expect(rangeText(depth, 'metric')).toBe('1 to 150 cm');
  expect(rangeText(slope, 'metric')).toBe('−60 to 60°');
});

test('turning the sign twice gives the number back', () => {
  expect(turned('12')).toBe('−12');
  expect(turned('−12')).toBe('12');
  expect(turned('-3,5')).toBe('3,5');
  expect(turned('')).toBe('−');
});
