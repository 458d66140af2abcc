import { describe, expect, test } from 'vitest';
import type { SizesOn } from '../../src/draw/sizes.ts';
import { dimensioned, movePerUnit, sizesOn, sizesSvg, valueNear } from '../../src/draw/sizes.ts';
import type { SizeView } from '../../src/draw/sizeTable.ts';
import type { Feature, FeatureKind } from '../../src/terrain/feature.ts';
import { featureFields } from '../../src/terrain/feature.ts';
import { reversedFeature } from '../../src/terrain/reverse.ts';
import { rad } from '../../src/units.ts';

const FEATURES: readonly Feature[] = [
  { kind: 'rut', centreYM: 0.75, widthM: 0.5, depthM: 0.3, fromM: -4, toM: 4, runM: 1, section: 'U' },
  { kind: 'hole', xM: 0.5, yM: -0.8, lengthM: 1.5, widthM: 1, depthM: 0.3 },
  { kind: 'ledge', xM: -0.5, riseM: 0.4, faceRad: rad(60), skewRad: rad(10) },
  { kind: 'ledge', xM: 0.5, riseM: -0.4, faceRad: rad(60), skewRad: rad(-10) },
  { kind: 'ditch', xM: 0.2, widthM: 1.5, depthM: 0.3, skewRad: rad(15) },
  { kind: 'hump', xM: 0.2, lengthM: 2, heightM: 0.4, skewRad: rad(-15) },
  { kind: 'log', xM: 0.1, diameterM: 0.3, skewRad: rad(5), fromYM: -2, toYM: 2.5 },
  { kind: 'rock', xM: 0.2, yM: 0.75, heightM: 0.3, lengthM: 0.9, widthM: 0.6 },
  { kind: 'bank', side: 'right', distanceM: 1.5, angleRad: rad(60), heightM: 1 },
  { kind: 'bank', side: 'left', distanceM: 1.5, angleRad: rad(60), heightM: -1 },
  { kind: 'water', fromM: -3, toM: 3, depthM: 0.5, flowMps: 0.3 },
  { kind: 'softPatch', fromM: -3, toM: 3, coneIndexPa: 300e3, passesBefore: 0, wetness: 'moist' },
];

const named = FEATURES.map((feature, i) => [`${feature.kind} (${i})`, feature] as const);
const VIEWS: readonly SizeView[] = ['across', 'side', 'plan'];
const PX_PER_M = 100;

/** A plain drawing to scale that looks where a shape is. `turned` −1: seen by who meets it from the other end. */
function drawing(view: SizeView, feature: Feature, turned: 1 | -1 = 1): SizesOn {
  const middle = 600;
  const yM = feature.kind === 'rut' ? feature.centreYM : 'yM' in feature ? feature.yM : 0;
  const xM = 'xM' in feature ? feature.xM : 0;
  return {
    view,
    features: [turned > 0 ? feature : reversedFeature(feature)],
    turned,
    heres: [{ xM: turned * (xM + 0.02), yM: turned * (yM + 0.02) }],
    at: (x, y, z) =>
      view === 'plan'
        ? [middle - y * PX_PER_M, middle - x * PX_PER_M]
        : [middle + (view === 'side' ? x : -y) * PX_PER_M, middle - z * PX_PER_M],
    pxPerM: PX_PER_M,
    widthPx: 2 * middle,
    heightPx: 2 * middle,
  };
}

/** Sizes that a tape or an inclinometer reads. */
function measured(kind: FeatureKind): string[] {
  const fields = Object.entries(featureFields[kind]);
  return fields.flatMap(([name, field]) =>
    field.kind === 'number' && ['length', 'size', 'angle'].includes(field.quantity) ? [name] : [],
  );
}

describe.each(named)('%s', (_name, feature) => {
  test('every size that is measured can be taken hold of in one of the drawings', () => {
    const held = VIEWS.flatMap((view) => sizesOn(drawing(view, feature)).map(({ name }) => name));
    expect(measured(feature.kind).filter((name) => !held.includes(name))).toEqual([]);
  });

  test('every length that is measured has a dimension line, or the drawing across tells it by itself', () => {
    const own = ['rut', 'hole', 'water', 'rock', 'ditch', 'log'].includes(feature.kind)
      ? ['depthM', 'widthM', 'heightM', 'diameterM']
      : [];
    const told = VIEWS.flatMap((view) =>
      sizesOn(drawing(view, feature)).flatMap(({ name, from, field }) =>
        from !== null || field.quantity === 'angle' ? [name] : [],
      ),
    );
    expect(measured(feature.kind).filter((name) => ![...told, ...own].includes(name))).toEqual([]);
  });

  test.each([1, -1] as const)('the hand at where a value would lie gives that value, travel %d', (turned) => {
    for (const view of VIEWS)
      for (const mark of sizesOn(drawing(view, feature, turned))) {
        const { min, max, quantity } = mark.field;
        const by = quantity === 'angle' ? rad(3) : 0.05;
        for (const value of [mark.value + by, mark.value - by].filter((one) => one > min && one < max)) {
          const found = valueNear(mark, mark.placeOf(value), mark.value);
          expect.soft(found, `${view} ${mark.name}`).toBeCloseTo(value, 3);
        }
      }
  });

  test('met from the other end, a size is the same size and still moves', () => {
    for (const view of VIEWS) {
      const there = sizesOn(drawing(view, feature));
      const back = sizesOn(drawing(view, feature, -1));
      expect(back.map(({ name }) => name)).toEqual(there.map(({ name }) => name));
      for (const [i, mark] of back.entries()) {
        expect.soft(mark.value, mark.name).toBeCloseTo(there[i].value, 9);
        expect.soft(Math.hypot(...movePerUnit(mark, mark.value)), mark.name).toBeGreaterThan(1);
      }
    }
  });

  test('no dimension line says anything but a size that was entered', () => {
    const [on] = [drawing('plan', feature)];
    const words = [...sizesSvg(sizesOn(on), 'metric').matchAll(/<text[^>]*>([^<]+)</g)].map(
      ([, said]) => said,
    );
    expect(words.join()).not.toMatch(/NaN|not known/);
  });
});

test('sizes of the shape that is looked at are dimensioned, else all that can be read, at least one of each', () => {
  const [rut, hole] = FEATURES;
  const one = sizesOn(drawing('plan', hole));
  const many = [...one, ...sizesOn({ ...drawing('plan', rut), features: [hole, rut, hole] })];
  expect(dimensioned(one, null)).toEqual(one);
  expect(dimensioned(many, null).every(({ first }) => first)).toBe(true);
  for (const shape of [0, 1, 2]) {
    const those = many.filter(({ feature }) => feature === shape);
    expect(dimensioned(many, shape)).toEqual(those);
    expect(those.length).toBeGreaterThan(1);
    expect(dimensioned(many, null).some(({ feature }) => feature === shape)).toBe(true);
  }
});

test('a rut within a deeper one is not to be seen, and has no size to take hold of across', () => {
  const [rut] = FEATURES as readonly Extract<Feature, { kind: 'rut' }>[];
  const deeper = { ...rut, depthM: 0.6, widthM: 1.2 };
  const marks = sizesOn({ ...drawing('across', rut), features: [rut, deeper] });
  expect(new Set(marks.map(({ feature }) => feature))).toEqual(new Set([1]));
});

test('what a cut across passes by is not in it', () => {
  const hole = FEATURES[1];
  expect(sizesOn({ ...drawing('across', hole), heres: [{ xM: 5, yM: 0 }] })).toEqual([]);
  expect(sizesOn({ ...drawing('side', hole), heres: [{ xM: 0, yM: 2 }] })).toEqual([]);
});

test('of two wheel paths the first that meets a shape counts', () => {
  const hole = FEATURES[1];
  const marks = sizesOn({
    ...drawing('side', hole),
    heres: [
      { xM: 0, yM: 2 },
      { xM: 0, yM: -0.8 },
    ],
  });
  expect(marks.map(({ name }) => name)).toContain('depthM');
});
