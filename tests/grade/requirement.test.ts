import { describe, expect, it } from 'vitest';
import type { NeedName } from '../../src/grade/requirement.ts';
import {
  NEEDS,
  REFERENCE_VALUES,
  requirementOf,
  requirementOfTrack,
  valueAtSteps,
  variedBy,
} from '../../src/grade/requirement.ts';
import { groundsOf, rankOf, verdictOn } from '../../src/grade/verdict.ts';
import type { Stretch } from '../../src/terrain/obstacle.ts';
import { rad } from '../../src/units.ts';
import type { VehicleValues } from '../../src/vehicle/specs.ts';
import { ground, placeOf } from './pinned.ts';

function goes(values: VehicleValues, stretch: Stretch): boolean {
  const vehicle = {
    id: 'v',
    name: 'v',
    driver: '',
    vehicleClass: 'mid-size wagon' as const,
    values,
    estimated: [],
  };
  const { ladder } = verdictOn(vehicle, groundsOf(stretch, 'as recorded', null), 0);
  return ladder.some(({ word }) => rankOf(word) <= rankOf('goes with care'));
}

/** Steps on the reference that a found value is. */
function stepsOf(name: NeedName, value: number): number {
  const one = valueAtSteps(name, 1) - valueAtSteps(name, 0);
  return Math.round((value - valueAtSteps(name, 0)) / one);
}

const GROUNDS: readonly (readonly [string, Stretch])[] = [
  [
    'ruts that the reference goes over',
    ground('rutted climb', { leftDepthM: 0.22, rightDepthM: 0.2, slopeRad: rad(6) }),
  ],
  ['water above its wading depth', ground('ford', { depthM: 0.78, flowMps: 0 })],
  ['a ditch that its tail touches', ground('ditch', { depthM: 0.32 })],
];

describe('a requirement', () => {
  it.each(GROUNDS)('%s: the vehicle at the line goes, one step less does not', (_, stretch) => {
    const { needs } = requirementOf(placeOf(stretch).obstacle, null, 'as recorded', 'dry');
    let told = 0;
    for (const name of NEEDS) {
      const need = needs![name];
      if (!need.found) continue;
      told++;
      const steps = stepsOf(name, need.value);
      expect(goes(variedBy(name, steps)!, stretch), name).toBe(true);
      const less = name === 'trackWidth' || name === 'width' ? 1 : -1;
      const beyond = variedBy(name, steps + less);
      if (need.atEnd) expect(beyond, name).toBeNull();
      else expect(beyond !== null && goes(beyond, stretch), name).toBe(false);
    }
    expect(told).toBeGreaterThan(0);
  });

  it('none is found where nothing goes', () => {
    const wall = placeOf(ground('ledge', { riseM: 1.4, slopeRad: rad(30) })).obstacle;
    const { needs, rung } = requirementOf(wall, null, 'as recorded', 'dry');
    expect(rung).toBeNull();
    expect(Object.values(needs!).every(({ found }) => !found)).toBe(true);
  });

  it('is not known where the ground is not', () => {
    const stretch = ground('ditch');
    const blind = { ...stretch, plane: { slopeRad: null, camberRad: 0 } };
    expect(requirementOf(placeOf(blind).obstacle, null, 'as recorded', 'dry').needs).toBeNull();
  });

  it('names the least rung that goes', () => {
    const plain = placeOf(ground('side slope', { camberRad: rad(4), slopeRad: rad(2) })).obstacle;
    expect(requirementOf(plain, null, 'as recorded', 'dry')).toMatchObject({
      rung: 'as it comes',
      rungsUp: 0,
    });
  });
});

describe('what is varied on the reference', () => {
  const wagon = REFERENCE_VALUES;
  const lower = (names: readonly (keyof VehicleValues)[], by: number) =>
    Object.fromEntries(names.map((name) => [name, (wagon[name] as number) - by]));
  const UNDERSIDE = [
    'bellyHeightM',
    'sillHeightM',
    'frontDifferentialHeightM',
    'rearDifferentialHeightM',
  ] as const;

  it.each<readonly [NeedName, number, number, Record<string, number>]>([
    ['clearance', -1, wagon.rearDifferentialHeightM - 0.01, lower(UNDERSIDE, 0.01)],
    ['angles', -1, -rad(1), lower(['approachRad', 'rampoverRad', 'departureRad'], rad(1))],
    ['trackWidth', -2, wagon.frontTrackWidthM - 0.1, lower(['frontTrackWidthM', 'rearTrackWidthM'], 0.1)],
    ['width', 1, wagon.widthM + 0.05, { widthM: wagon.widthM + 0.05 }],
    [
      'tyre',
      -1,
      wagon.tyreDiameterM - 0.033,
      {
        ...lower([...UNDERSIDE, 'heightM', 'massHeightM', 'roofLoadHeightM', 'floorHeightM'], 0.0165),
        tyreDiameterM: wagon.tyreDiameterM - 0.033,
      },
    ],
    ['wading', -1, wagon.wadingDepthM - 0.05, { wadingDepthM: wagon.wadingDepthM - 0.05 }],
  ])('%s %i step: that, what goes with it, and nothing else', (name, steps, value, changed) => {
    expect(valueAtSteps(name, steps)).toBeCloseTo(value, 9);
    const varied = variedBy(name, steps)!;
    for (const [field, had] of Object.entries(wagon)) {
      const has = varied[field as keyof VehicleValues];
      if (field in changed) expect(has, field).toBeCloseTo(changed[field], 9);
      else expect(has, field).toBe(had);
    }
  });

  it('a wider track takes the body out with it where the tyres would stand beside it', () => {
    const wide = variedBy('trackWidth', 5)!;
    const overTyres = Math.max(wide.frontTrackWidthM, wide.rearTrackWidthM) + wagon.tyreSectionM;
    expect(overTyres).toBeGreaterThan(wagon.widthM);
    expect(wide.widthM).toBeCloseTo(overTyres, 9);
  });
});

describe('the requirement of a track', () => {
  const each = [
    { id: 'ruts', stretch: GROUNDS[0][1] },
    { id: 'ford', stretch: ground('ford', { depthM: 0.4, flowMps: 0 }) },
  ].map(({ id, stretch }) => requirementOf(placeOf(stretch, id).obstacle, null, 'as recorded', 'dry'));

  it('asks of each thing what the obstacle that asks most asks', () => {
    const { needs } = requirementOfTrack(each);
    expect(needs!.wading).toMatchObject({ obstacleId: 'ford', found: true });
    expect(needs!.clearance).toMatchObject({ obstacleId: 'ruts', found: true });
  });

  it('names those of which nothing can be said', () => {
    const blind = { obstacleId: 'fog', needs: null, rung: null, rungsUp: Infinity };
    expect(requirementOfTrack([...each, blind])).toMatchObject({ notKnown: ['fog'] });
    expect(requirementOfTrack([blind])).toMatchObject({ needs: null, notKnown: ['fog'] });
  });

  it('names those that nothing makes it go past, and speaks of the rest', () => {
    const none = Object.fromEntries(NEEDS.map((name) => [name, { found: false }])) as never;
    const wall = { obstacleId: 'wall', needs: none, rung: null, rungsUp: Infinity };
    expect(requirementOfTrack([...each, wall])).toEqual({ ...requirementOfTrack(each), stops: ['wall'] });
    expect(requirementOfTrack([wall])).toMatchObject({ needs: null, rung: null, stops: ['wall'] });
  });
});

describe('lines', () => {
  it('past which it goes by another than the main one, it goes past', () => {
    const wall = ground('ledge', { riseM: 1.4, slopeRad: rad(30) });
    const { obstacle } = placeOf(wall);
    const stretch = ground('side slope', { camberRad: rad(4), slopeRad: rad(2) });
    const bypass = { id: 'b', kind: 'bypass', name: 'round', stretch, path: [] } as const;
    const both = { ...obstacle, lines: [...obstacle.lines, bypass] };
    expect(requirementOf(both, null, 'as recorded', 'dry').rung).toBe('as it comes');
  });
});

it('the reference has lockers, and else what the class has', () => {
  expect(REFERENCE_VALUES).toMatchObject({
    rearDifferential: 'locker',
    frontDifferential: 'locker',
    wheelbaseM: 2.79,
  });
});
