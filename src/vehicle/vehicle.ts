import type { Problem } from '../problem.ts';
import { checkValues } from '../field.ts';
import type { VehicleField, VehicleValues } from './specs.ts';
import { vehicleFields } from './specs.ts';
import { say } from '../words/words.ts';

/** Kinds of vehicle, by shape and use; never a make. */
export const VEHICLE_CLASSES = [
  'compact 4x4',
  'mid-size wagon',
  'full-size wagon',
  'dual-cab utility',
  'all-wheel-drive soft-roader',
  'long-wheelbase van',
] as const;

export type VehicleClass = (typeof VEHICLE_CLASSES)[number];

/** One vehicle with its driver. */
export interface Vehicle {
  readonly id: string;
  readonly name: string;
  readonly driver: string;
  readonly vehicleClass: VehicleClass;
  readonly values: VehicleValues;
  /** Values that are still typical of the class, not measured or read from this vehicle's papers. */
  readonly estimated: readonly VehicleField[];
}

/** Mass with the roof load. */
export function totalMassKg(values: VehicleValues): number {
  return values.massKg + values.roofLoadKg;
}

/** Height of the centre of mass above level ground with the roof load on. */
export function loadedMassHeightM(values: VehicleValues): number {
  return (
    (values.massKg * values.massHeightM + values.roofLoadKg * values.roofLoadHeightM) / totalMassKg(values)
  );
}

/** Values out of range, and values that contradict each other. */
export function checkVehicle(vehicle: Vehicle, where: string): Problem[] {
  const v = vehicle.values;
  const problems = checkValues(vehicleFields, v, `${where}.values`);
  const contradict = (name: VehicleField, what: string, done: string) =>
    problems.push({ severity: 'error', where: `${where}.values.${name}`, what, done, times: 1 });

  if (Math.max(v.frontTrackWidthM, v.rearTrackWidthM) + v.tyreSectionM > v.widthM + 0.1)
    contradict('widthM', say.groundChecks.tyresWider, say.groundChecks.tyresWiderDone);
  if (v.lowPressurePa > v.tyrePressurePa)
    contradict('lowPressurePa', say.groundChecks.lowestAbove, say.groundChecks.lowestAboveDone);
  if (v.bellyHeightM > v.sillHeightM + 0.1)
    contradict('bellyHeightM', say.groundChecks.bellyAbove, say.groundChecks.bellyAboveDone);
  if (v.drive === 'part-time four' && v.centre !== 'none')
    contradict('centre', say.groundChecks.partTimeCentre, say.groundChecks.partTimeCentreDone);
  return problems;
}
