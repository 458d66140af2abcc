import { describe, expect, it } from 'vitest';
import { degrees, rad } from '../../../src/units.ts';
import { axleOf } from '../../../src/vehicle/axle.ts';
import { tangentHeightM } from '../../../src/vehicle/angles.ts';
import { crestHeightM } from '../../../src/vehicle/body.ts';
import { classValues } from '../../../src/vehicle/classes.ts';

describe('underside from angles', () => {
  it('Australian Design Rule 43/04 cl. 6.4.2–6.4.3: an apex of 7°38′ is 33.33 mm a metre of axle spacing (0.05 mm/m)', () => {
    const apexRad = rad(7 + 38 / 60);
    expect(Math.abs(crestHeightM(1e-6, 1, 0, apexRad) * 1000 - 33.33)).toBeLessThan(0.05);
  });

  it('tangents to 0.38 m tyres on 2.80 m: 18.25° stand 0.22 m up midway (derived from 40 CFR 86.084-2; 1 mm)', () => {
    expect(Math.abs(crestHeightM(0.38, 2.8, 0, rad(18.25)) - 0.22)).toBeLessThan(0.001);
  });

  it('a point on the approach plane sees the approach angle (40 CFR 86.084-2: tangent to the tyre arc)', () => {
    const z = tangentHeightM(0.38, 0.8, rad(30));
    const D = Math.hypot(0.8, 0.38 - z);
    const angle = Math.asin(0.38 / D) - Math.atan((0.38 - z) / 0.8);
    expect(degrees(angle)).toBeCloseTo(30, 6);
  });
});

it('250 kg a wheel on 1 kg/mm deflects 250 mm and bounces at √(g/δ)/2π = 1.0 Hz (autospeed A_112279; 0.5 %)', () => {
  const hz = Math.sqrt(9.80665 / 0.25) / (2 * Math.PI);
  const values = {
    ...classValues('mid-size wagon'),
    massKg: 1000,
    frontShare: 0.5,
    roofLoadKg: 0,
    frontAxle: 'independent',
    frontRideHz: hz,
    // A tyre that hardly gives, as the example has none.
    tyreStiffnessNPerM: 1e9,
  } as const;
  const axle = axleOf(values, 'front', false, 9.80665);
  // The example has no unsprung mass: its spring carries all of the wheel's 250 kg.
  const rate = (axle.springNPerM * 250) / (250 - axle.unsprungKg);
  expect(Math.abs(rate / 9806.65 - 1)).toBeLessThan(0.005);
});
