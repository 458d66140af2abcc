import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { heldSuggested } from '../../src/grade/groundTold.ts';
import { heldOf, holding, releasing } from '../../src/terrain/heldGrip.ts';
import type { HeldGrip } from '../../src/terrain/surface.ts';
import { CONDITIONS, gripOf, MATERIALS } from '../../src/terrain/surface.ts';

const SEED = 20251129;

const kind = { material: fc.constantFrom(...MATERIALS), condition: fc.constantFrom(...CONDITIONS) };
const anyHeld: fc.Arbitrary<HeldGrip> = fc.record({
  ...kind,
  peak: fc.double({ min: 0.02, max: 1.2, noNaN: true }),
});

describe('ground that is held slipperier', () => {
  test('is never held better than tables print, and its high end stays', () => {
    fc.assert(
      fc.property(fc.record(kind), fc.array(anyHeld, { maxLength: 6 }), (surface, held) => {
        const printed = gripOf(surface);
        const grip = gripOf({ ...surface, held });
        for (const name of ['peak', 'sliding'] as const) {
          expect(grip[name].low).toBeLessThanOrEqual(printed[name].low);
          expect(grip[name].usual).toBeLessThanOrEqual(printed[name].usual);
          expect(grip[name].high).toBe(printed[name].high);
        }
        expect(grip.rolling).toEqual(printed.rolling);
      }),
      { seed: SEED },
    );
  });

  test('is held lower with every press or as before, and as printed once released, wet as it is held dry', () => {
    fc.assert(
      fc.property(fc.array(anyHeld, { maxLength: 4 }), anyHeld, (presses, last) => {
        const before = presses.reduce<readonly HeldGrip[]>(holding, []);
        const after = holding(before, last);
        for (const material of MATERIALS)
          for (const condition of CONDITIONS) {
            const low = (held: readonly HeldGrip[]) => gripOf({ material, condition, held }).peak.low;
            expect(low(after)).toBeLessThanOrEqual(low(before));
          }
        const released = releasing(after, last);
        const dry = released.filter(({ condition }) => condition === 'dry');
        expect(heldOf({ ...last, held: released })).toEqual(heldOf({ ...last, held: dry }));
        if (last.condition === 'dry') expect(heldOf({ ...last, held: released })).toBeNull();
        expect(new Set(after.map((one) => `${one.material} ${one.condition}`)).size).toBe(after.length);
      }),
      { seed: SEED },
    );
  });

  test('is suggested only where it is slipperier, in steps downwards', () => {
    fc.assert(
      fc.property(fc.record(kind), fc.double({ min: 0, max: 1.5, noNaN: true }), (surface, low) => {
        const estimate = { trials: 10, went: 5, likely: low, low, high: null };
        const told = { surface, trials: 10, estimate, against: null };
        const held = heldSuggested(told, []);
        if (held === null) expect(low).toBeGreaterThanOrEqual(gripOf(surface).peak.low - 0.01);
        else expect(held.peak).toBeLessThan(gripOf(surface).peak.low);
        if (held !== null && held.peak > 0.02) expect(held.peak).toBeLessThanOrEqual(low + 1e-9);
        expect(heldSuggested({ ...told, estimate: null }, [])).toBeNull();
        if (held !== null) expect(heldSuggested(told, [held])).toBeNull();
      }),
      { seed: SEED },
    );
  });
});
