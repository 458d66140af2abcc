import type { Ground } from '../terrain/ground.ts';
import type { Aids } from '../vehicle/aids.ts';
import { underside } from '../vehicle/body.ts';
import { drivelineOf } from '../vehicle/driveline.ts';
import type { VehicleValues } from '../vehicle/specs.ts';
import type { Assess, Assessment } from './assess.ts';
import { fitChecks } from './bounds/fit.ts';
import type { Chassis } from './chassis.ts';
import { chassisOf } from './chassis.ts';
import { clearanceChecks, effortChecks, tipChecks } from './checks.ts';
import { gaps } from './clearance.ts';
import { effortAlong } from './effort.ts';
import { Equilibrium } from './equilibrium.ts';
import { G_MPS2 } from './gravity.ts';
import { SLIDE_M, SPEED_CAP_MPS, STATION_M } from './limits.ts';
import { entrySpeedMps, liftSpeedMps } from './momentum.ts';
import type { TraverseRecord } from './record.ts';
import { emptyRecord } from './record.ts';
import type { Relief } from './relief.ts';
import { reliefOf } from './relief.ts';
import { softChecks } from './soft.ts';
import { tipMargins } from './stability.ts';
import type { Up } from './up.ts';
import { upOf } from './up.ts';
import { wheelPath } from './wheel.ts';

/** Takes a chassis along a line `offsetM` left of the main one, from its front wheels at the start to its rear at the end. */
export function march(
  chassis: Chassis,
  relief: Relief,
  up: Up,
  lengthM: number,
  offsetM: number,
  stationM = STATION_M,
): TraverseRecord {
  const reach = (lengthM + chassis.wheelbaseM) / 2;
  const count = Math.ceil((2 * reach) / stationM) + 1;
  return marchFrom(chassis, relief, up, -reach, count, offsetM, stationM);
}

/** The same over `count` stations from the first one at `fromM`; without `slides` nothing is told of sliding sideways. */
export function marchFrom(
  chassis: Chassis,
  relief: Relief,
  up: Up,
  fromM: number,
  count: number,
  offsetM: number,
  stationM: number,
  slides = true,
): TraverseRecord {
  const half = chassis.wheelbaseM / 2;
  const record = emptyRecord(count);
  for (let n = 0; n < count; n++) record.stationM[n] = fromM + n * stationM;
  for (let i = 0; i < 4; i++) {
    const axle = i < 2 ? chassis.front : chassis.rear;
    const x = fromM + (i < 2 ? half : -half);
    const y = offsetM + ((i % 2 === 0 ? 1 : -1) * axle.trackWidthM) / 2;
    const { radiusM, sectionM } = chassis.tyre;
    const { bottomM, climbTan } = wheelPath(relief, x, stationM, count, y, radiusM, sectionM);
    const aside = (asideM: number) =>
      slides ? wheelPath(relief, x, stationM, count, y + asideM, radiusM, sectionM).bottomM : bottomM;
    const left = aside(SLIDE_M);
    const right = aside(-SLIDE_M);
    for (let n = 0; n < count; n++) {
      record.bottomM[4 * n + i] = bottomM[n];
      record.climbTan[4 * n + i] = climbTan[n];
      record.fallLeftTan[4 * n + i] = (bottomM[n] - left[n]) / SLIDE_M;
      record.fallRightTan[4 * n + i] = (bottomM[n] - right[n]) / SLIDE_M;
    }
  }
  const body = new Equilibrium(chassis, up);
  for (let n = 0; n < count; n++) {
    const here = 4 * n;
    record.standing[n] = sameGround(record, n)
      ? record.standing[n - 1]
      : body.solve(record.bottomM.subarray(here, here + 4), record.climbTan.subarray(here, here + 4));
    for (let i = 0; i < 4; i++) {
      record.loadN[here + i] = body.loadN[i];
      record.hubM[here + i] = body.hubM[i];
      record.travelM[here + i] = body.travelM[i];
    }
    record.heaveM[n] = body.heaveM;
    record.pitch[n] = body.pitch;
    record.roll[n] = body.roll;
  }
  return record;
}

/** Whether the wheels stand as at the station before, so that its answer holds. */
function sameGround({ bottomM, climbTan, standing }: TraverseRecord, n: number): boolean {
  if (n === 0 || standing[n - 1] !== 0) return false;
  for (let i = 4 * n; i < 4 * n + 4; i++)
    if (bottomM[i] !== bottomM[i - 4] || climbTan[i] !== climbTan[i - 4]) return false;
  return true;
}

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
  const points = underside(values, chassis.front.hubHeightM, chassis.rear.hubHeightM);
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
