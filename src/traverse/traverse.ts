import type { Ground } from '../terrain/ground.ts';
import type { Aids } from '../vehicle/aids.ts';
import type { Driveline } from '../vehicle/driveline.ts';
import { drivelineOf, overrunOf } from '../vehicle/driveline.ts';
import type { VehicleValues } from '../vehicle/specs.ts';
import type { Assess, Assessment, Check, Found } from './assess.ts';
import { worseOf } from './assess.ts';
import { fitChecks } from './bounds/fit.ts';
import type { Chassis } from './chassis.ts';
import { chassisOf } from './chassis.ts';
import { clearanceChecks, effortChecks, tipChecks } from './checks.ts';
import type { Gap } from './clearance.ts';
import { gaps, undersideOn } from './clearance.ts';
import { effortAlong } from './effort.ts';
import { G_MPS2 } from './gravity.ts';
import type { Grip } from './grip.ts';
import { gripAlong } from './grip.ts';
import { LEANS_M, SPEED_CAP_MPS, STATION_M } from './limits.ts';
import { marchInPlanes, stationsAlong } from './march.ts';
import { entrySpeedMps, liftSpeedMps } from './momentum.ts';
import type { TraverseRecord } from './record.ts';
import type { Relief } from './relief.ts';
import { reliefOf } from './relief.ts';
import type { Room } from './room.ts';
import { leaveRoom, takeRoom } from './room.ts';
import { softChecks } from './soft.ts';
import type { TipMargin } from './stability.ts';
import { tipMargins } from './stability.ts';
import type { Up } from './up.ts';
import { upOf } from './up.ts';
import { say } from '../words/words.ts';

/** One vehicle on one line of one ground with one set of aids. */
export function traverseAssess(
  values: VehicleValues,
  ground: Ground,
  offsetM: number,
  aids: Aids,
): Assessment {
  return assessTraverse(values, [ground], offsetM, [aids])[0];
}

/** The same on grounds that may each be the true one, for several sets of aids. */
export const assessTraverse: Assess = (values, grounds, offsetM, aidSets) => {
  const traverse = new Traverse(values, grounds, offsetM);
  const assessments = aidSets.map((aids) => traverse.assess(aids));
  traverse.close();
  return assessments;
};

type LeftOut = 'underside' | 'engine braking';

/**
 * One vehicle on one line, asked for one set of aids after the other: sets with the same tyres
 * and bars share the march. Of several grounds that differ in their plane the least of each check is told: the wheels roll
 * over all of them alike, and of the second no more is looked for than what is worse than on the first.
 */
export class Traverse {
  readonly #values: VehicleValues;
  readonly #grounds: readonly Ground[];
  readonly #relief: Relief;
  readonly #offsetM: number;
  readonly #leavesOut: readonly LeftOut[];
  /** One a ground; null where one has no plane that can be. */
  readonly #ups: readonly Up[] | null;
  readonly #before: Before;
  readonly #marched = new Map<Chassis, readonly Marched[]>();
  #fit: readonly Check[] | null = null;

  /** What is left out is not told: what the underside touches, what the engine holds on the way down. */
  constructor(
    values: VehicleValues,
    grounds: readonly Ground[],
    offsetM: number,
    leavesOut: readonly LeftOut[] = [],
  ) {
    this.#values = values;
    this.#grounds = grounds;
    this.#relief = reliefOf(grounds[0]);
    this.#offsetM = offsetM;
    this.#leavesOut = leavesOut;
    const ups = grounds.map(upOf);
    this.#ups = ups.every((up) => up !== null) ? ups : null;
    this.#before = beforeOn(grounds, values, offsetM, leavesOut.join());
  }

  assess(aids: Aids): Assessment {
    if (this.#ups === null) return { known: false, cause: planeFault(this.#grounds) };
    const { soft, checks, entrySpeedMps, pullN } = this.#driven(aids, this.#ups);
    this.#fit ??= fitChecks(this.#values, this.#grounds[0], this.#offsetM);
    const all = this.#fit.concat(soft, this.#standing(aids, this.#ups), checks);
    return { known: true, checks: all, entrySpeedMps, pullN };
  }

  /** Lets go of what was marched; what is asked after that is marched anew. */
  close(): void {
    for (const planes of this.#marched.values()) for (const { room } of planes) leaveRoom(room);
    this.#marched.clear();
  }

  /** What does not depend on the drive, underbody gaps and tilt; null where there is no plane. */
  standing(aids: Aids): readonly Check[] | null {
    return this.#ups && this.#standing(aids, this.#ups);
  }

  /** What does, and soft ground; null where there is no plane. */
  driven(aids: Aids): readonly Check[] | null {
    if (this.#ups === null) return null;
    const { soft, checks } = this.#driven(aids, this.#ups);
    return soft.concat(checks);
  }

  #driven(aids: Aids, ups: readonly Up[]): Driven {
    const key = JSON.stringify(aids);
    const known = this.#before.driven.get(key);
    if (known) return known;
    const driveline = drivelineOf(this.#values, aids);
    const overrun = this.#leavesOut.includes('engine braking') ? null : overrunOf(this.#values, aids);
    const found = this.#march(aids, ups)
      .map((marched) => marched.effort(driveline, overrun))
      .reduce(worseOf);
    const { tyre } = chassisOf(this.#values, aids);
    const driven = { ...found, soft: softChecks(this.#values, this.#grounds[0], tyre) };
    this.#before.driven.set(key, driven);
    return driven;
  }

  #standing(aids: Aids, ups: readonly Up[]): readonly Check[] {
    const chassis = chassisOf(this.#values, aids);
    const { standing } = this.#before;
    const known = standing.get(chassis);
    if (known) return known;
    const parts = this.#leavesOut.includes('underside') ? [] : undersideOn(chassis, this.#values);
    let least: Gap[] | undefined;
    const tips: TipMargin[] = [];
    for (const { record, up } of this.#march(aids, ups)) {
      least = gaps(record, chassis, parts, this.#relief, this.#offsetM, least);
      tips.push(...tipMargins(record, chassis, up, tips));
    }
    const checks = [...clearanceChecks(least ?? []), ...tipChecks(tips)];
    standing.set(chassis, checks);
    return checks;
  }

  #march(aids: Aids, ups: readonly Up[]): readonly Marched[] {
    const chassis = chassisOf(this.#values, aids);
    const known = this.#marched.get(chassis);
    if (known) return known;
    const { lengthM } = this.#grounds[0];
    const stations = stationsAlong(lengthM, chassis);
    const rooms = ups.map(() => takeRoom(stations));
    const records = marchInPlanes(
      chassis,
      this.#relief,
      ups,
      lengthM,
      this.#offsetM,
      STATION_M,
      rooms.map(({ record }) => record),
    );
    const planes = rooms.map((room, k) => new Marched(room, records[k], chassis, this.#grounds[k], ups[k]));
    this.#marched.set(chassis, planes);
    return planes;
  }
}

/** A chassis taken along the line in one plane, with its record, and its grip once that is asked for. */
class Marched {
  #grip: Grip | null = null;

  constructor(
    readonly room: Room,
    /** The room's own, or with the ground of the first plane's. */
    readonly record: TraverseRecord,
    readonly chassis: Chassis,
    readonly ground: Ground,
    readonly up: Up,
  ) {}

  /** Side hold, braking and traction with what is driven, and what the engine holds back unless nobody asks. */
  effort(driveline: Driveline, overrun: Driveline | null): Found {
    const { record } = this;
    const { grip, effort: into } = this.room;
    this.#grip ??= gripAlong(record, this.chassis, this.ground, this.up, grip);
    const effort = effortAlong(
      record,
      this.chassis,
      driveline,
      this.ground,
      this.up,
      overrun,
      this.#grip,
      into,
    );
    const checks = effortChecks(effort, record, this.up);
    const [, , traction] = checks;
    const speed = entrySpeedMps(effort, record, this.chassis.wheelbaseM);
    const within = speed === 0 || (speed <= SPEED_CAP_MPS && speed <= liftSpeedMps(record, this.up));
    return {
      checks,
      entrySpeedMps: within ? speed : Infinity,
      pullN: Math.max(0, -traction.margin * this.chassis.massKg * G_MPS2),
    };
  }
}

/** What depends on the drive, and whether soft ground bears, which asks no march. */
interface Driven extends Found {
  readonly soft: readonly Check[];
}

/** What was found out before, by chassis and by set of aids. */
interface Before {
  /** What does not depend on the drive: underbody gaps and tip margins. */
  readonly standing: Map<Chassis, readonly Check[]>;
  readonly driven: Map<string, Driven>;
}

const known = new WeakMap<Ground, WeakMap<VehicleValues, Map<string, Before>>>();

/** Where the ground is alike on every line of travel, what was found out at one offset holds at another. */
function beforeOn(grounds: readonly Ground[], values: VehicleValues, offsetM: number, how: string): Before {
  const nothing: Before = { standing: new Map(), driven: new Map() };
  const [ground] = grounds;
  const relief = reliefOf(ground);
  const reach = Math.max(values.widthM, values.frontTrackWidthM, values.rearTrackWidthM) + LEANS_M;
  const first = relief.lineNear(offsetM - reach);
  const last = relief.lineNear(offsetM + reach);
  if (!relief.isAlike(first, last)) return nothing;
  const ofGround = known.get(ground) ?? new WeakMap<VehicleValues, Map<string, Before>>();
  known.set(ground, ofGround);
  const ofVehicle = ofGround.get(values) ?? new Map<string, Before>();
  ofGround.set(values, ofVehicle);
  const key = `${grounds.length} ${relief.line(first).id} ${how}`;
  const before = ofVehicle.get(key) ?? nothing;
  ofVehicle.set(key, before);
  return before;
}

function planeFault(grounds: readonly Ground[]): string {
  if (grounds.some(({ slopeRad }) => Number.isNaN(slopeRad))) return say.causes.slopeNotKnown;
  if (grounds.some(({ camberRad }) => Number.isNaN(camberRad))) return say.causes.camberNotKnown;
  return say.causes.tooSteep;
}
