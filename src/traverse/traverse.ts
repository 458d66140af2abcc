import type { Ground } from '../terrain/ground.ts';
import type { Aids } from '../vehicle/aids.ts';
import { drivelineOf } from '../vehicle/driveline.ts';
import type { VehicleValues } from '../vehicle/specs.ts';
import type { Assess, Assessment } from './assess.ts';
import { fitChecks } from './bounds/fit.ts';
import { chassisOf } from './chassis.ts';
import { clearanceChecks, effortChecks, tipChecks } from './checks.ts';
import { gaps, undersideOn } from './clearance.ts';
import { effortAlong } from './effort.ts';
import { G_MPS2 } from './gravity.ts';
import { SPEED_CAP_MPS } from './limits.ts';
import { march } from './march.ts';
import { entrySpeedMps, liftSpeedMps } from './momentum.ts';
import { reliefOf } from './relief.ts';
import { softChecks } from './soft.ts';
import { tipMargins } from './stability.ts';
import type { Up } from './up.ts';
import { upOf } from './up.ts';

/** One vehicle on one line with one set of aids. */
export function traverseAssess(
  values: VehicleValues,
  ground: Ground,
  offsetM: number,
  aids: Aids,
): Assessment {
  return assessTraverse(values, ground, offsetM, [aids])[0];
}

/** As `traverseAssess` for several sets of aids; sets with the same tyres and bars share the march. */
export const assessTraverse: Assess = (values, ground, offsetM, aidSets) => {
  const up = upOf(ground);
  if (up === null) return aidSets.map(() => ({ known: false, cause: planeFault(ground) }));
  const fit = fitChecks(values, ground, offsetM);
  const stands = new Map<string, ReturnType<typeof standing>>();
  return aidSets.map((aids) => {
    const key = `${aids.airedDown} ${aids.barsDisconnected}`;
    const found = stands.get(key) ?? standing(values, ground, offsetM, aids, up);
    stands.set(key, found);
    const { chassis, record, checks } = found;
    const effort = effortAlong(record, chassis, drivelineOf(values, aids), ground, up);
    const [hold, braking, traction] = effortChecks(effort, record, up);
    const speed = entrySpeedMps(effort, record, chassis.wheelbaseM);
    const within = speed <= Math.min(SPEED_CAP_MPS, liftSpeedMps(record, up));
    return {
      known: true,
      checks: [...fit, ...softChecks(values, ground, chassis.tyre), ...checks, hold, braking, traction],
      entrySpeedMps: within ? speed : Infinity,
      pullN: Math.max(0, -traction.margin * chassis.massKg * G_MPS2),
    };
  });
};

/** What does not depend on the drive: the march, underbody gaps and tip margins. */
function standing(values: VehicleValues, ground: Ground, offsetM: number, aids: Aids, up: Up) {
  const chassis = chassisOf(values, aids);
  const relief = reliefOf(ground);
  const record = march(chassis, relief, up, ground.lengthM, offsetM);
  const points = undersideOn(chassis, values);
  const checks = [
    ...clearanceChecks(gaps(record, chassis, points, relief, offsetM)),
    ...tipChecks(tipMargins(record, chassis, up)),
  ];
  return { chassis, record, checks };
}

function planeFault(ground: Ground): string {
  if (Number.isNaN(ground.slopeRad))
    return 'slope not known: lay an inclinometer on a straight bar along the line';
  if (Number.isNaN(ground.camberRad))
    return 'camber not known: lay an inclinometer on a straight bar across the line';
  return 'slope and camber together are steeper than any ground: measure both again';
}
