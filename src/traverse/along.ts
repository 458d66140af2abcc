import type { Ground } from '../terrain/ground.ts';
import type { Aids } from '../vehicle/aids.ts';
import { PARTS } from '../vehicle/body.ts';
import { drivelineOf, overrunOf } from '../vehicle/driveline.ts';
import type { VehicleValues } from '../vehicle/specs.ts';
import type { Check } from './assess.ts';
import type { Chassis } from './chassis.ts';
import { chassisOf } from './chassis.ts';
import { clearanceChecks, effortChecks, tipChecks } from './checks.ts';
import type { Gap } from './clearance.ts';
import { gaps, undersideOn } from './clearance.ts';
import { effortAlong } from './effort.ts';
import { STATION_M, TIP_RESERVE_RAD, TOLERANCE } from './limits.ts';
import type { TraverseRecord } from './record.ts';
import { reliefOf } from './relief.ts';
import { tipMargins } from './stability.ts';
import { march } from './march.ts';
import type { Up } from './up.ts';
import { upOf } from './up.ts';

/** Stations from one look at the underside to the next, as the traverse looks; those between repeat the one before. */
const LOOK_EVERY = 2;

/** Stretch over which one least tip margin is told, metres; finding it takes a solver run for each edge. */
const TIP_EVERY_M = 1;

/**
 * One vehicle along one line with everything a drawing asks of a station: where wheels and body are, and how far each
 * limit is. Parallel arrays over the stations of `record`; only arrays and plain records, so that it crosses to a page.
 */
export interface Along {
  readonly chassis: Chassis;
  /** The traverse with the tyres and bars of the set of aids that is looked at. */
  readonly record: TraverseRecord;
  /** Traction margin over weight for each set of aids; NaN where the vehicle does not stand. */
  readonly traction: readonly Float64Array[];
  /** Least gap under each part (in the order of `PARTS`, `PARTS.length` to a station), metres; NaN where unknown. */
  readonly gapM: Float64Array;
  /** Where on the ground that gap is: along from the pin, and left of the vehicle's middle. */
  readonly gapXM: Float64Array;
  readonly gapYM: Float64Array;
  /** Least gap of all parts, and which part that is. */
  readonly leastGapM: Float64Array;
  readonly leastPart: Uint8Array;
  /** Tilt left beyond the reserve over the nearest edge, radians, the least of its metre; NaN where unknown. */
  readonly tipRad: Float64Array;
  /** What limits with the aids that are looked at, in a driver's words, each at its worst station. */
  readonly limits: readonly Check[];
}

/** A stretch of a record as a record: the same arrays, so that what takes a record can be asked about a few stations. */
function part(record: TraverseRecord, from: number, to: number): TraverseRecord {
  const four = (values: Float64Array) => values.subarray(4 * from, 4 * to);
  return {
    length: to - from,
    stationM: record.stationM.subarray(from, to),
    standing: record.standing.subarray(from, to),
    loadN: four(record.loadN),
    hubM: four(record.hubM),
    travelM: four(record.travelM),
    bottomM: four(record.bottomM),
    climbTan: four(record.climbTan),
    bearingM: four(record.bearingM),
    fallLeftTan: four(record.fallLeftTan),
    fallRightTan: four(record.fallRightTan),
    repeats: record.repeats.subarray(from, to),
    heaveM: record.heaveM.subarray(from, to),
    pitch: record.pitch.subarray(from, to),
    roll: record.roll.subarray(from, to),
  };
}

/**
 * Takes a vehicle along a line `offsetM` left of the main one in the direction of travel and keeps every station.
 * `looked` is the index of the set of aids whose pose, gaps and tip margins are kept. Null where slope and camber are not
 * known or contradict each other.
 */
export function alongLine(
  values: VehicleValues,
  ground: Ground,
  offsetM: number,
  aidSets: readonly Aids[],
  looked: number,
): Along | null {
  const up = upOf(ground);
  if (up === null) return null;
  const relief = reliefOf(ground);
  const records = new Map<Chassis, TraverseRecord>();
  const recordOf = (chassis: Chassis) => {
    const record = records.get(chassis) ?? march(chassis, relief, up, ground.lengthM, offsetM);
    records.set(chassis, record);
    return record;
  };
  const chassis = chassisOf(values, aidSets[looked]);
  const record = recordOf(chassis);
  const efforts = aidSets.map((aids) => {
    const own = chassisOf(values, aids);
    return effortAlong(recordOf(own), own, drivelineOf(values, aids), ground, up, overrunOf(values, aids));
  });
  const traction = efforts.map((effort, set) => {
    const { standing } = recordOf(chassisOf(values, aidSets[set]));
    return effort.push.map((push, n) => (standing[n] === 0 ? push - effort.ask[n] : NaN));
  });

  const points = undersideOn(chassis, values);
  const under = undersideAlong(record, (piece) => gaps(piece, chassis, points, relief, offsetM));
  return {
    chassis,
    record,
    traction,
    ...under,
    tipRad: tipAlong(record, chassis, up),
    limits: [
      ...clearanceChecks(gaps(record, chassis, points, relief, offsetM)),
      ...tipChecks(tipMargins(record, chassis, up)),
      ...effortChecks(efforts[looked], record, up),
    ],
  };
}

function undersideAlong(record: TraverseRecord, look: (piece: TraverseRecord) => Gap[]) {
  const { length } = record;
  const parts = PARTS.length;
  const unknown = (count: number) => new Float64Array(count).fill(NaN);
  const gapM = unknown(parts * length);
  const gapXM = unknown(parts * length);
  const gapYM = unknown(parts * length);
  const leastGapM = unknown(length);
  const leastPart = new Uint8Array(length);
  for (let n = 0; n < length; n += LOOK_EVERY) {
    const found = look(part(record, n, n + 1));
    for (let to = n; to < Math.min(length, n + LOOK_EVERY); to++)
      found.forEach((gap) => {
        if (gap.gapM === Infinity) return;
        const p = PARTS.indexOf(gap.part);
        gapM[parts * to + p] = gap.gapM;
        gapXM[parts * to + p] = gap.stationM;
        gapYM[parts * to + p] = gap.yM;
        if (gap.gapM >= leastGapM[to]) return;
        leastGapM[to] = gap.gapM;
        leastPart[to] = p;
      });
  }
  return { gapM, gapXM, gapYM, leastGapM, leastPart };
}

function tipAlong(record: TraverseRecord, chassis: Chassis, up: Up): Float64Array {
  const tipRad = new Float64Array(record.length).fill(NaN);
  const step = Math.round(TIP_EVERY_M / STATION_M);
  for (let n = 0; n < record.length; n += step) {
    const to = Math.min(record.length, n + step);
    const least = tipMargins(part(record, n, to), chassis, up)
      .map(({ marginRad }) => marginRad)
      .filter((marginRad) => !Number.isNaN(marginRad));
    if (least.length > 0) tipRad.fill(Math.min(...least) - TIP_RESERVE_RAD, n, to);
  }
  return tipRad;
}

/** The station of a record nearest to a place along the line; the ends beyond it. */
export function nearestStation(record: TraverseRecord, stationM: number): number {
  const at = Math.round((stationM - record.stationM[0]) / (record.stationM[1] - record.stationM[0]));
  return Math.max(0, Math.min(record.length - 1, at));
}

/** Margin nearest to its limit at each station, in its own tolerances so that unlike checks compare; negative fails. */
export interface WorstAlong {
  readonly stationM: Float64Array;
  readonly ease: Float64Array;
}

/** What is said where the vehicle does not stand at all. */
const FALLS = -10;

/** Half of the stretch along which the least tip margin is told, metres. */
const TIP_ABOUT_M = 0.5;

/** Traction, side hold, braking, gaps and tip margins of one line with one set of aids, stations `everyM` apart. */
export function worstAlong(
  values: VehicleValues,
  ground: Ground,
  offsetM: number,
  aids: Aids,
  everyM: number,
): WorstAlong | null {
  const up = upOf(ground);
  if (up === null) return null;
  const relief = reliefOf(ground);
  const chassis = chassisOf(values, aids);
  const record = march(chassis, relief, up, ground.lengthM, offsetM, everyM);
  const effort = effortAlong(record, chassis, drivelineOf(values, aids), ground, up);
  const points = undersideOn(chassis, values);
  const ease = new Float64Array(record.length).fill(FALLS);
  for (let n = 0; n < record.length; n++) {
    if (record.standing[n] !== 0) continue;
    const grip = Math.min(
      effort.push[n] - effort.ask[n],
      effort.hold[n],
      effort.brake[n] - (effort.slidesBack[n] ? up.x : -up.x),
    );
    ease[n] = grip / TOLERANCE.grip;
    for (const { gapM } of gaps(part(record, n, n + 1), chassis, points, relief, offsetM))
      ease[n] = Math.min(ease[n], gapM / TOLERANCE.gapM);
  }
  for (const { marginRad, stationM } of tipMargins(record, chassis, up)) {
    if (Number.isNaN(marginRad)) continue;
    const tip = (marginRad - TIP_RESERVE_RAD) / TOLERANCE.tipRad;
    for (let n = 0; n < record.length; n++)
      if (Math.abs(record.stationM[n] - stationM) <= TIP_ABOUT_M) ease[n] = Math.min(ease[n], tip);
  }
  return { stationM: record.stationM, ease };
}
