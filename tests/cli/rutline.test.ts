import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { rutline, rutlineFromSources } from './run.ts';

const BROKEN = 'tests/cli/in/broken.gpx';
const TRIP = 'tests/archive/in/version-1.json';

/** The whole trip with something replaced in its text, as a file. */
function damagedTrip(before: string, after: string): string {
  const text = readFileSync(TRIP, 'utf8');
  expect(text).toContain(before);
  const path = join(mkdtempSync(join(tmpdir(), 'rutline-')), 'trip.json');
  writeFileSync(path, text.replace(before, after));
  return path;
}

describe.concurrent('the command line itself', () => {
  test.each([
    [['--help'], 0],
    [[], 2],
    [['fly', TRIP], 2],
    [['constructor', TRIP], 2],
    [['check', TRIP, TRIP], 2],
    [['check', TRIP, '--loud'], 2],
  ])('%j shows how it is used and exits with %i', async (args, code) => {
    const ran = await rutline(...args);
    expect(ran.code).toBe(code);
    expect(ran.out + ran.err).toContain('verdicts TRIP.json');
  });

  test('does the same from its sources', async () => {
    expect(await rutlineFromSources('check', TRIP)).toEqual(await rutline('check', TRIP));
  });

  test('says when an answer cannot be written', async () => {
    const { code, err } = await rutline('check', TRIP, '--out', '/nowhere/at/all.txt');
    expect(code).toBe(1);
    expect(err).toContain('cannot be written');
  });
});

describe.concurrent('check', () => {
  test('counts what a trip holds', async () => {
    const { code, out, err } = await rutline('check', TRIP);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toContain('obstacles: 1');
    expect(out).toContain('Nothing is wrong with it.');
  });

  test('counts what a recording holds, and names where it breaks off', async () => {
    const { code, out, err } = await rutline('check', BROKEN);
    expect(code).toBe(1);
    expect(out).toContain('points: 4');
    expect(out).not.toContain('Nothing is wrong');
    expect(err).toMatch(/^error: line \d+.*ends before the recording does/m);
  });

  test('names a value of a trip by its path', async () => {
    const { code, err } = await rutline('check', damagedTrip('"massKg":', '"massKgs":'));
    expect(code).toBe(1);
    expect(err).toContain('error: vehicles[0].values.massKg: Mass as loaded must be a number.');
    expect(err).toContain('warning: vehicles[0].values.massKgs');
  });

  test.each([
    ['nothing.json', 'There is no such file.'],
    ['tests', 'This is a folder.'],
    ['package.json', 'This is not a Rutline trip.'],
    ['LICENSE', 'This is not GPX'],
  ])('refuses %s', async (path, sentence) => {
    const { code, out, err } = await rutline('check', path);
    expect({ code, out }).toEqual({ code: 1, out: '' });
    expect(err).toContain(sentence);
  });

  test('answers programs with the problems beside the answer', async () => {
    const { code, out } = await rutline('check', BROKEN, '--json');
    expect(code).toBe(1);
    expect(JSON.parse(out)).toMatchObject({
      answer: { kind: 'recording', points: 4 },
      problems: [{ severity: 'error' }],
    });
  });
});
