import { mkdtempSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { carrying, LEAST } from '../../src/archive/carried.ts';
import { readTrip } from '../../src/archive/share.ts';
import { outText } from '../../src/archive/out/formats.ts';
import { gradeToldOf } from '../../src/brief/gradeTold.ts';
import { rutline } from './run.ts';

const TRIP = 'tests/archive/in/version-1.json';
const whole = readTrip(readFileSync(TRIP, 'utf8')).value!;
const trip = carrying(whole, LEAST);
const grade = gradeToldOf(trip, 'australia', 'dry');

describe.concurrent('export', () => {
  test.each(['gpx', 'geojson', 'kml'] as const)('writes --%s as the page does', async (format) => {
    const file = join(mkdtempSync(join(tmpdir(), 'rutline-')), `trip.${format}`);
    const ran = await rutline('export', TRIP, `--${format}`, '--out', file);
    expect(ran).toEqual({ code: 0, out: '', err: '' });
    expect(readFileSync(file, 'utf8')).toBe(outText(trip, format, 'metric', grade));
  });

  test('speaks the units asked for', async () => {
    const { out } = await rutline('export', TRIP, '--kml', '--imperial');
    expect(out).toContain(' ft');
    expect(out).toBe(outText(trip, 'kml', 'imperial', grade));
  });

  test('tells of people what is asked for, and nothing else', async () => {
    const { out } = await rutline('export', TRIP, '--gpx', '--with', 'notes', '--with', 'times');
    expect(out).toBe(
      outText(carrying(whole, { ...LEAST, notes: true, times: true }), 'gpx', 'metric', grade),
    );
    expect(out).not.toBe(outText(trip, 'gpx', 'metric', grade));
    const { code, err } = await rutline('export', TRIP, '--gpx', '--with', 'everything');
    expect(code).toBe(2);
    expect(err).toContain('Nothing is called "everything"');
  });

  test('asks for a format where none is named', async () => {
    const { code, err } = await rutline('export', TRIP);
    expect(code).toBe(1);
    expect(err).toContain('Add one of --gpx, --geojson, --kml.');
  });

  test('takes one format at a time', async () => {
    const { code, err } = await rutline('export', TRIP, '--gpx', '--kml');
    expect(code).toBe(2);
    expect(err).toContain('Name one format at a time.');
  });
});

describe.concurrent('brief --pdf', () => {
  test('needs a place to write to', async () => {
    const { code, err } = await rutline('brief', TRIP, '--pdf');
    expect(code).toBe(2);
    expect(err).toContain('Say where the PDF goes: --out FILE.');
  });

  test('says what is missing where there is no browser, and writes nothing', async () => {
    const file = join(mkdtempSync(join(tmpdir(), 'rutline-')), 'briefing.pdf');
    const { CHROME_BIN } = process.env;
    process.env.CHROME_BIN = '/nowhere/at/all';
    const running = rutline('brief', TRIP, '--pdf', '--out', file);
    if (CHROME_BIN === undefined) delete process.env.CHROME_BIN;
    else process.env.CHROME_BIN = CHROME_BIN;
    const { code, err } = await running;
    expect(code).toBe(1);
    expect(err).toContain('There is no Chrome or Chromium to print with.');
    expect(() => readFileSync(file)).toThrow();
  });
});
