import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Feature } from '../../src/terrain/feature.ts';
import type { Ground } from '../../src/terrain/ground.ts';
import type { Check, CheckName } from '../../src/traverse/assess.ts';
import { assessBounds } from '../../src/traverse/bounds/bounds.ts';
import { depthFlowLimit } from '../../src/traverse/bounds/fit.ts';
import { steepestTan } from '../../src/traverse/bounds/gradeability.ts';
import { axleLoadsN } from '../../src/traverse/bounds/loads.ts';
import { endTipRad, sideTipRad } from '../../src/traverse/bounds/stability.ts';
import { contactAngleRad, hubPullN, unaidedStepM } from '../../src/traverse/bounds/step.ts';
import { traverseAssess } from '../../src/traverse/traverse.ts';
import type { Aids } from '../../src/vehicle/aids.ts';
import { breakoverAngleRad } from '../../src/vehicle/angles.ts';
import type { VehicleValues } from '../../src/vehicle/specs.ts';
import { totalMassKg } from '../../src/vehicle/vehicle.ts';
import { rad } from '../../src/units.ts';
import { flatGround, randomScene } from './scenes.ts';

const RUNS = { seed: 20261126, numRuns: 60 };
const OPEN: Aids = {
  lowRange: true,
  centreLocked: true,
  rearLocked: false,
  frontLocked: false,
  airedDown: false,
  barsDisconnected: false,
};
const LOCKED: Aids = { ...OPEN, rearLocked: true, frontLocked: true };

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Any vehicle that looks the same from both sides, with more engine than grip and nothing that helps or hinders it. */
const vehicle = fc.nat(100_000).map((n): VehicleValues => {
  const { values } = randomScene(10 * n + 1);
  return {
    ...values,
    drive: 'part-time four',
    centre: 'none',
    frontDifferential: 'locker',
    rearDifferential: 'locker',
    brakeTraction: 'none',
    engineTraction: 'none',
    lowRangeRatio: 2.5,
    crawlRatio: 150,
    engineTorqueNm: 1200,
    rearTrackWidthM: values.frontTrackWidthM,
    frontDifferentialYM: 0,
    rearDifferentialYM: 0,
  };
});

/** The same on springs, bars and tyres as stiff as they come: nearly the rigid body of the closed forms. */
const stiff = vehicle.map((values) => ({
  ...values,
  frontRideHz: 3,
  rearRideHz: 3,
  frontAntiRollNmPerRad: 120e3,
  rearAntiRollNmPerRad: 120e3,
  tyreStiffnessNPerM: 600e3,
}));

const isStiff = (values: VehicleValues) => values.frontRideHz === 3;

interface Plane {
  readonly slopeRad: number;
  readonly camberRad: number;
  readonly mu: number;
}

const plane = fc.record({
  slopeRad: between(-0.5, 0.5),
  camberRad: between(-0.4, 0.4),
  mu: between(0.2, 0.9),
});

/** One adhesion, so that what slides and what grips need not be told apart; no rolling resistance unless said. */
function groundOf({ slopeRad, camberRad, mu }: Plane, features: readonly Feature[] = [], f = 0): Ground {
  return {
    ...flatGround,
    slopeRad,
    camberRad,
    peakAdhesion: mu,
    slidingAdhesion: mu,
    rollingResistance: f,
    features,
  };
}
const level = (mu: number, ...features: Feature[]) => groundOf({ slopeRad: 0, camberRad: 0, mu }, features);

type Both = (name: CheckName) => { readonly traverse: Check; readonly bounds: Check };

function both(values: VehicleValues, ground: Ground, aids = LOCKED, offsetM = 0): Both {
  const [traverse, bounds] = [
    traverseAssess(values, ground, offsetM, aids),
    assessBounds(values, [ground], offsetM, [aids])[0],
  ].map((found) => {
    if (!found.known) throw new Error(found.cause);
    return found.checks;
  });
  return (name) => ({
    traverse: traverse.find((check) => check.name === name)!,
    bounds: bounds.find((check) => check.name === name)!,
  });
}

/** Upward vertical's share normal to the plane. */
const upZ = ({ slopeRad, camberRad }: Plane) =>
  Math.sqrt(1 - Math.sin(slopeRad) ** 2 - Math.sin(camberRad) ** 2);

describe('on a plane the traverse agrees with the closed forms', () => {
  it('traction along it, every wheel locked: the same to 1e-6', () => {
    fc.assert(
      fc.property(vehicle, plane, between(0, 0.1), (values, { slopeRad, mu }, f) => {
        const { traverse, bounds } = both(
          values,
          groundOf({ slopeRad, camberRad: 0, mu }, [], f),
        )('traction');
        expect(traverse.margin).toBeCloseTo(bounds.margin, 6);
      }),
      RUNS,
    );
  });

  it('traction on a camber: (μ − f) u_z − sin(slope) when locked; open no more than the bound, which leans less', () => {
    fc.assert(
      fc.property(vehicle, plane, between(0, 0.1), (values, on, f) => {
        const ground = groundOf(on, [], f);
        const locked = both(values, ground)('traction').traverse;
        expect(locked.margin).toBeCloseTo((on.mu - f) * upZ(on) - Math.sin(on.slopeRad), 6);
        const open = both(values, ground, OPEN)('traction');
        expect(open.traverse.margin).toBeLessThanOrEqual(open.bounds.margin + 1e-6);
      }),
      RUNS,
    );
  });

  it.each([
    ['front', LOCKED],
    ['rear', LOCKED],
    ['four locked', LOCKED],
    ['four open centre', { ...LOCKED, centreLocked: false }],
  ] as const)(
    'steepest slope of %s drive: nothing to spare, to 0.003 of weight on stiff springs and 0.015 on soft ones',
    (drive, aids) => {
      fc.assert(
        fc.property(fc.oneof(vehicle, stiff), between(0.2, 0.8), (values, mu) => {
          const driven: VehicleValues = {
            ...values,
            drive: drive === 'front' || drive === 'rear' ? drive : 'full-time four',
            centre: drive === 'front' || drive === 'rear' ? 'none' : 'lockable',
          };
          const tan = steepestTan(drive, mu, {
            wheelbaseM: values.wheelbaseM,
            behindFrontM: values.wheelbaseM * (1 - values.frontShare),
            massHeightM: values.massHeightM,
          });
          const { traverse } = both(
            driven,
            groundOf({ slopeRad: Math.atan(tan), camberRad: 0, mu }),
            aids,
          )('traction');
          expect(Math.abs(traverse.margin)).toBeLessThan(isStiff(values) ? 0.003 : 0.015);
        }),
        RUNS,
      );
    },
  );

  it('braking on the way down: μ u_z, the bound’s without camber and less with', () => {
    fc.assert(
      fc.property(vehicle, plane, (values, on) => {
        const down = { ...on, slopeRad: -Math.abs(on.slopeRad) };
        const { traverse, bounds } = both(values, groundOf(down))('braking');
        expect(traverse.have).toBeCloseTo(on.mu * upZ(down), 6);
        expect(traverse.margin).toBeLessThanOrEqual(bounds.margin + 1e-6);
        const straight = both(values, groundOf({ ...down, camberRad: 0 }))('braking');
        expect(straight.traverse.margin).toBeCloseTo(straight.bounds.margin, 6);
      }),
      RUNS,
    );
  });

  it('side hold across level ground: the bound times cos(camber), to 0.001', () => {
    fc.assert(
      fc.property(vehicle, plane, (values, { camberRad, mu }) => {
        const { traverse, bounds } = both(values, groundOf({ slopeRad: 0, camberRad, mu }))('side hold');
        expect(Math.abs(traverse.margin - bounds.margin * Math.cos(camberRad))).toBeLessThan(0.001);
      }),
      RUNS,
    );
  });

  it('side hold on a slope that it can climb or hold: no more than the bound', () => {
    fc.assert(
      fc.property(vehicle, plane, fc.constantFrom(OPEN, LOCKED), (values, on, aids) => {
        const said = both(values, groundOf(on), aids);
        fc.pre(said('traction').traverse.margin >= 0 && said('braking').traverse.margin >= 0);
        const { traverse, bounds } = said('side hold');
        // Over weight and not over load, so that what lacks is less as well: the sign is the same.
        const bound = Math.max(bounds.margin, bounds.margin * upZ(on));
        expect(traverse.margin).toBeLessThanOrEqual(bound + 0.001);
      }),
      RUNS,
    );
  });

  it('tip angles: never more than the rigid ones, and on stiff springs at most 1.5° less', () => {
    fc.assert(
      fc.property(fc.oneof(vehicle, stiff), between(-0.5, 0.5), (values, angleRad) => {
        const { wheelbaseM, frontShare, massHeightM } = values;
        const side = sideTipRad(values.frontTrackWidthM, massHeightM) - Math.abs(angleRad);
        const back = endTipRad(wheelbaseM * frontShare, massHeightM) - angleRad;
        const forward = endTipRad(wheelbaseM * (1 - frontShare), massHeightM) + angleRad;
        const end = Math.min(back, forward);
        fc.pre(side > rad(3) && end > rad(3));
        const across = both(values, groundOf({ slopeRad: 0, camberRad: angleRad, mu: 0.9 }))('side tip');
        const along = both(values, groundOf({ slopeRad: angleRad, camberRad: 0, mu: 0.9 }))('end tip');
        expect(across.bounds.margin).toBeCloseTo(side, 6);
        // The bound looks at the lower end alone, which on a gentle slope need not be the nearer one.
        expect(along.bounds.margin).toBeCloseTo(angleRad > 0 ? back : forward, 6);
        expect(across.traverse.have).toBeLessThanOrEqual(side + 1e-6);
        expect(along.traverse.have).toBeLessThanOrEqual(end + 1e-6);
        if (!isStiff(values)) return;
        expect(across.traverse.have).toBeGreaterThan(side - rad(1.5));
        expect(along.traverse.have).toBeGreaterThan(end - rad(1.5));
      }),
      RUNS,
    );
  });

  it('clearances on level ground: as measured, to 1e-6', () => {
    fc.assert(
      fc.property(vehicle, (values) => {
        const said = both(values, level(0.6));
        for (const name of ['front differential', 'rear differential'] as const)
          expect(said(name).traverse.margin).toBeCloseTo(said(name).bounds.margin, 6);
        expect(said('belly').bounds.margin).toBeCloseTo(values.bellyHeightM, 6);
        expect(said('belly').traverse.margin).toBeGreaterThanOrEqual(values.bellyHeightM - 1e-6);
      }),
      RUNS,
    );
  });

  it('a belly on a slope or camber: no higher than the bound’s by 1 cm, and lower by no more than the springs give', () => {
    fc.assert(
      fc.property(vehicle, plane, (values, on) => {
        const { traverse, bounds } = both(values, groundOf(on))('belly');
        expect(traverse.margin).toBeLessThan(bounds.margin + 0.01);
        expect(traverse.margin).toBeGreaterThan(
          bounds.margin - Math.max(values.frontBumpM, values.rearBumpM),
        );
      }),
      RUNS,
    );
  });
});

describe('on one feature the traverse agrees with the closed forms', () => {
  const face = (riseM: number, faceRad: number): Feature => ({
    kind: 'ledge',
    xM: 0,
    riseM,
    faceRad,
    skewRad: 0,
  });

  it.each([
    ['approach', 'approachRad', 1.5],
    ['departure', 'departureRad', -1.5],
  ] as const)(
    '%s: a ramp is cleared below the angle and touched above it, 2° either way',
    (name, field, riseM) => {
      fc.assert(
        fc.property(vehicle, between(0.25, 0.8), between(0.2, 1), (values, angleRad, faceRad) => {
          const off = angleRad - faceRad;
          fc.pre(Math.abs(off) > rad(2));
          const { traverse, bounds } = both(
            { ...values, [field]: angleRad },
            level(0.6, face(riseM, faceRad)),
          )(name);
          expect(Math.sign(traverse.margin)).toBe(Math.sign(off));
          expect(Math.sign(bounds.margin)).toBe(Math.sign(off));
        }),
        RUNS,
      );
    },
  );

  it('rampover: a hump that the rigid body hangs on by 3° is touched, one that it clears by 3° is cleared', () => {
    const hump = fc.record({ lengthM: between(1.5, 8), heightM: between(0.1, 1) });
    fc.assert(
      fc.property(vehicle, hump, (values, sizes) => {
        const { tyreDiameterM, wheelbaseM, bellyHeightM } = values;
        // Belly and angle told by one point midway, so that neither says what the other does not.
        const rampoverRad = breakoverAngleRad(
          tyreDiameterM / 2,
          wheelbaseM / 2,
          wheelbaseM / 2,
          bellyHeightM,
        );
        const said = both(
          { ...values, rampoverRad },
          level(0.6, { kind: 'hump', xM: 0, skewRad: 0, ...sizes }),
        );
        const bounds = Math.min(said('rampover').bounds.margin / rad(3), said('belly').bounds.margin / 0.04);
        fc.pre(Math.abs(bounds) > 1);
        const gaps = [said('belly').traverse, said('rampover').traverse].filter(
          (check) => check !== undefined,
        );
        expect(Math.sign(Math.min(...gaps.map(({ margin }) => margin)))).toBe(Math.sign(bounds));
      }),
      RUNS,
    );
  });

  it('a differential on a beam over a hump: the same to 1.5 cm', () => {
    const hump = fc.record({ lengthM: between(1.5, 8), heightM: between(0.1, 1) });
    fc.assert(
      fc.property(vehicle, hump, (values, sizes) => {
        const beams = { ...values, frontAxle: 'beam', rearAxle: 'beam' } as const;
        const said = both(beams, level(0.6, { kind: 'hump', xM: 0, skewRad: 0, ...sizes }));
        for (const name of ['front differential', 'rear differential'] as const)
          expect(Math.abs(said(name).traverse.margin - said(name).bounds.margin)).toBeLessThan(0.015);
      }),
      RUNS,
    );
  });

  it('a step that every wheel climbs by itself is climbed: h = r (1 − 1/√(1 + μ²)) is a true lower bound', () => {
    fc.assert(
      fc.property(vehicle, between(0.3, 1), between(0.1, 1), (values, mu, part) => {
        const stepM = part * unaidedStepM(values.tyreDiameterM / 2, mu);
        const { traverse } = both(values, level(mu, face(stepM, rad(85))))('traction');
        expect(traverse.margin).toBeGreaterThan(0);
      }),
      RUNS,
    );
  });

  it('a step before a front-drive vehicle: as its driven wheels climb and tow the others, where that is told by 0.1 of weight', () => {
    fc.assert(
      fc.property(vehicle, between(0.2, 1), between(0.05, 0.6), (values, mu, part) => {
        const R = values.tyreDiameterM / 2;
        const stepM = part * R;
        const { frontN, rearN } = axleLoadsN({
          weightN: 1,
          wheelbaseM: values.wheelbaseM,
          behindFrontM: values.wheelbaseM * (1 - values.frontShare),
          massHeightM: values.massHeightM,
          slopeRad: 0,
        });
        const climbs = frontN * Math.tan(Math.atan(mu) - contactAngleRad(R, stepM));
        const tows = mu * frontN - hubPullN(rearN, R, stepM);
        const spare = Math.min(climbs, tows);
        fc.pre(Math.abs(spare) > 0.1);
        const { traverse } = both({ ...values, drive: 'front' }, level(mu, face(stepM, rad(85))))('traction');
        expect(Math.sign(traverse.margin)).toBe(Math.sign(spare));
      }),
      RUNS,
    );
  });

  it('a ford: depth and flow as the closed forms, and no more traction than on dry ground', () => {
    const water = fc.record({ depthM: between(0.05, 1), flowMps: between(0.05, 2) });
    fc.assert(
      fc.property(vehicle, water, (values, sizes) => {
        const ford: Feature = { kind: 'water', fromM: -3, toM: 3, ...sizes };
        const said = both(values, level(0.6, ford));
        expect(said('water depth').traverse.margin).toBe(values.wadingDepthM - sizes.depthM);
        const limit = sizes.depthM > values.floorHeightM ? 0 : depthFlowLimit(totalMassKg(values));
        expect(said('depth × flow').traverse.margin).toBe(limit - sizes.depthM * sizes.flowMps);
        expect(said('traction').traverse.margin).toBeLessThanOrEqual(said('traction').bounds.margin + 1e-6);
      }),
      RUNS,
    );
  });

  it('room in the corridor: half of the width on either side of the line', () => {
    fc.assert(
      fc.property(
        vehicle,
        between(0.8, 3),
        between(0.8, 3),
        between(-0.6, 0.6),
        (values, leftM, rightM, offsetM) => {
          const corridor = { ...flatGround.corridor, leftM, rightM };
          const said = both(values, { ...level(0.6), corridor }, LOCKED, offsetM)('width').traverse;
          expect(said.margin).toBeCloseTo(Math.min(leftM - offsetM, rightM + offsetM) - values.widthM / 2, 9);
        },
      ),
      RUNS,
    );
  });
});
