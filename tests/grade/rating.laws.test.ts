import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CLASSIFICATIONS, SEASONS } from '../../src/grade/classification.ts';
import { CRITERIA, MEASURES, levelAt } from '../../src/grade/criteria.ts';
import type { GradedPlace } from '../../src/grade/rating.ts';
import { gradeBySizes, gradeObstacle, gradeOf, gradeOfTrack } from '../../src/grade/rating.ts';
import type { Stretch } from '../../src/terrain/obstacle.ts';
import { PRESETS } from '../../src/terrain/preset.ts';
import type { How } from '../../src/terrain/measure.ts';
import { HOWS } from '../../src/terrain/measure.ts';
import { CONDITIONS, MATERIALS } from '../../src/terrain/surface.ts';
import { asTravelled } from '../../src/terrain/travelled.ts';
import { rad } from '../../src/units.ts';
import { ground, placeOf } from './pinned.ts';

const classification = fc.constantFrom(...CLASSIFICATIONS);
const season = fc.constantFrom(...SEASONS);
const SEED = { seed: 20261125 };

/** Ground out of a preset, its answers anywhere in the easier part of their range, all got alike. */
const anyStretch: fc.Arbitrary<Stretch> = fc
  .record({
    preset: fc.constantFrom(...PRESETS),
    shares: fc.array(fc.double({ min: 0, max: 0.4, noNaN: true }), { minLength: 8, maxLength: 8 }),
    slopeDeg: fc.double({ min: 0, max: 22, noNaN: true }),
    camberDeg: fc.oneof(fc.constant(0), fc.double({ min: 0, max: 15, noNaN: true })),
    up: fc.boolean(),
    leftHigh: fc.boolean(),
    material: fc.constantFrom(...MATERIALS),
    condition: fc.constantFrom(...CONDITIONS),
    how: fc.constantFrom<How>(...HOWS),
  })
  .map(({ preset, shares, slopeDeg, camberDeg, up, leftHigh, material, condition, how }) => {
    const answers = Object.fromEntries(
      preset.questions.map(({ key, start, field }, i) => [
        key,
        key.endsWith('depthM') && field.kind === 'number' ? field.min + shares[i] * 0.8 : start,
      ]),
    );
    const stretch = ground(preset.name, {
      ...answers,
      slopeRad: rad(up ? slopeDeg : -slopeDeg),
      camberRad: rad(leftHigh ? camberDeg : -camberDeg),
    });
    const hows = Object.fromEntries(Object.keys(stretch.hows).map((path) => [path, how]));
    return { ...stretch, surface: { material, condition }, hows };
  });

const anyPlace: fc.Arbitrary<GradedPlace> = anyStretch.map((stretch) => placeOf(stretch));

/** Sizes of which more is harder. */
const GROWS = ['depthM', 'riseM', 'heightM', 'diameterM', 'flowMps'] as const;

function grown(stretch: Stretch, by: number): Stretch {
  return {
    ...stretch,
    features: stretch.features.map((feature) => {
      const sizes = feature as unknown as Readonly<Record<string, number>>;
      const more = GROWS.filter((name) => name in sizes && feature.kind !== 'bank').map((name) => [
        name,
        sizes[name] * by,
      ]);
      return { ...feature, ...Object.fromEntries(more) } as typeof feature;
    }),
  };
}

describe('criteria', () => {
  it('a limit never falls from level to level, and a harder value never makes an easier level', () => {
    for (const measure of MEASURES)
      for (const id of CLASSIFICATIONS) {
        const { limits, harder } = CRITERIA[measure];
        const sign = harder === 'more' ? 1 : -1;
        limits[id].forEach((limit, i, all) => {
          if (i > 0) expect(sign * limit).toBeGreaterThanOrEqual(sign * all[i - 1]);
          expect(levelAt(measure, id, limit)).toBeLessThanOrEqual(i + 1);
          expect(levelAt(measure, id, limit + sign * 1e-6)).toBeGreaterThan(i + 1);
        });
      }
  });
});

describe('by sizes', () => {
  it('deeper, higher, steeper and more roughly measured never lower the level', () => {
    fc.assert(
      fc.property(
        anyStretch,
        season,
        classification,
        fc.double({ min: 1, max: 2, noNaN: true }),
        (stretch, when, id, by) => {
          const level = (s: Stretch) => gradeBySizes(placeOf(s), when, id).level;
          const { slopeRad, camberRad } = stretch.plane;
          expect(level(grown(stretch, by))).toBeGreaterThanOrEqual(level(stretch));
          const steeper = { slopeRad: slopeRad! * by, camberRad: camberRad! * by };
          expect(level({ ...stretch, plane: steeper })).toBeGreaterThanOrEqual(level(stretch));
          const read = (how: How) => Object.fromEntries(Object.keys(stretch.hows).map((path) => [path, how]));
          const taped = level({ ...stretch, hows: read('taped') });
          expect(taped).toBeGreaterThanOrEqual(level({ ...stretch, hows: read('scanned') }));
          expect(level({ ...stretch, hows: {} })).toBeGreaterThanOrEqual(taped);
        },
      ),
      { ...SEED, numRuns: 500 },
    );
  });

  it('what is not known is told, and is never reckoned easier than any value that it may have', () => {
    fc.assert(
      fc.property(anyStretch, season, classification, (stretch, when, id) => {
        const known = gradeBySizes(placeOf(stretch), when, id);
        const blind = gradeBySizes(
          placeOf({ ...stretch, plane: { slopeRad: null, camberRad: null } }),
          when,
          id,
        );
        expect(blind.open).toEqual(expect.arrayContaining(['slope', 'camber']));
        expect(blind.level).toBeLessThanOrEqual(known.level);
        const lost = { ...stretch, lengthM: NaN };
        expect(gradeBySizes(placeOf(lost), when, id).open).toContain('size');
      }),
      { ...SEED, numRuns: 300 },
    );
  });
});

describe('with the reference vehicles', () => {
  it('never easier than by sizes; wet never easier than dry', () => {
    fc.assert(
      fc.property(anyPlace, classification, (place, id) => {
        const dry = gradeObstacle(place, 'as recorded', 'dry', id);
        const wet = gradeObstacle(place, 'as recorded', 'wet', id);
        expect(dry.level).toBeGreaterThanOrEqual(gradeBySizes(place, 'dry', id).level);
        expect(wet.level).toBeGreaterThanOrEqual(dry.level);
        expect(Number(wet.beyond)).toBeGreaterThanOrEqual(Number(dry.beyond));
      }),
      { ...SEED, numRuns: 8 },
    );
  });

  it('a track travelled the other way is graded as its obstacles turned round', () => {
    fc.assert(
      fc.property(anyStretch, classification, (stretch, id) => {
        const reversed = gradeOf([placeOf(stretch)], 'reversed', 'dry', id, []);
        const turned = gradeOf([placeOf(asTravelled(stretch, 'reversed'))], 'as recorded', 'dry', id, []);
        expect(reversed.level).toBe(turned.level);
        expect(reversed.beyond).toBe(turned.beyond);
      }),
      { ...SEED, numRuns: 8 },
    );
  });

  it.each([
    [
      'rutted climb',
      (depthM: number) => ({ leftDepthM: depthM, rightDepthM: depthM * 0.8, slopeRad: rad(8) }),
    ],
    ['ledge', (depthM: number) => ({ riseM: depthM, slopeRad: rad(4) })],
    ['ledge', (depthM: number) => ({ riseM: -depthM, slopeRad: rad(-4) })],
    ['ditch', (depthM: number) => ({ depthM: depthM + 0.05 })],
  ] as const)('a deeper or higher %s never lowers the level', (preset, answers) => {
    for (const id of CLASSIFICATIONS) {
      let before = 0;
      for (let depthM = 0.04; depthM < 0.42; depthM += 0.06) {
        const { level } = gradeObstacle(placeOf(ground(preset, answers(depthM))), 'as recorded', 'dry', id);
        expect(level).toBeGreaterThanOrEqual(before);
        before = level;
      }
    }
  });
});

describe('a track', () => {
  it('is no easier with one obstacle more, and as hard as its hardest', () => {
    fc.assert(
      fc.property(
        fc.array(anyPlace, { minLength: 1, maxLength: 5 }),
        season,
        classification,
        (places, when, id) => {
          const each = places.map((place, i) => ({
            ...gradeBySizes(place, when, id),
            obstacleId: `o${i}`,
          }));
          const all = gradeOfTrack(each, [], id);
          const fewer = gradeOfTrack(each.slice(1), [], id);
          expect(all.level).toBeGreaterThanOrEqual(fewer.level);
          expect(all.level).toBe(Math.max(...each.map(({ level }) => level)));
          const setter = each.find(({ obstacleId }) => obstacleId === all.setBy);
          expect(setter?.level).toBe(all.level);
          expect(all.open).toEqual(expect.arrayContaining([...each[0].open]));
        },
      ),
      { ...SEED, numRuns: 200 },
    );
  });
});
