import type { Rung } from '../vehicle/aids.ts';
import { ladder } from '../vehicle/aids.ts';
import { classValues } from '../vehicle/classes.ts';
import type { VehicleValues } from '../vehicle/specs.ts';
import type { Vehicle, VehicleClass } from '../vehicle/vehicle.ts';
import { rad } from '../units.ts';

/** The kinds of vehicle that classifications name, each one full set of invented but typical values; never a make. */
export const REFERENCES = [
  'soft-roader',
  'two-wheel-drive utility',
  'utility',
  'wagon',
  'raised wagon',
  'prepared wagon',
] as const;

export type ReferenceName = (typeof REFERENCES)[number];

const WAGON = classValues('mid-size wagon');
const UTILITY = classValues('dual-cab utility');

/** With larger tyres and longer springs: everything on the body rises by both, what hangs on an axle by the tyre alone. */
function lifted(values: VehicleValues, tyreM: number, springM: number): VehicleValues {
  const axleM = tyreM / 2;
  const bodyM = axleM + springM;
  return {
    ...values,
    tyreDiameterM: values.tyreDiameterM + tyreM,
    heightM: values.heightM + bodyM,
    bellyHeightM: values.bellyHeightM + bodyM,
    sillHeightM: values.sillHeightM + bodyM,
    frontDifferentialHeightM: values.frontDifferentialHeightM + axleM,
    rearDifferentialHeightM: values.rearDifferentialHeightM + axleM,
    massHeightM: values.massHeightM + bodyM,
    roofLoadHeightM: values.roofLoadHeightM + bodyM,
    floorHeightM: values.floorHeightM + bodyM,
    frontDifferential: 'locker',
    rearDifferential: 'locker',
  };
}

/**
 * "High ground clearance": two usual sizes of tyre up and 5 cm of spring, lockers in both axles. "Prepared": four sizes and
 * 8 cm, steeper angles, bars that disconnect. Our choice of typical values, no source.
 */
const VALUES: Readonly<Record<ReferenceName, VehicleValues>> = {
  'soft-roader': classValues('all-wheel-drive soft-roader'),
  'two-wheel-drive utility': {
    ...UTILITY,
    drive: 'rear',
    rearDifferential: 'locker',
    lowRangeRatio: 1,
    crawlRatio: UTILITY.crawlRatio / UTILITY.lowRangeRatio,
  },
  utility: UTILITY,
  wagon: WAGON,
  'raised wagon': {
    ...lifted(WAGON, 0.066, 0.05),
    approachRad: rad(38),
    rampoverRad: rad(29),
    departureRad: rad(30),
    wadingDepthM: 0.8,
  },
  'prepared wagon': {
    ...lifted(WAGON, 0.132, 0.08),
    approachRad: rad(46),
    rampoverRad: rad(33),
    departureRad: rad(37),
    frontBumpM: 0.12,
    frontDroopM: 0.13,
    rearBumpM: 0.13,
    rearDroopM: 0.17,
    antiRollDisconnects: true,
    wadingDepthM: 0.9,
  },
};

function classOf(name: ReferenceName): VehicleClass {
  if (name === 'soft-roader') return 'all-wheel-drive soft-roader';
  return name.endsWith('utility') ? 'dual-cab utility' : 'mid-size wagon';
}

function vehicleOf(name: ReferenceName): Vehicle {
  return { id: name, name, driver: '', vehicleClass: classOf(name), values: VALUES[name], estimated: [] };
}

const VEHICLES = new Map(REFERENCES.map((name) => [name, vehicleOf(name)]));

export function referenceVehicle(name: ReferenceName): Vehicle {
  return VEHICLES.get(name) as Vehicle;
}

/** Its rungs at the usual tyre pressure, or the same with tyres down and bars off where it has that. */
export function referenceRungs(values: VehicleValues, tyresDown: boolean): Rung[] {
  const usual = ladder(values).filter(({ aids }) => !aids.airedDown && !aids.barsDisconnected);
  if (!tyresDown) return usual;
  const barsDisconnected = values.antiRollDisconnects;
  return usual.map(({ name, aids }) => ({ name, aids: { ...aids, airedDown: true, barsDisconnected } }));
}
