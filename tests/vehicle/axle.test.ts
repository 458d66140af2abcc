import { describe, expect, it } from 'vitest';
import { axleOf } from '../../src/vehicle/axle.ts';
import { classValues } from '../../src/vehicle/classes.ts';
import { totalMassKg, VEHICLE_CLASSES } from '../../src/vehicle/vehicle.ts';

const G = 9.80665;
const wagon = classValues('mid-size wagon');

describe('an axle', () => {
  it.each(VEHICLE_CLASSES)('of a %s: four wheels bear the vehicle, roof load included', (vehicleClass) => {
    const values = { ...classValues(vehicleClass), roofLoadKg: 80 };
    const borne =
      2 * axleOf(values, 'front', false, G).wheelKg + 2 * axleOf(values, 'rear', false, G).wheelKg;
    expect(borne).toBeCloseTo(totalMassKg(values), 6);
  });

  it('spring and tyre in series give the ride frequency that was counted', () => {
    const axle = axleOf(wagon, 'front', false, G);
    const kt = wagon.tyreStiffnessNPerM;
    const inSeries = (axle.springNPerM * kt) / (axle.springNPerM + kt);
    const sprungKg = (wagon.massKg * wagon.frontShare) / 2 - axle.unsprungKg;
    expect(Math.sqrt(inSeries / sprungKg) / (2 * Math.PI)).toBeCloseTo(wagon.frontRideHz, 6);
  });

  it('independent without a bar does not couple its wheels; a bar presses the higher wheel down', () => {
    const independent = { ...wagon, frontAxle: 'independent', frontAntiRollNmPerRad: 0 } as const;
    expect(axleOf(independent, 'front', false, G).couplingNPerM).toBeCloseTo(0, 6);
    const withBar = { ...independent, frontAntiRollNmPerRad: 20e3 };
    expect(axleOf(withBar, 'front', false, G).couplingNPerM).toBeCloseTo(
      20e3 / wagon.frontTrackWidthM ** 2,
      6,
    );
  });

  it('a beam, its springs inboard, is softer in roll than its springs are in heave', () => {
    const beam = { ...wagon, rearAxle: 'beam', rearAntiRollNmPerRad: 0 } as const;
    const axle = axleOf(beam, 'rear', false, G);
    expect(axle.couplingNPerM).toBeLessThan(0);
    expect(axle.springNPerM + 2 * axle.couplingNPerM).toBeGreaterThan(0);
  });

  it('bars come off only where they can', () => {
    const fixed = { ...wagon, antiRollDisconnects: false };
    const loose = { ...wagon, antiRollDisconnects: true };
    expect(axleOf(fixed, 'front', true, G).couplingNPerM).toBe(
      axleOf(fixed, 'front', false, G).couplingNPerM,
    );
    expect(axleOf(loose, 'front', true, G).couplingNPerM).toBeLessThan(
      axleOf(loose, 'front', false, G).couplingNPerM,
    );
  });
});
