import { expect, test } from 'vitest';
import { fromBase64, toBase64 } from '../../../src/archive/base64.ts';

/** RFC 4648 (2006), section 10, test vectors for base64. */
test.each([
  ['', ''],
  ['f', 'Zg=='],
  ['fo', 'Zm8='],
  ['foo', 'Zm9v'],
  ['foob', 'Zm9vYg=='],
  ['fooba', 'Zm9vYmE='],
  ['foobar', 'Zm9vYmFy'],
])('"%s" is "%s"', (text, base64) => {
  const bytes = new TextEncoder().encode(text);
  expect(toBase64(bytes)).toBe(base64);
  expect(fromBase64(base64)).toEqual(bytes);
});

/** Node's own, over every byte and more than a piece at a time. */
test('long bytes come out as from the platform', () => {
  const bytes = Uint8Array.from({ length: 100_003 }, (_, i) => (i * 7919) % 256);
  expect(toBase64(bytes)).toBe(Buffer.from(bytes).toString('base64'));
  expect(fromBase64(toBase64(bytes))).toEqual(bytes);
});
