import { XMLValidator } from 'fast-xml-parser';
import { describe, expect, test } from 'vitest';
import { sectionSvg } from '../../src/draw/section.ts';
import { sketchSvg } from '../../src/draw/sketch.ts';
import type { Feature } from '../../src/terrain/feature.ts';
import type { Stretch } from '../../src/terrain/obstacle.ts';
import { classValues } from '../../src/vehicle/classes.ts';

function stretch(features: readonly Feature[], corridor: Partial<Stretch['corridor']> = {}): Stretch {
  return {
    lengthM: 12,
    plane: { slopeRad: 0.2, camberRad: 0.1 },
    surface: { material: 'clay', condition: 'dry' },
    corridor: { leftM: 1.5, leftBound: 'bank', rightM: 1.75, rightBound: 'trees', headroomM: 5, ...corridor },
    features,
    hows: {},
  };
}

const RUT = {
  kind: 'rut',
  centreYM: -0.75,
  widthM: 0.5,
  depthM: 0.18,
  fromM: -6,
  toM: 6,
  runM: 1,
  section: 'U',
} as const;
const HOLE = { kind: 'hole', xM: 0, yM: -0.75, lengthM: 1.6, widthM: 0.8, depthM: 0.3 } as const;

function section(features: readonly Feature[], widthPx: number, stationM = 0): string {
  const view = { stretch: stretch(features), stationM, offsetM: 0, vehicle: null, system: 'metric' } as const;
  return sectionSvg({ ...view, widthPx });
}

/** The sizes written into a drawing, with the height that each stands at. */
function sizes(svg: string): (readonly [words: string, y: number])[] {
  const texts = svg.matchAll(/<text class="size"[^>]* y="([-\d.]+)"[^>]*>([^<]*)</g);
  return [...texts].map(([, y, words]) => [words, Number(y)] as const);
}

describe('a cut across', () => {
  test('sizes of a rut are left out where a deeper hole has swallowed it, and stand beside the hole', () => {
    const words = (stationM: number) => sizes(section([RUT, HOLE], 420, stationM)).map(([said]) => said);
    expect(words(0)).toEqual(expect.arrayContaining(['80 cm', '30 cm']));
    expect(words(0)).not.toContain('18 cm');
    expect(words(3)).toEqual(expect.arrayContaining(['50 cm', '18 cm']));
  });

  test('depth is dimensioned from the ground that would be there, at its length, and not where the rut runs out', () => {
    const step = { kind: 'ledge', xM: -3, riseM: 0.4, faceRad: 1.2, skewRad: 0 } as const;
    const plain = (svg: string) => {
      const line = svg.split('<g class="dimension">').find((group) => group.includes('>18 cm<'));
      const [, x0, y0, x1, y1] =
        /class="rule" d="M([-\d.]+) ([-\d.]+)L([-\d.]+) ([-\d.]+)"/.exec(line ?? '') ?? [];
      return Math.hypot(Number(x1) - Number(x0), Number(y1) - Number(y0));
    };
    const [level, over] = [section([RUT], 700, 2), section([RUT, step], 700, 2)].map(plain);
    expect(level).toBeGreaterThan(20);
    expect(over / level).toBeCloseTo(1, 1);
    expect(section([RUT], 700, 5.5)).not.toContain('>18 cm<');
    expect(section([RUT], 700, 5.5)).toContain('>50 cm<');
  });

  test.each([200, 300, 420, 700])('keeps every size within the picture, %i px wide', (widthPx) => {
    const svg = section([RUT, HOLE], widthPx);
    const [, height] = /height="([\d.]+)"/.exec(svg)!;
    for (const [, y] of sizes(svg)) expect(y).toBeLessThan(Number(height) - 2);
  });
});

describe('a sketch', () => {
  const values = classValues('mid-size wagon');
  const sketch = (offsetM: number, corridor: Partial<Stretch['corridor']> = {}) =>
    sketchSvg({ stretch: stretch([RUT], corridor), stationM: 0, offsetM, vehicle: values, widthPx: 140 });

  test('stands two tyres on the line, farther left for an offset to the left', () => {
    const tyres = (svg: string) => [...svg.matchAll(/class="tyre" d="M([-\d.]+)/g)].map(([, x]) => Number(x));
    const [main, left, right] = [0, 0.5, -0.5].map((offsetM) => tyres(sketch(offsetM)));
    expect(main).toHaveLength(2);
    expect(left[0]).toBeLessThan(main[0]);
    expect(right[0]).toBeGreaterThan(main[0]);
  });

  test('shows the main line only where the line is another', () => {
    expect(sketch(0)).not.toContain('class="centre"');
    expect(sketch(0.5)).toContain('class="centre"');
  });

  test('lets the ground fall at a drop and rise at a bank', () => {
    const ends = (bound: 'bank' | 'drop') => {
      const svg = sketch(0, { leftBound: bound, rightBound: 'open' });
      const [, from, to] = /class="surface" d="M[-\d.]+ ([-\d.]+)L[-\d.]+ ([-\d.]+)"/.exec(svg)!;
      return Number(to) - Number(from);
    };
    expect(ends('drop')).toBeGreaterThan(0);
    expect(ends('bank')).toBeLessThan(0);
  });

  test('is well-formed', () => {
    expect(XMLValidator.validate(sketch(0.3, { leftBound: 'rock' }))).toBe(true);
  });
});
