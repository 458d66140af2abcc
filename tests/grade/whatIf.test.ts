import { describe, expect, it } from 'vitest';
import type { RungVerdict } from '../../src/grade/verdict.ts';
import { groundsOf, rankOf, verdictOn } from '../../src/grade/verdict.ts';
import type { Change, Try } from '../../src/grade/whatIf.ts';
import { gainOf, whatIf } from '../../src/grade/whatIf.ts';
import { presetNamed, stretchFrom } from '../../src/terrain/preset.ts';
import { rad } from '../../src/units.ts';
import { classValues } from '../../src/vehicle/classes.ts';
import type { VehicleValues } from '../../src/vehicle/specs.ts';

function given(preset: string, answers: Record<string, number>, values: Partial<VehicleValues> = {}): Try {
  const vehicleClass = 'mid-size wagon';
  return {
    vehicle: {
      id: 'v',
      name: 'wagon',
      driver: '',
      vehicleClass,
      values: { ...classValues(vehicleClass), ...values },
      estimated: [],
    },
    stretch: stretchFrom(presetNamed(preset)!, answers, 'taped'),
    direction: 'as recorded',
    trackSlope: null,
    ahead: 0,
    offsetM: 0,
  };
}

const deepRuts = given(
  'rutted climb',
  { slopeRad: rad(6), leftDepthM: 0.42, rightDepthM: 0.42 },
  { approachRad: 0.8, departureRad: 0.8 },
);
const named = (changes: readonly Change[], name: string) => changes.find((change) => change.name === name)!;

describe('what if', () => {
  it('fill raises the differential off the crown between deep ruts', () => {
    const fill = named(whatIf(deepRuts), 'fill in ruts and holes');
    expect(fill.from.limit?.name).toMatch(/differential/);
    expect(fill.limitThen!.margin).toBeGreaterThan(fill.from.limit!.margin + 0.05);
    expect(rankOf(fill.to.word)).toBeLessThanOrEqual(rankOf(fill.from.word));
  });

  it('is answered by the same verdict that the changed ground would get', () => {
    const fill = named(whatIf(deepRuts), 'fill in ruts and holes');
    const features = deepRuts.stretch.features.map((feature) =>
      feature.kind === 'rut' ? { ...feature, depthM: feature.depthM - 0.1 } : feature,
    );
    const verdict = verdictOn(
      deepRuts.vehicle,
      groundsOf({ ...deepRuts.stretch, features }, 'as recorded', null),
      0,
    );
    expect(verdict.ladder).toContainEqual(fill.to);
  });

  it('a locker helps where one wheel at a time climbs a skewed step, whether it is fitted yet or only engaged', () => {
    const step = { slopeRad: rad(4), riseM: 0.2, faceRad: rad(75), skewRad: 0.3 };
    const open = { frontDifferential: 'open', rearDifferential: 'open', brakeTraction: 'none' } as const;
    const fitted = named(whatIf(given('ledge', step, open)), 'a rear locker fitted');
    expect(gainOf(fitted).words > 0 || gainOf(fitted).ease > 0).toBe(true);
    const owner = given('ledge', step, { ...open, rearDifferential: 'locker' });
    const engaged = named(whatIf(owner), 'rear locker engaged');
    expect(engaged.to.rung.aids.rearLocked).toBe(true);
    expect(engaged.from.rung.aids.rearLocked).toBe(false);
    expect(named(whatIf(owner), 'a rear locker fitted')).toBeUndefined();
  });

  it('what may be left unused never makes it worse', () => {
    for (const depthM of [0.2, 0.3, 0.4]) {
      const changes = whatIf(given('cross-axle holes', { slopeRad: rad(10), depthM }));
      const fitted = changes.filter(({ name }) => name.endsWith('locker fitted'));
      expect(fitted.length).toBeGreaterThan(0);
      for (const change of fitted) {
        expect(gainOf(change).words).toBeGreaterThanOrEqual(0);
        if (gainOf(change).words === 0) expect(gainOf(change).ease).toBeGreaterThanOrEqual(0);
      }
    }
  });

  it('rain never helps, and is ranked after what does', () => {
    const changes = whatIf(deepRuts);
    const wet = named(changes, 'the ground wet');
    expect(gainOf(wet).words).toBeLessThanOrEqual(0);
    const gains = changes.map(gainOf);
    for (let i = 1; i < gains.length; i++) {
      const [a, b] = [gains[i - 1], gains[i]];
      expect(a.words > b.words || (a.words === b.words && a.ease >= b.ease)).toBe(true);
    }
  });

  it('a surer hand is never worse', () => {
    for (const offsetM of [0, 0.3]) {
      const hand = named(whatIf({ ...deepRuts, offsetM }), "driver's error halved");
      expect(gainOf(hand).words).toBeGreaterThanOrEqual(0);
    }
  });

  /** What hangs between the wheels, whose heights over the ground bigger tyres raise. */
  const BETWEEN_WHEELS = ['belly', 'rampover', 'front differential', 'rear differential'];
  const HINDRANCES = [
    given('rutted climb', { slopeRad: rad(6) }),
    given('cross-axle holes', { slopeRad: rad(3) }),
    given('ledge', { slopeRad: 0, riseM: 0.3 }),
    given('ditch', { slopeRad: 0 }),
    given('rocks', { slopeRad: rad(5) }),
    given('log', { slopeRad: 0 }),
  ];

  it.each(HINDRANCES)(
    'bigger tyres never lessen clearance between the wheels: $stretch.features.0.kind',
    (one) => {
      const { from, to, amountM } = named(whatIf(one), 'bigger tyres');
      expect(to.rung.aids.airedDown).toBe(from.rung.aids.airedDown);
      let told = 0;
      for (const now of from.worstChecks.filter(({ name }) => BETWEEN_WHEELS.includes(name))) {
        const then = to.worstChecks.find(({ name }) => name === now.name)!;
        expect(then.margin, now.name).toBeGreaterThanOrEqual(now.margin - 1e-9);
        told = Math.max(told, then.margin - now.margin);
      }
      // Over ground that stays as it is, a wheel centre rises by half of what the diameter grows.
      expect(told).toBeGreaterThan(0.4 * amountM);
    },
  );

  it('bigger tyres raise the vehicle, so that they never add room overhead or lean', () => {
    const { from, to } = named(whatIf(given('side slope', { slopeRad: rad(3) })), 'bigger tyres');
    for (const name of ['headroom', 'side tip']) {
      const margin = ({ worstChecks }: RungVerdict) =>
        worstChecks.find((check) => check.name === name)!.margin;
      expect(margin(to), name).toBeLessThan(margin(from));
    }
  });

  it.each([120e3, 160e3, 200e3])(
    'tyres down on soft ground of %d Pa never lessen the margin',
    (coneIndexPa) => {
      const soft = given('soft ground', { slopeRad: 0, coneIndexPa });
      const { values } = soft.vehicle;
      const hard = { ...values, lowPressurePa: values.tyrePressurePa };
      const offered = [
        named(whatIf(soft), 'tyres down'),
        named(whatIf({ ...soft, vehicle: { ...soft.vehicle, values: hard } }), 'tyres down by two fifths'),
      ];
      for (const down of offered) {
        expect(down.from.limit?.name).toBe('soft ground');
        expect(down.limitThen!.margin).toBeGreaterThan(down.from.limit!.margin);
        expect(gainOf(down).words).toBeGreaterThanOrEqual(0);
      }
    },
  );

  it('whoever follows others over soft ground is told what going first would do, and nobody else', () => {
    const soft = given('soft ground', { slopeRad: 0, coneIndexPa: 300e3 });
    const first = named(whatIf({ ...soft, ahead: 6 }), 'driven first of the convoy');
    expect(first.limitThen!.margin).toBeGreaterThan(first.from.limit!.margin);
    expect(first.to.checks).toEqual(whatIf(soft)[0].from.checks);
    for (const other of [soft, { ...deepRuts, ahead: 6 }])
      expect(whatIf(other).map(({ name }) => name)).not.toContain('driven first of the convoy');
  });

  it('says nothing where nothing is known', () => {
    const stretch = { ...deepRuts.stretch, plane: { slopeRad: null, camberRad: 0 } };
    expect(whatIf({ ...deepRuts, stretch })).toEqual([]);
  });

  it('a spotter gets no worse out of deep ruts than the driver alone, on the crown and beside it', () => {
    for (const offsetM of [0, 0.3, 0.6]) {
      const aside = { ...deepRuts, offsetM };
      const spotter = named(whatIf(aside), 'a spotter ahead, the line held to');
      expect(gainOf(spotter).words).toBeGreaterThanOrEqual(0);
      if (gainOf(spotter).words === 0) expect(gainOf(spotter).ease).toBeGreaterThanOrEqual(-1e-9);
    }
  });
});
