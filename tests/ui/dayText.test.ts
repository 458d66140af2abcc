import { describe, expect, test } from 'vitest';
import { dateInputOf, msOfDate } from '../../src/ui/dayText.ts';

describe('a day that was chosen', () => {
  const noonMs = new Date(2025, 4, 4, 12).getTime();
  const hours = (n: number) => n * 3_600_000;

  test('is the present time where it is today, before noon and after it', () => {
    for (const nowMs of [noonMs - hours(4), noonMs + hours(4)])
      expect(msOfDate(dateInputOf(nowMs), nowMs)).toBe(nowMs);
  });

  test('is noon of a day before', () => {
    expect(msOfDate('2025-05-04', noonMs + hours(30))).toBe(noonMs);
    expect(dateInputOf(noonMs)).toBe('2025-05-04');
  });

  test('is never later than now', () => {
    expect(msOfDate('2025-05-05', noonMs)).toBe(noonMs);
  });

  test('is none where there is no date', () => {
    expect(msOfDate('', noonMs)).toBeNaN();
  });
});
