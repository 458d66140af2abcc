import { coverOf } from '../terrain/cover.ts';
import type { Ground } from '../terrain/ground.ts';
import type { Chassis } from './chassis.ts';

/** Density of fresh water, kg/m³. */
const WATER_KG_PER_M3 = 1000;

/**
 * Share of weight that water carries while mid-wheelbase is within half a wheelbase of it: the cabin displaces what stands
 * over its floor, ρ A (d − floor), and doors keep it out for as long as a ford takes. Wheels then bear that much less.
 * Left out: the lift on tyres and axles (some 5 %), and the list that a current gives.
 */
export function liftedShare(ground: Ground, chassis: Chassis, stationM: number): number {
  let share = 0;
  for (const { fromM, toM, depthM } of coverOf(ground).waters) {
    const half = chassis.wheelbaseM / 2;
    if (stationM < fromM - half || stationM > toM + half) continue;
    const overFloorM = Math.max(0, depthM - chassis.floorHeightM);
    share = Math.max(share, (WATER_KG_PER_M3 * chassis.floorM2 * overFloorM) / chassis.massKg);
  }
  return Math.min(1, share);
}
