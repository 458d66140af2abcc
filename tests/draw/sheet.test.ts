import { XMLValidator } from 'fast-xml-parser';
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { readTrip } from '../../src/archive/share.ts';
import type { SheetView } from '../../src/draw/sheet.ts';
import { sheetSvg } from '../../src/draw/sheet.ts';
import { slopeOf } from '../../src/route/slope.ts';

const trip = readTrip(readFileSync(new URL('../../public/demo/outing.json', import.meta.url), 'utf8')).value!;
const track = trip.track!;
const VIEW: SheetView = {
  track,
  segments: slopeOf(track).segments,
  pins: trip.obstacles.map(({ lng, lat }, i) => ({ number: i + 1, lng, lat })),
  reversed: false,
  system: 'metric',
  widthPx: 340,
  heightPx: 380,
};

interface Box {
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
}

function flags(svg: string): Box[] {
  const found = svg.matchAll(/class="flag" x="([-\d.]+)" y="([-\d.]+)" width="([\d.]+)" height="([\d.]+)"/g);
  return [...found].map(([, x, y, w, h]) => ({ x: +x, y: +y, w: +w, h: +h }));
}

function places(svg: string, className: string): (readonly [number, number])[] {
  const found = svg.matchAll(new RegExp(`class="${className}" cx="([-\\d.]+)" cy="([-\\d.]+)"`, 'g'));
  return [...found].map(([, x, y]) => [Number(x), Number(y)] as const);
}

describe('the map sheet', () => {
  const svg = sheetSvg(VIEW);

  test('numbers every obstacle once, clear of each other and inside the frame', () => {
    const boxes = flags(svg);
    expect(boxes).toHaveLength(trip.obstacles.length);
    const height = Number(/height="([\d.]+)"/.exec(svg)![1]);
    boxes.forEach((a, i) => {
      expect(a.x).toBeGreaterThanOrEqual(0);
      expect(a.x + a.w).toBeLessThanOrEqual(VIEW.widthPx);
      expect(a.y + a.h).toBeLessThanOrEqual(height);
      for (const b of boxes.slice(i + 1))
        expect(a.x + a.w <= b.x || b.x + b.w <= a.x || a.y + a.h <= b.y || b.y + b.h <= a.y).toBe(true);
    });
  });

  test('has north up and east to the right', () => {
    const pins = places(svg, 'pin');
    trip.obstacles.forEach((one, i) =>
      trip.obstacles.forEach((other, j) => {
        if (one.lat - other.lat > 1e-4) expect(pins[i][1]).toBeLessThan(pins[j][1]);
        if (one.lng - other.lng > 1e-4) expect(pins[i][0]).toBeGreaterThan(pins[j][0]);
      }),
    );
  });

  test('tells steepness without colour: heavier strokes, and ticks across from 15°', () => {
    expect(svg).toContain('class="way steep-0"');
    expect(svg).toContain('class="way steep-3"');
    expect(svg).toContain('class="tick"');
    expect(svg).not.toMatch(/fill="#|stroke="#/);
  });

  test('bridges no gap of the recording', () => {
    const broken = track.segmentStart[1];
    const over = {
      lng: track.lng[broken] - track.lng[broken - 1],
      lat: track.lat[broken] - track.lat[broken - 1],
    };
    const lines = [...svg.matchAll(/class="way [^"]*" d="([^"]*)"/g)].map(([, d]) =>
      [...d.matchAll(/[ML]([-\d.]+) ([-\d.]+)/g)].map(([, x, y]) => [+x, +y]),
    );
    const longest = Math.max(
      ...lines.flatMap((line) =>
        line.slice(1).map(([x, y], i) => Math.hypot(x - line[i][0], y - line[i][1])),
      ),
    );
    const [one, other] = [trip.obstacles[0], trip.obstacles.at(-1)!];
    const pins = places(svg, 'pin');
    const pxPerDegree = (pins[0][1] - pins.at(-1)![1]) / (other.lat - one.lat);
    const gapPx =
      Math.hypot(over.lng * Math.cos(one.lat * (Math.PI / 180)), over.lat) * Math.abs(pxPerDegree);
    expect(gapPx).toBeGreaterThan(10);
    expect(longest).toBeLessThan(gapPx / 2);
  });

  test('turns start, end and arrows with the direction', () => {
    const label = (text: string, words: string) => new RegExp(`x="([-\\d.]+)"[^>]*>${words}<`).exec(text)![1];
    const back = sheetSvg({ ...VIEW, reversed: true });
    expect(label(back, 'start')).toBe(label(svg, 'end'));
    expect(back).not.toBe(svg);
  });

  test('is well-formed, in either system of units', () => {
    expect(XMLValidator.validate(svg)).toBe(true);
    expect(sheetSvg({ ...VIEW, system: 'imperial' })).toMatch(/>[\d.]+ mi</);
  });
});
