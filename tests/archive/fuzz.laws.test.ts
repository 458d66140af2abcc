import { beforeAll, describe, expect, test } from 'vitest';
import type { Format } from './mutants.ts';
import { faultOf, formats, mutant } from './mutants.ts';

/** Mutants of each format; `npm run bench fuzz` reads a hundred times as many, and watches time and memory. */
const EACH = 500;

const NAMES = ['GPX', 'trip', 'GeoTIFF', 'GeoPackage', 'zip', 'GeoJSON'];

let all: Format[];

beforeAll(async () => {
  all = await formats();
  expect(all.map(({ name }) => name)).toEqual(NAMES);
}, 120_000);

describe.each(NAMES)('%s', (name) => {
  test('without a fault is read; whatever is wrong with it, the answer is a value or what is wrong', async () => {
    const format = all.find((one) => one.name === name)!;
    expect((await format.read(format.seeds[0])).value).not.toBeNull();
    for (let number = 0; number < EACH; number++)
      expect(faultOf(await format.read(mutant(format, number))), `mutant ${number}`).toBeNull();
  }, 120_000);
});
