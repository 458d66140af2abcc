import type { Ground } from '../terrain/ground.ts';
import type { Aids } from '../vehicle/aids.ts';
import { drivelineOf } from '../vehicle/driveline.ts';
import type { VehicleValues } from '../vehicle/specs.ts';
import type { Assess, Assessment, Check, Findings } from './assess.ts';
import { fitChecks } from './bounds/fit.ts';
import type { Chassis } from './chassis.ts';
import { chassisOf } from './chassis.ts';
import { clearanceChecks, effortChecks, tipChecks } from './checks.ts';
import { gaps, undersideOn } from './clearance.ts';
import { effortAlong } from './effort.ts';
import { G_MPS2 } from './gravity.ts';
import type { Grip } from './grip.ts';
import { gripAlong } from './grip.ts';
import { LEANS_M, SPEED_CAP_MPS, STATION_M } from './limits.ts';
import { march, stationsAlong } from './march.ts';
import { entrySpeedMps, liftSpeedMps } from './momentum.ts';
import { reliefOf } from './relief.ts';
import type { Room } from './room.ts';
import { leaveRoom, takeRoom } from './room.ts';
import { softChecks } from './soft.ts';
import { tipMargins } from './stability.ts';
import type { Up } from './up.ts';
import { upOf } from './up.ts';
import { say } from '../words/words.ts';

/** One vehicle on one line with one set of aids. */
export function traverseAssess(
  values: VehicleValues,
  ground: Ground,
  offsetM: number,
  aids: Aids,
): Assessment {
  return assessTraverse(values, ground, offsetM, [aids])[0];
}

/** As `traverseAssess` for several sets of aids. */
export const assessTraverse: Assess = (values, ground, offsetM, aidSets) => {
  const traverse = new Traverse(values, ground, offsetM);
  const assessments = aidSets.map((aids) => traverse.assess(aids));
  traverse.close();
  return assessments;
};

type LeftOut = 'underside' | 'engine braking';

/**
 * One vehicle on one line, stations `everyM` apart, asked for one set of aids after the other: sets with the same tyres
 * and bars share the march.
 */
export class Traverse {
  readonly #values: VehicleValues;
  readonly #ground: Ground;
  readonly #offsetM: number;
  readonly #everyM: number;
  readonly #leavesOut: readonly LeftOut[];
  readonly #up: Up | null;
  readonly #before: Before;
  readonly #marched = new Map<Chassis, Marched>();

  /** What is left out is not told: what the underside touches, what the engine holds on the way down. */
  constructor(
    values: VehicleValues,
    ground: Ground,
    offsetM: number,
    { everyM = STATION_M, leavesOut = [] }: { everyM?: number; leavesOut?: readonly LeftOut[] } = {},
  ) {
    this.#values = values;
    this.#ground = ground;
    this.#offsetM = offsetM;
    this.#everyM = everyM;
    this.#leavesOut = leavesOut;
    this.#up = upOf(ground);
    this.#before = beforeOn(ground, values, offsetM, `${everyM} ${leavesOut.join()}`);
  }

  assess(aids: Aids): Assessment {
    if (this.#up === null) return { known: false, cause: planeFault(this.#ground) };
    const key = JSON.stringify(aids);
    const taken = this.#before.taken.get(key) ?? this.#take(aids, this.#up);
    this.#before.taken.set(key, taken);
    const fit = fitChecks(this.#values, this.#ground, this.#offsetM);
    return { ...taken, known: true, checks: [...fit, ...taken.checks] };
  }

  /** Lets go of what was marched; what is asked after that is marched anew. */
  close(): void {
    for (const { room } of this.#marched.values()) leaveRoom(room);
    this.#marched.clear();
  }

  /** The least margin of what does not depend on the drive, underbody gaps and tilt, in its tolerances. */
  easeStanding(aids: Aids): number {
    if (this.#up === null) return -Infinity;
    const checks = this.#standing(aids, this.#up);
    return Math.min(Infinity, ...checks.map(({ margin, tolerance }) => margin / tolerance));
  }

  #take(aids: Aids, up: Up): Taken {
    const chassis = chassisOf(this.#values, aids);
    const checks = this.#standing(aids, up);
    const { room, grip } = this.#march(aids, up);
    const { record } = room;
    const all = drivelineOf(this.#values, aids);
    const driveline = this.#leavesOut.includes('engine braking') ? { ...all, overrun: undefined } : all;
    const effort = effortAlong(record, chassis, driveline, this.#ground, up, grip, room.effort);
    const [hold, braking, traction] = effortChecks(effort, record, up);
    const speed = entrySpeedMps(effort, record, chassis.wheelbaseM);
    const within = speed <= Math.min(SPEED_CAP_MPS, liftSpeedMps(record, up));
    const soft = softChecks(this.#values, this.#ground, chassis.tyre);
    return {
      checks: [...soft, ...checks, hold, braking, traction],
      entrySpeedMps: within ? speed : Infinity,
      pullN: Math.max(0, -traction.margin * chassis.massKg * G_MPS2),
    };
  }

  #standing(aids: Aids, up: Up): readonly Check[] {
    const chassis = chassisOf(this.#values, aids);
    const { standing } = this.#before;
    const found = standing.get(chassis);
    if (found) return found;
    const { record } = this.#march(aids, up).room;
    const parts = this.#leavesOut.includes('underside') ? [] : undersideOn(chassis, this.#values);
    const checks = [
      ...clearanceChecks(gaps(record, chassis, parts, reliefOf(this.#ground), this.#offsetM)),
      ...tipChecks(tipMargins(record, chassis, up)),
    ];
    standing.set(chassis, checks);
    return checks;
  }

  #march(aids: Aids, up: Up): Marched {
    const chassis = chassisOf(this.#values, aids);
    const found = this.#marched.get(chassis);
    if (found) return found;
    const { lengthM } = this.#ground;
    const room = takeRoom(stationsAlong(lengthM, chassis, this.#everyM));
    march(chassis, reliefOf(this.#ground), up, lengthM, this.#offsetM, this.#everyM, room.record);
    const marched = new Marched(room, chassis, this.#ground, up);
    this.#marched.set(chassis, marched);
    return marched;
  }
}

/** A chassis taken along the line, with its record, and its grip once that is asked for. */
class Marched {
  #grip: Grip | null = null;

  constructor(
    readonly room: Room,
    readonly chassis: Chassis,
    readonly ground: Ground,
    readonly up: Up,
  ) {}

  get grip(): Grip {
    const { record, grip } = this.room;
    return (this.#grip ??= gripAlong(record, this.chassis, this.ground, this.up, grip));
  }
}

/** What is found out on the way, all but whether the vehicle fits in. */
type Taken = Omit<Findings, 'known'>;

/** What was found out before, by chassis and by set of aids. */
interface Before {
  /** What does not depend on the drive: underbody gaps and tip margins. */
  readonly standing: Map<Chassis, readonly Check[]>;
  readonly taken: Map<string, Taken>;
}

const known = new WeakMap<Ground, WeakMap<VehicleValues, Map<string, Before>>>();

/** Where the ground is alike on every line of travel, what was found out at one offset holds at another. */
function beforeOn(ground: Ground, values: VehicleValues, offsetM: number, how: string): Before {
  const nothing: Before = { standing: new Map(), taken: new Map() };
  const relief = reliefOf(ground);
  const reach = Math.max(values.widthM, values.frontTrackWidthM, values.rearTrackWidthM) + LEANS_M;
  const first = relief.lineNear(offsetM - reach);
  const last = relief.lineNear(offsetM + reach);
  if (!relief.isAlike(first, last)) return nothing;
  const ofGround = known.get(ground) ?? new WeakMap<VehicleValues, Map<string, Before>>();
  known.set(ground, ofGround);
  const ofVehicle = ofGround.get(values) ?? new Map<string, Before>();
  ofGround.set(values, ofVehicle);
  const key = `${relief.line(first).id} ${how}`;
  const before = ofVehicle.get(key) ?? nothing;
  ofVehicle.set(key, before);
  return before;
}

function planeFault(ground: Ground): string {
  if (Number.isNaN(ground.slopeRad)) return say.causes.slopeNotKnown;
  if (Number.isNaN(ground.camberRad)) return say.causes.camberNotKnown;
  return say.causes.tooSteep;
}
