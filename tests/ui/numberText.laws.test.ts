import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { NumberField } from '../../src/field.ts';
import { featureFields } from '../../src/terrain/feature.ts';
import { corridorFields, planeFields, stretchFields } from '../../src/terrain/obstacle.ts';
import { boxText, readTyped } from '../../src/ui/numberText.ts';
import { fromShown, toShown } from '../../src/units.ts';
import { vehicleFields } from '../../src/vehicle/specs.ts';

const FIELDS = [vehicleFields, corridorFields, planeFields, stretchFields, ...Object.values(featureFields)]
  .flatMap((fields) => Object.values(fields))
  .filter((field): field is NumberField => field.kind === 'number');

const anyValue = fc
  .record({ field: fc.constantFrom(...FIELDS), share: fc.double({ min: 0, max: 1, noNaN: true }) })
  .map(({ field, share }) => ({ field, value: field.min + share * (field.max - field.min) }));

test('what a box shows for a good value can be typed again, and is the same value as shown', () => {
  fc.assert(
    fc.property(
      anyValue,
      fc.constantFrom('metric' as const, 'imperial' as const),
      ({ field, value }, system) => {
        const read = readTyped(boxText(value, field, system), field, system);
        expect(read.ok).toBe(true);
        if (!read.ok || read.value === null) return;
        expect(toShown(read.value, field.quantity, system)).toBeCloseTo(
          toShown(value, field.quantity, system),
          9,
        );
        expect(read.value).toBeGreaterThanOrEqual(field.min);
        expect(read.value).toBeLessThanOrEqual(field.max);
      },
    ),
    { seed: 20250517, numRuns: 2000 },
  );
});

test('whatever is typed, a value is only taken within its range, and everything else has a sentence', () => {
  fc.assert(
    fc.property(fc.constantFrom(...FIELDS), fc.string({ maxLength: 12 }), (field, text) => {
      const read = readTyped(text, field, 'metric');
      if (!read.ok) expect(read.fault.length).toBeGreaterThan(10);
      else expect(read.value! >= field.min && read.value! <= field.max).toBe(true);
    }),
    { seed: 20250517, numRuns: 2000 },
  );
});

test('a number well outside is never taken', () => {
  fc.assert(
    fc.property(fc.constantFrom(...FIELDS), (field) => {
      const beyond = toShown(field.max + (field.max - field.min), field.quantity, 'metric');
      if (fromShown(beyond, field.quantity, 'metric') > field.max * 1.01)
        expect(readTyped(String(beyond), field, 'metric').ok).toBe(false);
    }),
    { seed: 20250517 },
  );
});
