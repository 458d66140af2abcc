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
import type { Grip } from './grip.ts';
import { gripAlong } from './grip.ts';
import type { Stations, TraverseRecord } from './record.ts';
import { STATION_BYTES, emptyRecord } from './record.ts';
import type { Relief } from './relief.ts';
import { reliefOf } from './relief.ts';
import type { Room } from './room.ts';
import { leaveRoom, takeRoom } from './room.ts';
import { Shelf } from './shelf.ts';
import { tipMargins } from './stability.ts';
import { march, stationsAlong } from './march.ts';
import type { Up } from './up.ts';
import { upOf } from './up.ts';

/** Stations from one look at the underside to the next, as the traverse looks; those between repeat the one before. */
const LOOK_EVERY = 2;

/** Stretch over which one least tip margin is told, metres; finding it takes a solver run for each edge. */
const TIP_EVERY_M = 1;

/**
 * One vehicle along one line with everything a drawing asks of a station: where wheels and body are, and how far each
 * limit is. Parallel arrays over the stations of `record`; only arrays and plain records, so that it crosses to a page, and
 * all arrays in the buffer of `record`, so that it need not be copied for that.
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

/** Bytes that gaps and tip margin of one station take, with what lies between their arrays; a law holds it to one buffer. */
const UNDER_BYTES = 24 * PARTS.length + 32;

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
  const taken = new Map<Chassis, Taken>();
  const takenBy = (own: Chassis, into?: TraverseRecord): Taken => {
    const found = taken.get(own) ?? take(own, relief, ground, up, offsetM, STATION_M, into);
    taken.set(own, found);
    return found;
  };
  const chassis = chassisOf(values, aidSets[looked]);
  const length = stationsAlong(ground.lengthM, chassis);
  const shelf = new Shelf((STATION_BYTES + 8 * aidSets.length + UNDER_BYTES) * length);
  const { record } = takenBy(chassis, emptyRecord(length, shelf));
  const efforts = aidSets.map((aids, set) => {
    const own = chassisOf(values, aids);
    const { record: on, grip, room } = takenBy(own);
    const [line, overrun] = [drivelineOf(values, aids), overrunOf(values, aids)];
    const effort = effortAlong(on, own, line, ground, up, overrun, grip, room.effort);
    const traction = shelf.numbers(on.length);
    for (let n = 0; n < on.length; n++)
      traction[n] = on.standing[n] === 0 ? effort.push[n] - effort.ask[n] : NaN;
    return { traction, checks: set === looked ? effortChecks(effort, on, up) : [] };
  });
  for (const { room } of taken.values()) leaveRoom(room);

  const points = undersideOn(chassis, values);
  const under = undersideAlong(record, shelf, (over) =>
    gaps(record, chassis, points, relief, offsetM, undefined, over),
  );
  return {
    chassis,
    record,
    traction: efforts.map(({ traction }) => traction),
    ...under,
    tipRad: tipAlong(record, chassis, up, shelf.numbers(length)),
    limits: [
      ...clearanceChecks(gaps(record, chassis, points, relief, offsetM)),
      ...tipChecks(tipMargins(record, chassis, up)),
      ...efforts[looked].checks,
    ],
  };
}

/** One chassis taken along a line. The grip lies in the room, and so does the record unless it was given. */
interface Taken {
  readonly record: TraverseRecord;
  readonly grip: Grip;
  readonly room: Room;
}

function take(
  chassis: Chassis,
  relief: Relief,
  ground: Ground,
  up: Up,
  offsetM: number,
  everyM: number,
  into?: TraverseRecord,
): Taken {
  const room = takeRoom(stationsAlong(ground.lengthM, chassis, everyM));
  const record = march(chassis, relief, up, ground.lengthM, offsetM, everyM, into ?? room.record);
  return { record, grip: gripAlong(record, chassis, ground, up, room.grip), room };
}

function undersideAlong(record: TraverseRecord, shelf: Shelf, look: (over: Stations) => Gap[]) {
  const { length } = record;
  const parts = PARTS.length;
  const unknown = (count: number) => shelf.numbers(count).fill(NaN);
  const gapM = unknown(parts * length);
  const gapXM = unknown(parts * length);
  const gapYM = unknown(parts * length);
  const leastGapM = unknown(length);
  const leastPart = shelf.bytes(length);
  for (let n = 0; n < length; n += LOOK_EVERY) {
    const found = look({ from: n, to: n + 1 });
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

function tipAlong(record: TraverseRecord, chassis: Chassis, up: Up, tipRad: Float64Array): Float64Array {
  tipRad.fill(NaN);
  const step = Math.round(TIP_EVERY_M / STATION_M);
  for (let n = 0; n < record.length; n += step) {
    const to = Math.min(record.length, n + step);
    const least = tipMargins(record, chassis, up, [], { from: n, to })
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
  const { record, grip: held, room } = take(chassis, relief, ground, up, offsetM, everyM);
  const line = drivelineOf(values, aids);
  const effort = effortAlong(record, chassis, line, ground, up, null, held, room.effort);
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
    for (const { gapM } of gaps(record, chassis, points, relief, offsetM, undefined, { from: n, to: n + 1 }))
      ease[n] = Math.min(ease[n], gapM / TOLERANCE.gapM);
  }
  for (const { marginRad, stationM } of tipMargins(record, chassis, up)) {
    if (Number.isNaN(marginRad)) continue;
    const tip = (marginRad - TIP_RESERVE_RAD) / TOLERANCE.tipRad;
    for (let n = 0; n < record.length; n++)
      if (Math.abs(record.stationM[n] - stationM) <= TIP_ABOUT_M) ease[n] = Math.min(ease[n], tip);
  }
  const stationM = record.stationM.slice();
  leaveRoom(room);
  return { stationM, ease };
}
