import { mkdtempSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { rutline } from './run.ts';

test('brief writes the page of a trip', async () => {
  const page = join(mkdtempSync(join(tmpdir(), 'rutline-')), 'briefing.html');
  const ran = await rutline('brief', 'tests/archive/in/version-1.json', '--out', page);
  expect(ran).toEqual({ code: 0, out: '', err: '' });
  const text = readFileSync(page, 'utf8');
  expect(text).toMatch(/^<!doctype html>/);
  for (const said of ['A trip of version 1', 'Everything at once', 'Lead, A. Driver', 'travelled reversed'])
    expect(text).toContain(said);
});

test('brief gives programs the briefing as data', async () => {
  const { out } = await rutline('brief', 'tests/archive/in/version-1.json', '--json');
  const { answer } = JSON.parse(out) as { answer: { stops: unknown[]; cards: unknown[] } };
  expect([answer.stops.length, answer.cards.length]).toEqual([1, 1]);
});

test('brief is written in German where it is asked to be', async () => {
  const { code, out, err } = await rutline('brief', 'tests/archive/in/version-1.json', '--language', 'de');
  expect([code, err]).toEqual([0, '']);
  expect(out).toContain('<html lang="de">');
  for (const said of ['Bevor jemand losfährt', 'gefahren in Gegenrichtung', 'Erst zu Fuß abgehen'])
    expect(out).toContain(said);
  expect(out).not.toContain('Before anyone sets off');
});

test('brief names the languages that there are', async () => {
  const { code, err } = await rutline('brief', 'tests/archive/in/version-1.json', '--language', 'xx');
  expect(code).toBe(2);
  expect(err).toContain('There is no language "xx"; there are en, de.');
});
