import fc from 'fast-check';
import { expect, test } from 'vitest';
import { imageSize } from '../../src/terrain/imageSize.ts';

test.each([
  ['nothing', Buffer.alloc(0)],
  ['zeros', Buffer.alloc(100)],
  ['markup', Buffer.from('<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9"></svg>')],
  ['a JPEG without a frame', Buffer.concat([Buffer.from('ffd8ffe00010', 'hex'), Buffer.alloc(40)])],
  ['a PNG of no width', Buffer.from(`89504e470d0a1a0a0000000d49484452${'00'.repeat(12)}`, 'hex')],
])('%s has none', (_, file) => {
  expect(imageSize(file)).toBeNull();
});

test('anything after a known beginning is answered, and never with a size below one', () => {
  const heads = ['ffd8ff', '89504e470d0a1a0a0000000d49484452', '474946383961', '424d', '0000001c66747970'];
  const webp = Buffer.from('RIFF\x20\0\0\0WEBPVP8 ', 'latin1').toString('hex');
  fc.assert(
    fc.property(fc.constantFrom(...heads, webp), fc.uint8Array({ maxLength: 400 }), (head, rest) => {
      const size = imageSize(Buffer.concat([Buffer.from(head, 'hex'), rest]));
      if (size !== null) expect(Math.min(size.widthPx, size.heightPx)).toBeGreaterThan(0);
    }),
    { seed: 3, numRuns: 500 },
  );
});
