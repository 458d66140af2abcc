import { describe, expect, it } from 'vitest';
import { groundsOf, verdictOn } from '../../src/grade/verdict.ts';
import type { Assess, Check, CheckName, Findings } from '../../src/traverse/assess.ts';
import { worstOf } from '../../src/traverse/assess.ts';
import { classValues } from '../../src/vehicle/classes.ts';
import type { Vehicle } from '../../src/vehicle/vehicle.ts';
import { presetNamed, stretchFrom } from '../../src/terrain/preset.ts';

const vehicle: Vehicle = {
  id: 'v',
  name: 'wagon',
  driver: '',
  vehicleClass: 'mid-size wagon',
  values: { ...classValues('mid-size wagon'), rearDifferential: 'locker' },
  estimated: [],
};

const stretch = stretchFrom(presetNamed('rutted climb')!, { slopeRad: 0.2 });

function check(name: CheckName, margin: number, tolerance = 0.1): Check {
  return { name, quantity: 'share', have: margin, need: 0, margin, tolerance, stationM: 0, cause: name };
}

function findings(margins: Partial<Record<CheckName, number>>, entrySpeedMps = 0, pullN = 0): Findings {
  const all = { belly: 1, 'side tip': 1, traction: 1, ...margins };
  const checks = Object.entries(all).map(([name, margin]) => check(name as CheckName, margin));
  return { known: true, checks, entrySpeedMps, pullN };
}

/** Physics that answers `entered` for the ground as entered and `worst` for all others, whatever the aids. */
function answers(entered: Findings, worst: Findings = entered): Assess {
  return (_values, [ground], _offset, aidSets) =>
    aidSets.map(() => (ground === grounds.entered ? entered : worst));
}

const grounds = groundsOf(stretch, 'as recorded', null);

const said = (assess: Assess) => verdictOn(vehicle, grounds, 0, assess);

describe('the word', () => {
  it('goes only where every margin stands beyond its tolerance and stays positive at its worst', () => {
    expect(said(answers(findings({ belly: 0.2 }))).word).toBe('goes');
    expect(said(answers(findings({ belly: 0.05 }))).word).toBe('goes with care');
    expect(said(answers(findings({ belly: 0.2 }), findings({ belly: -0.05 }))).word).toBe('goes with care');
  });

  it('a touching belly does not go, and names itself', () => {
    const verdict = said(answers(findings({ belly: -0.05, traction: -0.5 })));
    expect(verdict).toMatchObject({ word: 'does not go', cause: 'belly' });
  });

  it('what can hurt people is judged at its worst', () => {
    expect(said(answers(findings({}), findings({ 'side tip': -0.01 }))).word).toBe('does not go');
  });

  it('lacking traction needs momentum where a walking speed carries it and nothing else is near a limit', () => {
    const slow = findings({ traction: -0.1 }, 2, 3000);
    expect(said(answers(slow))).toMatchObject({ word: 'needs momentum', entrySpeedMps: 2 });
    expect(said(answers(slow, findings({ traction: -0.2 }, Infinity, 6000)))).toMatchObject({
      word: 'needs a pull',
      pullN: 6000,
    });
    expect(said(answers(slow, findings({ traction: -0.1, belly: 0.05 }, 2, 3000))).word).toBe('needs a pull');
  });

  describe('on a descent that the engine does not hold', () => {
    const braked = (share: number): Findings => {
      const found = findings({ braking: 0.2 });
      const engine = { ...check('braking', -0.1), quantity: 'angle', braked: share } as const;
      const checks = found.checks.map((one) => (one.name === 'braking' ? { ...one, engine } : one));
      return { ...found, checks };
    };
    const byFoot = { ...vehicle, values: { ...vehicle.values, hillDescent: false } };
    const controlled = { ...vehicle, values: { ...vehicle.values, hillDescent: true } };

    it('goes while a foot holds less than half of what the wheels can, with care where it must hold more', () => {
      expect(verdictOn(byFoot, grounds, 0, answers(braked(0.4))).word).toBe('goes');
      const verdict = verdictOn(byFoot, grounds, 0, answers(braked(0.6)));
      expect(verdict.word).toBe('goes with care');
      expect(verdict.limit!.name).toBe('braking');
    });

    it('is left to hill descent control where there is one', () => {
      expect(verdictOn(controlled, grounds, 0, answers(braked(0.9))).word).toBe('goes');
    });

    it('never says more than care: brakes remain', () => {
      expect(verdictOn(byFoot, grounds, 0, answers(braked(1))).word).toBe('goes with care');
    });
  });

  it('what cannot be assessed is not known, with its reason', () => {
    const silent: Assess = (_v, _g, _o, aidSets) => aidSets.map(() => ({ known: false, cause: 'because' }));
    expect(said(silent)).toMatchObject({ word: 'not known', cause: 'because', limit: null });
    const noSlope = { ...stretch, plane: { slopeRad: null, camberRad: 0 } };
    const noMass = { ...vehicle, values: { ...vehicle.values, massKg: NaN } };
    expect(verdictOn(noMass, grounds, 0)).toMatchObject({
      word: 'not known',
      cause: 'not known of this vehicle: mass as loaded',
    });
    expect(verdictOn(vehicle, groundsOf(noSlope, 'as recorded', null), 0).word).toBe('not known');
  });
});

describe('ground that was measured as level', () => {
  const level = stretchFrom(presetNamed('cross-axle holes')!, { slopeRad: 0, depthM: 0.25 });
  const four = groundsOf(level, 'as recorded', null);

  it('is judged leaning to either side, climbing and falling, within its ±', () => {
    const signs = four.worst.map(({ slopeRad, camberRad }) => [Math.sign(slopeRad), Math.sign(camberRad)]);
    expect(new Set(signs.map(String))).toEqual(new Set(['1,1', '1,-1', '-1,1', '-1,-1']));
    expect(grounds.worst.map(({ slopeRad }) => Math.sign(slopeRad))).toEqual([1, 1]);
  });

  it('gets the worst that is said of any of them, check by check', () => {
    const [first] = four.worst;
    const assess: Assess = (_values, grounds, _offset, aidSets) =>
      aidSets.map(() =>
        worstOf(
          grounds.map((ground) =>
            findings(ground === four.entered ? {} : ground === first ? { belly: 0.3 } : { 'side tip': -0.1 }),
          ),
        ),
      );
    const { word, worstChecks } = verdictOn(vehicle, four, 0, assess);
    expect(word).toBe('does not go');
    expect(worstChecks.find(({ name }) => name === 'belly')!.margin).toBe(0.3);
  });

  it('says the same travelled either way by a vehicle that is alike at both ends', () => {
    const [one, other] = (['as recorded', 'reversed'] as const).map((direction) =>
      groundsOf(level, direction, null)
        .worst.map(({ slopeRad, camberRad }) => `${slopeRad} ${camberRad}`)
        .sort(),
    );
    expect(one).toEqual(other);
  });
});

describe('the ladder of aids', () => {
  it('takes the least rung that earns the best word', () => {
    const onlyLocked: Assess = (_v, _g, _o, aidSets) =>
      aidSets.map((aids) => findings({ traction: aids.rearLocked ? 0.3 : -0.3 }, Infinity, 1000));
    const verdict = said(onlyLocked);
    expect(verdict).toMatchObject({ word: 'goes', rung: { name: 'rear locker' } });
    expect(verdict.ladder.map((step) => step.word)).toEqual(['needs a pull', 'needs a pull', 'goes', 'goes']);
  });
});
