import { expect, test } from 'vitest';
import { placeAt } from '../../src/ui/dragOrder.svelte.ts';

test('what is dragged goes behind every item whose middle it has passed', () => {
  const middles = [50, 150, 250];
  expect(placeAt(-400, middles)).toBe(0);
  expect(placeAt(49, middles)).toBe(0);
  expect(placeAt(51, middles)).toBe(1);
  expect(placeAt(249, middles)).toBe(2);
  expect(placeAt(9000, middles)).toBe(3);
});
