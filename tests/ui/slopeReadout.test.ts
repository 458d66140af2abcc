import { describe, expect, it } from 'vitest';
import { readoutOf } from '../../src/ui/slopeReadout.ts';
import { rad } from '../../src/units.ts';

const here = (slopeDeg: number, plusMinusDeg: number) => ({
  smoothedM: 934.4,
  slopeRad: rad(slopeDeg),
  plusMinusRad: rad(plusMinusDeg),
});

describe('what the long section says of a station', () => {
  it('gives station, elevation and slope in degrees, percent and 1 in n, each with its range', () => {
    expect(readoutOf(3665, here(15.7, 1.9), 'metric')).toEqual({
      station: '3.67 km',
      elevation: '934 m',
      slope: 'climbs 15.7° ± 1.9°',
      otherWords: ['28 % (25 to 32)', '1 in 3.6 (3.2 to 4.1)'],
    });
  });

  it('says which way it goes', () => {
    expect(readoutOf(0, here(-8, 1), 'imperial')).toMatchObject({
      elevation: '3066 ft',
      slope: 'falls 8.0° ± 1.0°',
    });
    expect(readoutOf(0, here(0.05, 1), 'metric').slope).toBe('level 0.1° ± 1.0°');
  });

  it('does not claim a slope that may as well be level', () => {
    expect(readoutOf(0, here(2, 3), 'metric').otherWords).toEqual(['3 % (−2 to 9)', '1 in 11 at most']);
  });

  it('says what is not known', () => {
    const unknown = { smoothedM: NaN, slopeRad: NaN, plusMinusRad: NaN };
    expect(readoutOf(500, unknown, 'metric')).toMatchObject({
      elevation: 'elevation not known',
      slope: 'slope not known',
      otherWords: [],
    });
  });
});
