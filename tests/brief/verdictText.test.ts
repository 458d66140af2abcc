import { describe, expect, test } from 'vitest';
import { engagedText, limitMarginText } from '../../src/brief/verdictText.ts';
import type { RungVerdict } from '../../src/grade/verdict.ts';
import type { Check } from '../../src/traverse/assess.ts';
import { ladder } from '../../src/vehicle/aids.ts';
import { classValues } from '../../src/vehicle/classes.ts';
import type { VehicleValues } from '../../src/vehicle/specs.ts';

function engaged(values: Partial<VehicleValues>): string[] {
  const steps = ladder({ ...classValues('mid-size wagon'), ...values }).map((rung): RungVerdict => ({
    rung,
    word: 'goes',
    cause: '',
    limit: null,
    checks: [],
    worstChecks: [],
    entrySpeedMps: 0,
    pullN: 0,
  }));
  return steps.map((step) => engagedText({ ...step, ladder: steps }));
}

test('a driver is told all that is to be engaged, not only the last', () => {
  const full = { drive: 'full-time four', centre: 'lockable', lowRangeRatio: 2.5 } as const;
  const lockers = {
    rearDifferential: 'locker',
    frontDifferential: 'locker',
    antiRollDisconnects: false,
  } as const;
  const pressures = { lowPressurePa: 200_000, tyrePressurePa: 200_000 };
  expect(engaged({ ...full, ...lockers, ...pressures })).toEqual([
    'as it comes',
    'low range, centre locked',
    'low range, centre locked, rear locker',
    'low range, centre locked, rear locker, front locker',
  ]);
  const part = { drive: 'part-time four', centre: 'none', lowRangeRatio: 2.5 } as const;
  expect(engaged({ ...part, ...lockers, ...pressures }).slice(0, 3)).toEqual([
    'four-wheel drive',
    'low range',
    'low range, rear locker',
  ]);
  expect(engaged({ ...part, ...lockers, ...pressures, lowRangeRatio: 1 })[1]).toBe(
    'four-wheel drive, rear locker',
  );
});

describe('a margin says of which end it is', () => {
  const limit: Check = {
    name: 'traction',
    quantity: 'share',
    have: 0.2,
    need: 0.3,
    margin: -0.1,
    tolerance: 0.03,
    stationM: 0,
    cause: 'grip of the surface',
  };
  test.each([
    ['needs a pull', 'short by 0.10 of its weight as entered'],
    ['needs momentum', 'short by 0.10 of its weight as entered'],
    ['goes with care', 'may be short by 0.10 of its weight'],
    ['does not go', 'short by 0.10 of its weight'],
  ] as const)('%s', (word, said) => {
    const rung = { ...ladder(classValues('mid-size wagon'))[0] };
    const step = { rung, word, cause: limit.cause, limit, checks: [], worstChecks: [], entrySpeedMps: 0 };
    expect(limitMarginText({ ...step, pullN: 0 }, 'metric')).toBe(said);
  });
});
