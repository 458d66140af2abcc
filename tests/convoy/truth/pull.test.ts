import { describe, expect, it } from 'vitest';
import { fieldPullN, slopeFactor, tackleFor, winchPullN } from '../../../src/convoy/pull.ts';
import { rad } from '../../../src/units.ts';

const LBF = 4.4482216152605;

describe('resistance of a stuck vehicle', () => {
  // Load calculation sheet of a strap supplier (dawnerz), worked example: 20,000 lb in mud to mid-wheel (1.00), 10°
  // (0.17), axles seized (0.67): 36,800 lb printed; 44,160 with the 20 % it adds. The sheet rounds 10/60 to 0.17 and
  // so is 0.2 % higher: tolerance 0.3 %.
  it('the worked example of 36,800 lb', () => {
    const { resistanceN, withReserveN } = fieldPullN({
      weightN: 20_000 * LBF,
      bedding: 'mud to mid-wheel',
      seized: 'more than half the axles',
      slopeRad: rad(10),
    });
    expect(Math.abs(resistanceN / LBF / 36_800 - 1)).toBeLessThan(0.003);
    expect(Math.abs(withReserveN / LBF / 44_160 - 1)).toBeLessThan(0.003);
  });

  // The same sheet's slope factors as printed, two digits.
  it.each([
    [10, 0.17],
    [15, 0.25],
    [20, 0.34],
    [25, 0.42],
    [30, 0.5],
    [35, 0.58],
    [40, 0.67],
    [45, 1],
  ])('%d° takes %f of the weight', (slopeDeg, factor) => {
    expect(Math.abs(slopeFactor(rad(slopeDeg)) - factor)).toBeLessThan(0.0101);
  });
});

describe('winch and tackle', () => {
  // TM 9-2320-279-10-2, Table 2-7: a 20,000 lb winch by drum layer; tolerance 0.3 %.
  it.each([
    [1, 20_000],
    [2, 18_173],
    [3, 16_663],
    [4, 15_361],
    [5, 14_254],
  ])('layer %d pulls %d lb', (layer, expected) => {
    expect(Math.abs(winchPullN(20_000, layer) / expected - 1)).toBeLessThan(0.003);
  });

  // US Army BNCOC sheet 63H34F01 Suppl. 1b, its formulas with 46,000 lb and a 20,000 lb winch: three parts, two sheaves,
  // 9,200 lb of tackle resistance, 18,400 lb in the fall line.
  it('46,000 lb on a 20,000 lb winch takes three parts and 18,400 lb', () => {
    const tackle = tackleFor(46_000, 20_000)!;
    expect(tackle.parts).toBe(3);
    expect(tackle.ropeN).toBeCloseTo(18_400, 6);
  });

  // TB 9-2350-292-10 step 5: the fall line must stay below the winch's capacity; 20,000 lb on 10,000 lb with two parts
  // is 11,000 lb, so another part is needed.
  it('two parts that do not hold get a third', () => {
    expect(tackleFor(20_000, 10_000)).toEqual({ parts: 3, ropeN: 8_000 });
    expect(tackleFor(1e6, 10_000)).toBeNull();
    expect(tackleFor(100, 0)).toBeNull();
  });
});
