import { describe, expect, it } from 'vitest';
import type { ClassificationId } from '../../../src/grade/classification.ts';
import { classificationOf, levelName } from '../../../src/grade/classification.ts';
import { gradeObstacle, gradeOf } from '../../../src/grade/rating.ts';
import type { RungVerdict } from '../../../src/grade/verdict.ts';
import { groundsOf, verdictOn } from '../../../src/grade/verdict.ts';
import type { Stretch } from '../../../src/terrain/obstacle.ts';
import { rad } from '../../../src/units.ts';
import { classValues } from '../../../src/vehicle/classes.ts';
import type { VehicleClass } from '../../../src/vehicle/vehicle.ts';
import { ground, placeOf, plainWay } from '../pinned.ts';

/**
 * The published words as cases.
 *
 * AU: "New National 4WD Track Classification Policy introduced" (Australian National Four Wheel Drive Council, 2021,
 * aftermarket.com.au; the same table in the trade's monthly of June 2021). Weather: Four Wheel Drive Victoria, D4WD
 * handbook pp. 45, 46.
 * ZA: "Trail Grading Criteria" (explorer4x4.co.za, no year seen).
 */
const AU = 'australia';
const ZA = 'south africa';

const known = new Map<string, number>();

/** Worked out once: several of the words are about the same places. */
function level(stretch: Stretch, classification: ClassificationId, season: 'dry' | 'wet' = 'dry'): number {
  const key = JSON.stringify([stretch, classification, season]);
  const found =
    known.get(key) ?? gradeObstacle(placeOf(stretch), 'as recorded', season, classification).level;
  known.set(key, found);
  return found;
}

const GRAVEL = { material: 'gravel', condition: 'dry' } as const;

/** Ground of every kind, from what anyone drives to what nobody does. */
const PLACES: readonly Stretch[] = [
  ...[3, 10, 16, 22].map((deg) => plainWay(rad(deg), GRAVEL)),
  ...[0.05, 0.12, 0.2, 0.3].map((riseM) => ground('ledge', { riseM, slopeRad: rad(4) })),
  ...[0.08, 0.15, 0.25].map((depthM) => ground('cross-axle holes', { depthM, slopeRad: rad(6) })),
  ...[0.1, 0.2].map((leftDepthM) =>
    ground('rutted climb', { leftDepthM, rightDepthM: 0.1, slopeRad: rad(10) }),
  ),
  ...[0.15, 0.4].map((depthM) => ground('ford', { depthM, flowMps: 0 })),
  ...[8, 18].map((deg) => ground('side slope', { camberRad: rad(deg) })),
];

/** The best rung that a class has in its range, without lockers, at usual pressure: 0 high range, 1 low range. */
function best(vehicleClass: VehicleClass, stretch: Stretch, low: boolean): RungVerdict['word'] {
  const vehicle = {
    id: vehicleClass,
    name: vehicleClass,
    driver: '',
    vehicleClass,
    values: classValues(vehicleClass),
    estimated: [],
  };
  const { ladder } = verdictOn(vehicle, groundsOf(stretch, 'as recorded', null), 0);
  return ladder[low ? 1 : 0].word;
}

const goes = (word: RungVerdict['word']) => word === 'goes' || word === 'goes with care';

describe('the levels and their names', () => {
  it('are the published ones', () => {
    // AU: "EASY MEDIUM DIFFICULT VERY DIFFICULT"; ZA: "Grade 1." to "Grade 5."
    expect([1, 2, 3, 4].map((n) => levelName(AU, n))).toEqual([
      'Easy',
      'Medium',
      'Difficult',
      'Very difficult',
    ]);
    expect(classificationOf(AU).levels).toHaveLength(4);
    expect([1, 2, 3, 4, 5].map((n) => levelName(ZA, n))).toEqual([1, 2, 3, 4, 5].map((n) => `Grade ${n}`));
    expect(classificationOf(ZA).levels).toHaveLength(5);
  });
});

describe('Australia', () => {
  it('Easy: "mostly unsealed roads with no obstacles and minor gradients"', () => {
    expect(level(plainWay(rad(3), GRAVEL), AU)).toBe(1);
    const segments = [{ fromM: 0, toM: 900, slopeRad: rad(-4), plusMinusRad: rad(1) }];
    expect(gradeOf([], 'as recorded', 'dry', AU, segments)).toMatchObject({
      level: 1,
      open: [],
      setBy: null,
    });
  });

  it('Easy has no obstacle: a step that a car would not take at a walk is one', () => {
    expect(level(ground('ledge', { riseM: 0.15 }), AU)).toBeGreaterThan(1);
  });

  it.each(['rock', 'sand', 'mud'] as const)(
    '%s: "some rocky/slippery/sandy sections" are not Easy',
    (material) => {
      expect(level(plainWay(0, { material, condition: 'dry' }), AU)).toBeGreaterThan(1);
    },
  );

  it('no water in the words for Easy; "shallow" from Medium, "possible water crossings" at Difficult', () => {
    expect(level(ground('ford', { depthM: 0.2, flowMps: 0 }), AU)).toBe(2);
    expect(level(ground('ford', { depthM: 0.5, flowMps: 0 }), AU)).toBe(3);
  });

  it('Easy is for all-wheel drives and high range: no such class is stopped there', () => {
    for (const stretch of PLACES)
      if (level(stretch, AU) === 1) {
        expect(best('all-wheel-drive soft-roader', stretch, false)).toBe('goes');
        expect(best('dual-cab utility', stretch, false)).toBe('goes');
      }
  });

  it('"low range required" is Medium at least', () => {
    const need = PLACES.filter((stretch) => !goes(best('dual-cab utility', stretch, false)));
    expect(need.length).toBeGreaterThan(2);
    for (const stretch of need) expect(level(stretch, AU)).toBeGreaterThanOrEqual(2);
  });

  it('beyond "low range 4WD with standard clearance" it is Very difficult', () => {
    const beyond = PLACES.filter((stretch) => !goes(best('mid-size wagon', stretch, true)));
    expect(beyond.length).toBeGreaterThan(2);
    for (const stretch of beyond) expect(level(stretch, AU)).toBe(4);
  });

  it('"most medium, difficult and very difficult tracks will become more difficult in wet weather"', () => {
    const most = classificationOf(AU).levels.length;
    const places = PLACES.map((stretch) => [level(stretch, AU), level(stretch, AU, 'wet')] as const);
    const canRise = places.filter(([dry]) => dry > 1 && dry < most);
    const rises = canRise.filter(([dry, wet]) => wet > dry);
    expect(canRise.length).toBeGreaterThan(4);
    expect(rises.length).toBeGreaterThan(canRise.length / 2);
  });
});

describe('South Africa', () => {
  it('1: gravel and farm roads', () => {
    expect(level(plainWay(rad(3), GRAVEL), ZA)).toBe(1);
  });

  it('2: "soft sand"', () => {
    expect(level(plainWay(0, { material: 'sand', condition: 'dry' }), ZA)).toBeGreaterThanOrEqual(2);
  });

  it('3: "only suitable for vehicles with low range gearing"', () => {
    const need = PLACES.filter((stretch) => !goes(best('dual-cab utility', stretch, false)));
    expect(need.length).toBeGreaterThan(2);
    for (const stretch of need) expect(level(stretch, ZA)).toBeGreaterThanOrEqual(3);
  });

  it('2 is for all-wheel drives too: where one is stopped low range is asked for', () => {
    const stopped = PLACES.filter((stretch) => {
      const vehicle = classValues('all-wheel-drive soft-roader');
      const asked = { id: '', name: '', driver: '', vehicleClass: 'all-wheel-drive soft-roader' as const };
      const grounds = groundsOf(stretch, 'as recorded', null);
      return verdictOn({ ...asked, values: vehicle, estimated: [] }, grounds, 0).ladder.every(
        ({ word }) => !goes(word),
      );
    });
    expect(stopped.length).toBeGreaterThan(2);
    for (const stretch of stopped) expect(level(stretch, ZA)).toBeGreaterThanOrEqual(3);
  });

  it('4: where a standard vehicle in low range is stopped "high ground clearance" is asked for', () => {
    const stopped = PLACES.filter((stretch) => {
      const values = classValues('mid-size wagon');
      const asked = { id: '', name: '', driver: '', vehicleClass: 'mid-size wagon' as const };
      const grounds = groundsOf(stretch, 'as recorded', null);
      return verdictOn({ ...asked, values, estimated: [] }, grounds, 0).ladder.every(
        ({ word }) => !goes(word),
      );
    });
    expect(stopped.length).toBeGreaterThan(2);
    for (const stretch of stopped) expect(level(stretch, ZA)).toBeGreaterThanOrEqual(4);
  });
});
