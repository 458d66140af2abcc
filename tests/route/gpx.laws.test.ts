import fc from 'fast-check';
import { gzipSync } from 'fflate';
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { Decoder } from '../../src/route/decode.ts';
import { stepM } from '../../src/route/ellipsoid.ts';
import { FaultList } from '../../src/route/faults.ts';
import { readGpx } from '../../src/route/gpx.ts';
import { READ_LIMITS } from '../../src/route/limits.ts';
import { decimal, timeS } from '../../src/route/values.ts';
import { trackOf } from './recorded.ts';

const SEED = { seed: 1_104, numRuns: 200 };

const lng = fc.double({ min: -180, max: 179.999, noNaN: true });
const lat = fc.double({ min: -89, max: 89, noNaN: true });
const elevation = fc.double({ min: -400, max: 8_000, noNaN: true });

const files = ['plain', 'segments', 'version-1-0', 'bad-values', 'crossed-tags', 'stray-tag', 'prefixed'].map(
  (name) => new Uint8Array(readFileSync(new URL(`in/${name}.gpx`, import.meta.url))),
);

/** A file in which some stretches were overwritten, cut out or doubled. */
const damaged = fc
  .tuple(
    fc.constantFrom(...files),
    fc.array(
      fc.record({
        at: fc.double({ min: 0, max: 1, noNaN: true }),
        cut: fc.nat(30),
        insert: fc.oneof(
          fc.uint8Array({ maxLength: 8 }),
          fc
            .constantFrom(
              '<',
              '>',
              '&',
              '</trk>',
              '<!--',
              ']]>',
              '<![CDATA[',
              '"',
              '\0',
              '<?xml ?>',
              '</',
              '/>',
              '&#0;',
            )
            .map((text) => new TextEncoder().encode(text)),
        ),
      }),
      { minLength: 1, maxLength: 6 },
    ),
  )
  .map(([file, wounds]) =>
    wounds.reduce((bytes, { at, cut, insert }) => {
      const from = Math.floor(at * bytes.length);
      return Uint8Array.from([...bytes.subarray(0, from), ...insert, ...bytes.subarray(from + cut)]);
    }, file),
  );

describe('reading', () => {
  it('gives back what was written, to the last digit', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.tuple(lng, lat, elevation), { minLength: 1, maxLength: 30 }),
        async (points) => {
          const text = points
            .map(([x, y, z]) => `<trkpt lat="${y}" lon="${x}"><ele>${z}</ele></trkpt>`)
            .join('');
          const file = `<gpx version="1.1" creator="t"><trk><trkseg>${text}</trkseg></trk></gpx>`;
          const { value } = await readGpx(new TextEncoder().encode(file));
          const distinct = points.filter(
            (point, i) => i === 0 || point.some((v, k) => v !== points[i - 1][k]),
          );
          const zero = (values: ArrayLike<number>) => Array.from(values, (v) => v + 0);
          expect(zero(value!.tracks[0].lng)).toEqual(zero(distinct.map(([x]) => x)));
          expect(zero(value!.tracks[0].lat)).toEqual(zero(distinct.map(([, y]) => y)));
          expect(zero(value!.tracks[0].elevationM)).toEqual(zero(distinct.map(([, , z]) => z)));
        },
      ),
      SEED,
    );
  });

  it('of a damaged file always answers, soundly, and with an error where it gives nothing', async () => {
    await fc.assert(
      fc.asyncProperty(damaged, fc.boolean(), async (bytes, packed) => {
        const { value, problems } = await readGpx(packed ? gzipSync(bytes) : bytes);
        if (value === null) expect(problems[0].severity).toBe('error');
        for (const track of value?.tracks ?? []) {
          expect(track.length).toBeGreaterThan(0);
          for (const column of [track.lng, track.lat, track.elevationM, track.timeS, track.distanceM]) {
            expect(column).toHaveLength(track.length);
          }
          expect(track.lng.every((x) => x >= -180 && x < 180)).toBe(true);
          expect(track.lat.every((y) => y >= -90 && y <= 90)).toBe(true);
          expect(track.distanceM.every((s, i) => i === 0 || s >= track.distanceM[i - 1])).toBe(true);
          expect(track.segmentStart[0]).toBe(0);
        }
      }),
      { ...SEED, numRuns: 1_500 },
    );
  });
});

describe('bytes', () => {
  it('in pieces of any size become the text that the platform makes of them in one, broken characters too', () => {
    const some = fc.oneof(
      fc.uint8Array({ maxLength: 6 }),
      fc
        .constantFrom('a', '\n', 'é', '–', '\u{1F6FB}', '\uFEFF')
        .map((text) => new TextEncoder().encode(text)),
    );
    const content = fc.array(some, { maxLength: 60 }).map((parts) => parts.flatMap((part) => [...part]));
    fc.assert(
      fc.property(content, fc.boolean(), fc.integer({ min: 1, max: 40 }), (body, marked, size) => {
        const head = new TextEncoder().encode(`${marked ? '\uFEFF' : ''}<gpx>${' '.repeat(600)}`);
        const bytes = Uint8Array.from([...head, ...body]);
        let text = '';
        const decoder = new Decoder(READ_LIMITS, new FaultList(), (piece) => (text += piece));
        for (let at = 0; at < bytes.length; at += size) decoder.push(bytes.subarray(at, at + size));
        decoder.end();
        expect(text).toBe(new TextDecoder().decode(bytes));
      }),
      { ...SEED, numRuns: 2_000 },
    );
  });
});

describe('numbers', () => {
  it('are those of the language, in any notation', () => {
    const number = fc.double({ min: -1e300, max: 1e300, noNaN: true });
    fc.assert(
      fc.property(number, fc.integer({ min: 0, max: 20 }), (value, digits) => {
        for (const text of [String(value), value.toFixed(digits), value.toExponential(digits)]) {
          expect(decimal(text)).toBe(Number(text));
        }
      }),
      { ...SEED, numRuns: 2_000 },
    );
  });

  it('are nothing else', () => {
    for (const text of [
      '',
      ' ',
      '-',
      '.',
      '1.2.3',
      '1,5',
      '0x10',
      'NaN',
      'Infinity',
      '-Infinity',
      '1e999',
      '1 2',
      '١',
      '5m',
    ]) {
      expect(decimal(text)).toBeNaN();
    }
    expect(decimal('1'.repeat(100_000))).toBeNaN();
    expect(decimal(`${'1'.repeat(100_000)}x`)).toBeNaN();
  });
});

describe('times', () => {
  it('are those of Date, to the millisecond, in any zone', () => {
    const moment = fc.date({
      min: new Date('0001-01-01T00:00:00Z'),
      max: new Date('9998-12-31T00:00:00Z'),
      noInvalidDate: true,
    });
    fc.assert(
      fc.property(moment, fc.integer({ min: -839, max: 839 }), (date, zone) => {
        const iso = date.toISOString();
        expect(timeS(iso)).toBeCloseTo(date.getTime() / 1000, 3);
        const offset = `${zone < 0 ? '-' : '+'}${pad(Math.abs(zone) / 60)}:${pad(Math.abs(zone) % 60)}`;
        expect(timeS(iso.replace('Z', offset))).toBeCloseTo(Date.parse(iso.replace('Z', offset)) / 1000, 3);
      }),
      { ...SEED, numRuns: 2_000 },
    );
  });

  it('of days that do not exist are none', () => {
    for (const text of [
      '',
      '2023-02-29T00:00:00Z',
      '1900-02-29T00:00:00Z',
      '2023-04-31T00:00:00Z',
      '2023-13-01T00:00:00Z',
      '2023-01-01T24:00:01Z',
      '2023-01-01T00:60:00Z',
      '2023-01-01',
      '2023-1-1T00:00:00Z',
      '2023-01-01T00:00:00Zz',
    ]) {
      expect(timeS(text)).toBeNaN();
    }
    expect(timeS(' 2000-02-29T00:00:00Z\n')).toBe(Date.UTC(2000, 1, 29) / 1000);
  });
});

describe('distance', () => {
  it('does not change when a track is moved along its parallel', () => {
    const shape = fc.array(fc.tuple(fc.double({ min: -1, max: 1, noNaN: true }), lat), {
      minLength: 2,
      maxLength: 20,
    });
    fc.assert(
      fc.property(shape, fc.integer({ min: -179, max: 178 }), (points, shift) => {
        const here = trackOf(points.map(([x, y]) => [x, y] as const));
        const there = trackOf(points.map(([x, y]) => [x + shift, y] as const));
        const lengthM = here.distanceM.at(-1)!;
        expect(Math.abs(there.distanceM.at(-1)! - lengthM)).toBeLessThan(1e-6 + 1e-9 * lengthM);
      }),
      SEED,
    );
  });

  it('is the same there and back, and nothing from a place to itself', () => {
    fc.assert(
      fc.property(lng, lat, lng, lat, (x1, y1, x2, y2) => {
        expect(stepM(x2, y2, x1, y1)).toBeCloseTo(stepM(x1, y1, x2, y2), 3);
        expect(stepM(x1, y1, x1, y1)).toBe(0);
      }),
      SEED,
    );
  });
});

function pad(value: number): string {
  return String(Math.floor(value)).padStart(2, '0');
}
