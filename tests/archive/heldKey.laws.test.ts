import fc from 'fast-check';
import { expect, test } from 'vitest';
import { keyOf, partsOf } from '../../src/archive/heldKey.ts';

test('a key gives back its parts, whatever they hold', () => {
  const part = fc.oneof(fc.string(), fc.constantFrom('a/b', '%2F', '%', '"', '\\', '\ud800', '\n', 'ü'));
  fc.assert(
    fc.property(fc.array(part, { minLength: 1, maxLength: 4 }), (parts) => {
      const key = keyOf(...parts);
      expect(partsOf(key)).toEqual(parts);
      expect(Buffer.from(key).toString()).toBe(key);
    }),
    { seed: 20261125, numRuns: 500 },
  );
});

test('what no key could be is none', () => {
  for (const key of ['"', 'a\\', '%2f%zz"', '\n']) expect(partsOf(key)).toBeNull();
});
