import { readFileSync } from 'node:fs';
import Ajv from 'ajv/dist/2020.js';
import { format } from 'prettier';
import { expect, test } from 'vitest';
import { tripSchema } from '../../src/archive/schema.ts';
import { readTrip } from '../../src/archive/share.ts';
import { expectGolden } from '../golden.ts';

test('the published schema is the one that the tables give', async () => {
  const text = await format(JSON.stringify(tripSchema()), { parser: 'json', printWidth: 110 });
  expectGolden('public/trip.schema.json', text);
});

test.each(['public/demo/outing.json', 'tests/archive/in/version-4.json'])('%s fits it', (path) => {
  const published: unknown = JSON.parse(readFileSync('public/trip.schema.json', 'utf8'));
  const valid = new Ajv({ allErrors: true, strictTypes: false, strictTuples: false }).compile(
    published as object,
  );
  const text = readFileSync(path, 'utf8');
  valid(JSON.parse(text));
  expect(valid.errors ?? []).toEqual([]);
  expect(readTrip(text).problems).toEqual([]);
});
