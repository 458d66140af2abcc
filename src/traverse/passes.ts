import type { Ground } from '../terrain/ground.ts';
import type { Aids } from '../vehicle/aids.ts';
import { underside } from '../vehicle/body.ts';
import { drivelineOf } from '../vehicle/driveline.ts';
import type { VehicleValues } from '../vehicle/specs.ts';
import type { Check, CheckName } from './assess.ts';
import { fitChecks } from './bounds/fit.ts';
import { chassisOf } from './chassis.ts';
import { clearanceChecks, effortChecks, tipChecks } from './checks.ts';
import { gaps } from './clearance.ts';
import { effortAlong } from './effort.ts';
import { DRAWN_STATION_M } from './limits.ts';
import type { Relief } from './relief.ts';
import { softChecks } from './soft.ts';
import { tipMargins } from './stability.ts';
import { march } from './traverse.ts';
import { upOf } from './up.ts';

const CLEARANCES: readonly CheckName[] = [
  'approach',
  'rampover',
  'departure',
  'belly',
  'front differential',
  'rear differential',
];
const TIPS: readonly CheckName[] = ['side tip', 'end tip'];
const EFFORTS: readonly CheckName[] = ['side hold', 'braking', 'traction'];

/** Whether none of the named checks fails on a ground, looked at in the coarse steps that a draw is worth. */
export function passes(
  values: VehicleValues,
  ground: Ground,
  relief: Relief,
  offsetM: number,
  aids: Aids,
  names: ReadonlySet<CheckName>,
): boolean {
  const fails = (checks: readonly Check[]) =>
    checks.some(({ name, margin }) => names.has(name) && !(margin >= 0));
  const wants = (group: readonly CheckName[]) => group.some((name) => names.has(name));
  const chassis = chassisOf(values, aids);
  if (fails(fitChecks(values, ground, offsetM)) || fails(softChecks(values, ground, chassis.tyre)))
    return false;
  if (!wants(CLEARANCES) && !wants(TIPS) && !wants(EFFORTS)) return true;

  const up = upOf(ground);
  if (up === null) return false;
  const record = march(chassis, relief, up, ground.lengthM, offsetM, DRAWN_STATION_M);
  if (record.standing.some((standing) => standing !== 0)) return false;
  if (wants(EFFORTS)) {
    const effort = effortAlong(record, chassis, drivelineOf(values, aids), ground, up);
    if (fails(effortChecks(effort, record, up))) return false;
  }
  if (wants(CLEARANCES)) {
    const points = underside(values, chassis.front.hubHeightM, chassis.rear.hubHeightM);
    if (fails(clearanceChecks(gaps(record, chassis, points, relief, offsetM)))) return false;
  }
  return !wants(TIPS) || !fails(tipChecks(tipMargins(record, chassis, up)));
}
