import { test } from 'vitest';
import { format } from 'prettier';
import { tripSchema } from '../../src/archive/schema.ts';
import { expectGolden } from '../golden.ts';

test('the published schema is the one that the tables give', async () => {
  const text = await format(JSON.stringify(tripSchema()), { parser: 'json', printWidth: 110 });
  expectGolden('public/trip.schema.json', text);
});
