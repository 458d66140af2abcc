import { describe, expect, it } from 'vitest';
import { neededAdhesion } from '../../../src/grade/neededAdhesion.ts';
import type { Obstacle } from '../../../src/terrain/obstacle.ts';
import { gripOf } from '../../../src/terrain/surface.ts';
import { ladder } from '../../../src/vehicle/aids.ts';
import { classValues } from '../../../src/vehicle/classes.ts';
import type { Vehicle } from '../../../src/vehicle/vehicle.ts';

/** With every differential locked, all wheels give all the grip that they have. */
const locked: Vehicle = {
  id: 'v',
  name: 'wagon',
  driver: '',
  vehicleClass: 'mid-size wagon',
  values: {
    ...classValues('mid-size wagon'),
    centre: 'lockable',
    frontDifferential: 'locker',
    rearDifferential: 'locker',
    lowRangeRatio: 2.6,
  },
  estimated: [],
};

function slope(slopeRad: number): Obstacle {
  return {
    id: 'o',
    name: '',
    preset: 'rutted climb',
    lng: 0,
    lat: 0,
    stationM: 0,
    stretch: {
      lengthM: 12,
      plane: { slopeRad, camberRad: 0 },
      surface: { material: 'grass', condition: 'wet' },
      corridor: { leftM: 4, leftBound: 'open', rightM: 4, rightBound: 'open', headroomM: 6 },
      features: [],
      hows: { 'plane.slopeRad': 'taped', 'plane.camberRad': 'taped' },
    },
    lines: [{ id: 'm', kind: 'main', name: 'main', offsetM: 0 }],
    note: '',
    photos: [],
  };
}

/**
 * A body with all wheels driven holds on a slope of tan θ = μ (statics textbook problem, physicsforums 339714: four
 * wheels, μ 0.5, 26.57°); rolling resistance adds its coefficient to what is needed (Wong, Theory of Ground Vehicles,
 * tractive effort against grade and rolling resistance, from memory).
 */
describe('the adhesion that a plain slope needs, all wheels locked together', () => {
  const rung = ladder(locked.values).find(({ aids }) => aids.frontLocked)?.name ?? '';
  const rolling = gripOf({ material: 'grass', condition: 'wet' }).rolling.usual;

  it.each([0.1, 0.15, 0.25, 0.4])('is its tangent, %d, and the rolling resistance', (tangent) => {
    const attempt = {
      vehicle: locked,
      obstacle: slope(Math.atan(tangent)),
      lineId: 'm',
      direction: 'as recorded' as const,
      rung,
      trackSlope: null,
    };
    expect(Math.abs((neededAdhesion(attempt) ?? 0) - (tangent + rolling))).toBeLessThan(0.004);
  });
});
