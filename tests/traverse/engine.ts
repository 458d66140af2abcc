import RAPIER from '@dimforge/rapier3d-compat';
import type { Feature } from '../../src/terrain/feature.ts';
import type { Chassis } from '../../src/traverse/chassis.ts';
import { G_MPS2 } from '../../src/traverse/gravity.ts';
import type { Up } from '../../src/traverse/up.ts';
import type { Pose } from './rig.ts';
import { placed, Rig } from './rig.ts';
import { toRiseM } from './tread.ts';
import type { Vector } from './vector.ts';
import { minus, times } from './vector.ts';
import { Weighbridge } from './weighbridge.ts';

/** How a vehicle came to rest in the engine. */
export interface Settled {
  readonly loadN: number[];
  /** Tangents of pitch and roll of the body. */
  readonly pitch: number;
  readonly roll: number;
  readonly tipped: boolean;
  /** Where the centre of each ring came to stand over its ground. */
  readonly wheelM: readonly Vector[];
}

export const STEP_S = 1 / 200;

/** How clear of the ground the lowest wheel starts, metres. */
const CLEAR_M = 0.005;

/** Sideways component of up from which the world is tilted in slowly, and when. */
const STEEP = 0.4;
const TILTING = { fromS: 1, forS: 3 };

/** At rest when from one look to the next no load has changed by more than a share of its static load. */
const REST = { fromS: 1, everyS: 0.2, share: 0.0005, atMostS: 4, tiltedAtMostS: 8 };

/** Cosine of the turn from which a body has gone over. */
const TIPPED = 0.7;

export async function startEngine(): Promise<void> {
  await RAPIER.init();
}

function worldOf(stepS: number): RAPIER.World {
  const world = new RAPIER.World({ x: 0, y: 0, z: 0 });
  world.timestep = stepS;
  world.numSolverIterations = 8;
  // Stiff contacts: as the engine comes they give by centimetres under a light ring with a heavy load.
  world.integrationParameters.contact_natural_frequency = 90;
  world.integrationParameters.normalizedAllowedLinearError = 1e-4;
  return world;
}

/** Where the wheels of a level vehicle stand. */
export function levelPlaces(chassis: Chassis, stationM: number) {
  return [chassis.front, chassis.rear].flatMap(({ trackWidthM }, i) =>
    [trackWidthM / 2, -trackWidthM / 2].map((y) => ({
      x: stationM + (i === 0 ? 1 : -1) * (chassis.wheelbaseM / 2),
      y,
    })),
  );
}

/** Parallel to the plane through the ground under the wheels, so high that every wheel is just clear. */
function clearPose(chassis: Chassis, features: readonly Feature[], stationM: number): Pose {
  const { front, rear, wheelbaseM, tyre } = chassis;
  const places = levelPlaces(chassis, stationM);
  const level = { x: 0, y: 0, z: 0, w: 1 };
  const [a, b, c, d] = places.map(({ x, y }) => toRiseM(features, { x, y, z: 0 }, level, tyre.radiusM));
  const pitchTan = (c + d - a - b) / (2 * wheelbaseM);
  const rollTan = (a + c - b - d) / (front.trackWidthM + rear.trackWidthM);
  const p = Math.asin(Math.max(-0.7, Math.min(0.7, pitchTan))) / 2;
  const r = Math.asin(Math.max(-0.7, Math.min(0.7, rollTan))) / 2;
  const rotation = {
    x: Math.sin(r) * Math.cos(p),
    y: Math.cos(r) * Math.sin(p),
    z: -Math.sin(r) * Math.sin(p),
    w: Math.cos(r) * Math.cos(p),
  };
  let z = tyre.radiusM + Math.max(a, b, c, d);
  const pose = (): Pose => ({ pivot: { x: stationM, y: 0, z }, hubM: tyre.radiusM, rotation });
  // A leaning wheel touches elsewhere than straight below, and elsewhere again once it has risen.
  for (let n = 0; n < 4; n++) {
    const centres = places.map(({ x, y }) => placed(pose(), { x: x - stationM, y, z: tyre.radiusM }));
    z += Math.max(...centres.map((centre) => toRiseM(features, centre, rotation, tyre.radiusM)));
  }
  z += CLEAR_M;
  return pose();
}

/**
 * The same vehicle and ground built in a general rigid-body engine (rapier3d 0.21, `rig.ts`), each wheel on a weighbridge
 * of its own (`weighbridge.ts`). It is set down from just above the ground and settles.
 */
export function settle(
  chassis: Chassis,
  features: readonly Feature[],
  up: Up,
  stationM: number,
  stepS = STEP_S,
): Settled {
  const world = worldOf(stepS);
  const rig = new Rig(world, chassis, clearPose(chassis, features, stationM));
  const bridges = rig.rings.map((ring, i) => {
    const { wheelKg } = i < 2 ? chassis.front : chassis.rear;
    return new Weighbridge(world, features, ring.at, chassis.tyre.radiusM, wheelKg);
  });

  // On a steep camber a falling vehicle may roll over where a standing one would not: there the level world is tilted in.
  const slowly = Math.abs(up.y) > STEEP;
  const every = Math.round(REST.everyS / stepS);
  const most = (slowly ? REST.tiltedAtMostS : REST.atMostS) / stepS;
  let last = bridges.map(() => 0);
  let tipped = false;
  for (let n = 1; n <= most && !tipped; n++) {
    const timeS = n * stepS;
    const tilt = slowly ? Math.max(0, Math.min(1, (timeS - TILTING.fromS) / TILTING.forS)) : 1;
    const x = tilt * up.x;
    const y = tilt * up.y;
    const now = { x, y, z: Math.sqrt(1 - x * x - y * y) };
    rig.load(times(now, -G_MPS2));
    for (const bridge of bridges) bridge.bear(now, slowly);
    world.step();
    rig.read();
    for (const bridge of bridges) bridge.read();
    tipped = rig.body.up.z < TIPPED;
    if (tilt < 1 || n % every !== 0) continue;
    const loads = bridges.map((bridge) => bridge.load);
    if (timeS > REST.fromS && loads.every((load, i) => Math.abs(load - last[i]) < REST.share)) break;
    last = loads;
  }
  world.free();

  const ex = rig.body.turned({ x: 1, y: 0, z: 0 });
  const ey = rig.body.turned({ x: 0, y: 1, z: 0 });
  return {
    loadN: bridges.map((bridge) => bridge.loadN),
    pitch: -ex.z / Math.hypot(ex.x, ex.y),
    roll: ey.z / Math.hypot(ey.x, ey.y),
    tipped,
    wheelM: rig.rings.map((ring, i) => minus(ring.at, bridges[i].at)),
  };
}
