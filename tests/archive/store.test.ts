import { expect, test } from 'vitest';
import { list, load, remove } from '../../src/archive/store.ts';

test('where nothing can be kept, every call says so', async () => {
  expect(await load('a')).toMatchObject({ value: null, problems: [{ trouble: 'not available' }] });
  expect(await list()).toMatchObject({ value: null, problems: [{ trouble: 'not available' }] });
  expect(await remove('a')).toMatchObject({ trouble: 'not available' });
});
