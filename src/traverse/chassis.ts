import type { Aids } from '../vehicle/aids.ts';
import type { Axle } from '../vehicle/axle.ts';
import { axleOf } from '../vehicle/axle.ts';
import type { VehicleValues } from '../vehicle/specs.ts';
import type { Tyre } from '../vehicle/tyre.ts';
import { tyreOf } from '../vehicle/tyre.ts';
import { loadedMassHeightM, totalMassKg } from '../vehicle/vehicle.ts';
import { G_MPS2 } from './gravity.ts';

/** What carries the vehicle, with the masses placed: the numbers that the equilibrium is solved for. */
export interface Chassis {
  readonly front: Axle;
  readonly rear: Axle;
  readonly tyre: Tyre;
  readonly wheelbaseM: number;
  readonly massKg: number;
  /** Of the whole vehicle, ahead of mid-wheelbase. */
  readonly massXM: number;
  readonly massHeightM: number;
  readonly sprungKg: number;
  readonly sprungXM: number;
  readonly sprungHeightM: number;
  /** Underside of the cabin floor, and its area, on which water lifts. */
  readonly floorHeightM: number;
  readonly floorM2: number;
}

const known = new WeakMap<VehicleValues, Map<string, Chassis>>();

/** The chassis with its tyres down or its bars off; the same vehicle, asked again, has the same one. */
export function chassisOf(
  values: VehicleValues,
  { airedDown, barsDisconnected }: Pick<Aids, 'airedDown' | 'barsDisconnected'>,
): Chassis {
  const all = known.get(values) ?? new Map<string, Chassis>();
  known.set(values, all);
  const key = `${airedDown} ${barsDisconnected}`;
  const found = all.get(key);
  if (found) return found;
  const chassis = placed(
    values,
    axleOf(values, 'front', barsDisconnected, G_MPS2),
    axleOf(values, 'rear', barsDisconnected, G_MPS2),
    tyreOf(values, airedDown),
  );
  all.set(key, chassis);
  return chassis;
}

/** The sprung mass is what is left when the four unsprung masses, at their wheel centres, are taken from the whole. */
function placed(values: VehicleValues, front: Axle, rear: Axle, tyre: Tyre): Chassis {
  const L = values.wheelbaseM;
  const massKg = totalMassKg(values);
  const massXM = L * (values.frontShare - 0.5);
  const massHeightM = loadedMassHeightM(values);
  const sprungKg = massKg - 2 * front.unsprungKg - 2 * rear.unsprungKg;
  const unsprungXKgM = L * (front.unsprungKg - rear.unsprungKg);
  const unsprungHeightKgM = 2 * front.unsprungKg * front.hubHeightM + 2 * rear.unsprungKg * rear.hubHeightM;
  return {
    front,
    rear,
    tyre,
    wheelbaseM: L,
    massKg,
    massXM,
    massHeightM,
    sprungKg,
    sprungXM: (massKg * massXM - unsprungXKgM) / sprungKg,
    floorHeightM: values.floorHeightM,
    floorM2: (L * (values.frontTrackWidthM + values.rearTrackWidthM)) / 2,
    sprungHeightM: (massKg * massHeightM - unsprungHeightKgM) / sprungKg,
  };
}
