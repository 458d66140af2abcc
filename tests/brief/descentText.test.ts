import { describe, expect, test } from 'vitest';
import { descentText, geared, stabilityText } from '../../src/brief/descentText.ts';
import type { Verdict } from '../../src/grade/verdict.ts';
import { verdictOn } from '../../src/grade/verdict.ts';
import type { Feature } from '../../src/terrain/feature.ts';
import { classValues } from '../../src/vehicle/classes.ts';
import type { VehicleValues } from '../../src/vehicle/specs.ts';
import { rad } from '../../src/units.ts';
import { flatGround } from '../traverse/scenes.ts';

const wagon: VehicleValues = { ...classValues('mid-size wagon'), hillDescent: false };
const hauler: VehicleValues = { ...wagon, crawlRatio: 90 };
const tall: VehicleValues = classValues('all-wheel-drive soft-roader');

function verdict(values: VehicleValues, deg: number, features: readonly Feature[] = []): Verdict {
  const ground = { ...flatGround, slopeRad: rad(-deg), features };
  const vehicle = {
    id: 'v',
    name: '',
    driver: '',
    vehicleClass: 'mid-size wagon',
    values,
    estimated: [],
  } as const;
  return verdictOn(vehicle, { entered: ground, worst: [ground] }, 0);
}
const said = (values: VehicleValues, deg: number, features: readonly Feature[] = []) =>
  descentText(verdict(values, deg, features), values, 'metric');

describe('what a driver is told of a descent', () => {
  test('nothing where there is none', () => {
    expect(said(wagon, -15)).toBe('');
    expect(said(wagon, 2)).toBe('');
  });

  test('first low, where that holds it, whatever the least rung that goes', () => {
    const least = verdict(hauler, 9);
    expect(least.rung.aids.lowRange).toBe(false);
    expect(geared(least).rung.aids.lowRange).toBe(true);
    expect(said(hauler, 9)).toBe('first low holds it on the way down');
  });

  test('how much the engine holds, and the brakes that must hold the rest', () => {
    expect(said(wagon, 20)).toMatch(
      /^down with first low and a foot on the brake: the engine holds \d+\.\d° of 20\.0°$/,
    );
    expect(said({ ...wagon, hillDescent: true }, 20)).toMatch(
      /^down with hill descent control on, in first low: /,
    );
  });

  test('first gear where there is no low range', () => {
    expect(said({ ...tall, hillDescent: false }, 12)).toMatch(
      /^down with first gear and a foot on the brake: /,
    );
  });

  test('which wheel in the air takes engine braking away, and what keeps it', () => {
    const holes: Feature[] = [
      { kind: 'hole', xM: -1.4, yM: 0.75, lengthM: 1.8, widthM: 0.9, depthM: 0.45 },
      { kind: 'hole', xM: 1.4, yM: -0.75, lengthM: 1.8, widthM: 0.9, depthM: 0.45 },
    ];
    const lockers: VehicleValues = {
      ...hauler,
      drive: 'part-time four',
      centre: 'none',
      frontDifferential: 'locker',
      rearDifferential: 'locker',
    };
    const text = said(lockers, 12, holes);
    expect(text).toMatch(/in the air, and an open differential lets the engine braking go/);
    expect(text).toMatch(/, with rear locker all of it$/);
  });

  test('where stability control stands down, and what it may do before that', () => {
    expect(stabilityText({ stabilityControl: 'none' })).toBe('');
    expect(stabilityText({ stabilityControl: 'always on' })).toMatch(/stays on: .*brake one wheel/);
    expect(stabilityText({ stabilityControl: 'off in low range' })).toMatch(/stands down in low range; /);
  });
});
