import RAPIER from '@dimforge/rapier3d-compat';
import type { Feature } from '../../src/terrain/feature.ts';
import { heightM } from '../../src/terrain/feature.ts';
import type { Chassis } from '../../src/traverse/chassis.ts';
import { G_MPS2 } from '../../src/traverse/gravity.ts';
import type { Up } from '../../src/traverse/up.ts';
import { SPRING_BASE } from '../../src/vehicle/assumptions.ts';
import type { Axle } from '../../src/vehicle/axle.ts';

/**
 * The same vehicle and ground built in a general rigid-body engine (rapier3d 0.21): body, hubs or beam axles, and tyre
 * rings as bodies; rings as real cylinders on the real ground; springs, stops, bars and tyres as forces between bodies;
 * brakes on, friction 1.2. It falls 2 cm and settles. Each wheel stands on a plate of its own, cut from the ground, that
 * rides on a stiff spring: a weighbridge, so that loads are weighed and not read out of a solver. Along the plane the
 * plates bear each wheel's share of the slope and give softly, so that scrub while settling locks no forces in.
 */
export interface Settled {
  readonly loadN: number[];
  /** Tangents of pitch and roll of the body. */
  readonly pitch: number;
  readonly roll: number;
  readonly tipped: boolean;
  readonly steps: number;
  /** Where the centre of each ring came to stand over its ground. */
  readonly wheelM: readonly { readonly x: number; readonly y: number; readonly z: number }[];
  /** Greatest move of a wheel along the plane while it settled, metres. */
  readonly slidM: number;
}

type V3 = { x: number; y: number; z: number };
const DT = 1 / 500;

/** Sideways component of up from which the world is tilted in slowly, and over which steps. */
const STEEP = 0.4;
const TILTING = { fromStep: 500, steps: 1500 };

/** Half of a tread's flat, and the radius of its crown to either side, metres. */
export const TREAD = { halfFlatM: 0.01, crownM: 0.05 };

const PLATE = { massKg: 100, springNPerM: 5e6, damperNsPerM: 2e4, softPerM: 3 };

export async function startEngine(): Promise<void> {
  await RAPIER.init();
}

function turned(q: { x: number; y: number; z: number; w: number }, v: V3): V3 {
  const tx = 2 * (q.y * v.z - q.z * v.y);
  const ty = 2 * (q.z * v.x - q.x * v.z);
  const tz = 2 * (q.x * v.y - q.y * v.x);
  return {
    x: v.x + q.w * tx + q.y * tz - q.z * ty,
    y: v.y + q.w * ty + q.z * tx - q.x * tz,
    z: v.z + q.w * tz + q.x * ty - q.y * tx,
  };
}
const add = (a: V3, b: V3): V3 => ({ x: a.x + b.x, y: a.y + b.y, z: a.z + b.z });
const minus = (a: V3, b: V3): V3 => ({ x: a.x - b.x, y: a.y - b.y, z: a.z - b.z });
const times = (a: V3, s: number): V3 => ({ x: a.x * s, y: a.y * s, z: a.z * s });
const dot = (a: V3, b: V3): number => a.x * b.x + a.y * b.y + a.z * b.z;

const pointOf = (body: RAPIER.RigidBody, local: V3): V3 =>
  add(body.translation(), turned(body.rotation(), local));

/** Pushes `upper` up and `lower` down along the upper body's own vertical, both at the lower body's point. */
function push(upper: RAPIER.RigidBody, lower: RAPIER.RigidBody, at: V3, force: number): void {
  const f = times(turned(upper.rotation(), { x: 0, y: 0, z: 1 }), force);
  upper.addForceAtPoint(f, at, true);
  lower.addForceAtPoint(times(f, -1), at, true);
}

/** Height of a point of `lower` over its place on `upper` at rest, along the upper body's vertical, and how fast it changes. */
function apart(upper: RAPIER.RigidBody, onUpper: V3, lower: RAPIER.RigidBody, onLower: V3) {
  const at = pointOf(lower, onLower);
  const ez = turned(upper.rotation(), { x: 0, y: 0, z: 1 });
  const away = dot(minus(at, pointOf(upper, onUpper)), ez);
  const speed = dot(minus(lower.velocityAtPoint(at), upper.velocityAtPoint(at)), ez);
  return { at, away, speed };
}

const { LinX, LinY, AngX, AngY, AngZ } = RAPIER.JointAxesMask;

export function settle(
  chassis: Chassis,
  features: readonly Feature[],
  up: Up,
  stationM: number,
  offsetM: number,
  bottomM: ArrayLike<number>,
): Settled {
  const world = new RAPIER.World(times({ x: up.x, y: up.y, z: up.z }, -G_MPS2));
  world.timestep = DT;
  world.numSolverIterations = 8;
  // Stiff contacts: as the engine comes they give by centimetres under a light ring with a heavy load.
  world.integrationParameters.contact_natural_frequency = 90;
  world.integrationParameters.normalizedAllowedLinearError = 1e-4;
  const R = chassis.tyre.radiusM;
  const L = chassis.wheelbaseM;

  // The pose it falls from: the plane through the ground under the wheels, so high that every wheel is 2 cm clear.
  const pitchTan = (bottomM[2] + bottomM[3] - bottomM[0] - bottomM[1]) / (2 * L);
  const rollTan =
    (bottomM[0] + bottomM[2] - bottomM[1] - bottomM[3]) /
    (chassis.front.trackWidthM + chassis.rear.trackWidthM);
  const mean = (bottomM[0] + bottomM[1] + bottomM[2] + bottomM[3]) / 4;
  const warp = (bottomM[0] - bottomM[1] - bottomM[2] + bottomM[3]) / 4;
  const heave = mean + Math.abs(warp) + 0.02;
  const p = Math.asin(Math.max(-0.7, Math.min(0.7, pitchTan))) / 2;
  const r = Math.asin(Math.max(-0.7, Math.min(0.7, rollTan))) / 2;
  const rotation = {
    x: Math.sin(r) * Math.cos(p),
    y: Math.cos(r) * Math.sin(p),
    z: -Math.sin(r) * Math.sin(p),
    w: Math.cos(r) * Math.cos(p),
  };
  // Turned about the wheel centres' plane, so that those stay over the station.
  const hubM = (chassis.front.hubHeightM + chassis.rear.hubHeightM) / 2;
  const pivot = { x: stationM, y: offsetM, z: heave + hubM };
  const place = (local: V3): V3 => add(pivot, turned(rotation, minus(local, { x: 0, y: 0, z: hubM })));

  const bodyAt = (local: V3, massKg: number, inertia: V3): RAPIER.RigidBody => {
    const at = place(local);
    return world.createRigidBody(
      RAPIER.RigidBodyDesc.dynamic()
        .setTranslation(at.x, at.y, at.z)
        .setRotation(rotation)
        .setAdditionalMassProperties(massKg, { x: 0, y: 0, z: 0 }, inertia, { x: 0, y: 0, z: 0, w: 1 })
        .setCanSleep(false),
    );
  };
  const m = chassis.sprungKg;
  const centre: V3 = { x: chassis.sprungXM, y: 0, z: chassis.sprungHeightM };
  const body = bodyAt(centre, m, { x: m * 0.4, y: m * 1.5, z: m * 1.6 });
  const onBody = (local: V3): V3 => minus(local, centre);

  interface Wheel {
    ring: RAPIER.RigidBody;
    carrier: RAPIER.RigidBody;
    plate: RAPIER.RigidBody;
    shareKg: number;
    start: V3;
  }
  const wheels: Wheel[] = [];
  const forces: (() => void)[] = [];

  const damper = (k: number, kg: number) => 1.4 * Math.sqrt(k * kg);
  const stops = (axle: Axle, c: number): number =>
    (c > axle.bumpM ? axle.bumpStopNPerM * (c - axle.bumpM) : 0) +
    (c < -axle.droopM ? axle.droopStopNPerM * (c + axle.droopM) : 0);

  for (const [axle, x] of [
    [chassis.front, L / 2],
    [chassis.rear, -L / 2],
  ] as const) {
    const h0 = axle.hubHeightM;
    const ringKg = axle.unsprungKg * 0.7;
    const carrierKg = axle.unsprungKg * 0.3;
    const S0 = (axle.wheelKg - axle.unsprungKg) * G_MPS2;
    const cornerKg = axle.wheelKg - axle.unsprungKg;
    const half = axle.trackWidthM / 2;
    const carriers: RAPIER.RigidBody[] = [];

    if (axle.beam) {
      const kg = 2 * carrierKg;
      const beam = bodyAt({ x, y: 0, z: h0 }, kg, {
        x: kg * half * half * 0.5,
        y: kg * 0.05,
        z: kg * half * half * 0.5,
      });
      const rollCentre: V3 = { x, y: 0, z: axle.rollCentreM };
      world.createImpulseJoint(
        RAPIER.JointData.generic(
          onBody(rollCentre),
          { x: 0, y: 0, z: axle.rollCentreM - h0 },
          { x: 1, y: 0, z: 0 },
          LinX | LinY | AngY | AngZ,
        ),
        body,
        beam,
        true,
      );
      carriers.push(beam, beam);
      const base = (SPRING_BASE.beam * axle.trackWidthM) / 2;
      const k = axle.springNPerM;
      // What the springs at their base do not give in roll, the bar does: K_φ = k s²/2 + K.
      const rollNmPerRad = (axle.couplingNPerM + k / 2) * axle.trackWidthM ** 2;
      const barNmPerRad = rollNmPerRad - 2 * k * base * base;
      forces.push(() => {
        let lean = 0;
        for (const side of [1, -1]) {
          const y = side * base;
          const s = apart(body, onBody({ x, y, z: h0 }), beam, { x: 0, y, z: 0 });
          push(body, beam, s.at, S0 + k * s.away + damper(k, cornerKg) * s.speed);
          lean += (side * s.away) / (2 * base);
          const w = apart(body, onBody({ x, y: side * half, z: h0 }), beam, { x: 0, y: side * half, z: 0 });
          push(body, beam, w.at, stops(axle, w.away));
        }
        const twist = times(turned(body.rotation(), { x: 1, y: 0, z: 0 }), barNmPerRad * lean);
        body.addTorque(twist, true);
        beam.addTorque(times(twist, -1), true);
      });
    } else {
      for (const side of [1, -1]) {
        const y = side * half;
        const hub = bodyAt({ x, y, z: h0 }, carrierKg, {
          x: carrierKg * 0.03,
          y: carrierKg * 0.03,
          z: carrierKg * 0.03,
        });
        world.createImpulseJoint(
          RAPIER.JointData.generic(
            onBody({ x, y, z: h0 }),
            { x: 0, y: 0, z: 0 },
            { x: 1, y: 0, z: 0 },
            LinX | LinY | AngX | AngY | AngZ,
          ),
          body,
          hub,
          true,
        );
        carriers.push(hub);
      }
      const k = axle.springNPerM;
      forces.push(() => {
        const s = [1, -1].map((side, i) =>
          apart(body, onBody({ x, y: side * half, z: h0 }), carriers[i], { x: 0, y: 0, z: 0 }),
        );
        s.forEach(({ at, away, speed }, i) => {
          const coupled = axle.couplingNPerM * (away - s[1 - i].away);
          push(
            body,
            carriers[i],
            at,
            S0 + k * away + coupled + stops(axle, away) + damper(k, cornerKg) * speed,
          );
        });
      });
    }

    for (const [i, side] of [1, -1].entries()) {
      const y = side * half;
      const carrier = carriers[i];
      const foot: V3 = { x: 0, y: 0, z: -R };
      const onCarrier: V3 = { x: 0, y: axle.beam ? y : 0, z: -R };
      const ring = bodyAt({ x, y, z: h0 }, ringKg, {
        x: ringKg * R * R * 0.4,
        y: ringKg * R * R * 0.7,
        z: ringKg * R * R * 0.4,
      });
      world.createCollider(
        RAPIER.ColliderDesc.roundCylinder(TREAD.halfFlatM, R - TREAD.crownM, TREAD.crownM)
          .setDensity(0)
          .setFriction(1.2)
          .setRestitution(0),
        ring,
      );
      world.createImpulseJoint(
        RAPIER.JointData.generic(onCarrier, foot, { x: 1, y: 0, z: 0 }, LinX | LinY | AngX | AngY | AngZ),
        carrier,
        ring,
        true,
      );
      const k = chassis.tyre.stiffnessNPerM;
      // At rest the tyre carries the wheel's load less the ring's own weight.
      const ringWeight = (ringKg * G_MPS2) / chassis.tyre.stiffnessNPerM;
      forces.push(() => {
        const t = apart(carrier, onCarrier, ring, foot);
        push(carrier, ring, t.at, k * (t.away + (R - h0) - ringWeight) + damper(k, ringKg) * t.speed);
      });
      const at = ring.translation();
      wheels.push({
        ring,
        carrier,
        shareKg: axle.wheelKg,
        plate: plateUnder(world, features, at, R),
        start: { ...at },
      });
    }
  }

  const weighed = () => wheels.map(({ plate }) => -PLATE.springNPerM * plate.translation().z);
  let last = weighed();
  // On a steep camber a falling vehicle may roll over where a standing one would not: there the level world is tilted in.
  const slowly = Math.abs(up.y) > STEEP;
  let tilt = slowly ? 0 : 1;
  const lean = () => {
    const x = tilt * up.x;
    const y = tilt * up.y;
    return { x, y, z: Math.sqrt(1 - x * x - y * y) };
  };
  let tipped = false;
  let steps = 0;
  for (let n = 0; n < (slowly ? 4000 : 2000) && !tipped; n++) {
    for (const each of [body, ...wheels.map((w) => w.ring), ...wheels.map((w) => w.carrier)]) {
      each.resetForces(true);
      each.resetTorques(true);
    }
    if (slowly) tilt = Math.max(0, Math.min(1, (n - TILTING.fromStep) / TILTING.steps));
    const now = lean();
    world.gravity = times(now, -G_MPS2);
    for (const force of forces) force();
    for (const { plate, shareKg } of wheels) {
      const at = plate.translation();
      const v = plate.linvel();
      // Each wheel bears the slope by its share of load; on a steep camber by the load that it has at the moment.
      const bears = slowly ? -PLATE.springNPerM * at.z : shareKg * G_MPS2 * now.z;
      const soft = PLATE.softPerM * shareKg * G_MPS2;
      const slow = 2 * shareKg * Math.sqrt(PLATE.softPerM * G_MPS2);
      plate.resetForces(true);
      plate.addForce(
        {
          x: (bears * now.x) / now.z - soft * at.x - slow * v.x,
          y: (bears * now.y) / now.z - soft * at.y - slow * v.y,
          z: -PLATE.springNPerM * at.z - PLATE.damperNsPerM * v.z,
        },
        true,
      );
    }
    world.step();
    steps = n;
    const ez = turned(body.rotation(), { x: 0, y: 0, z: 1 });
    tipped = ez.z < 0.7;
    if (n < 500 || tilt < 1 || n % 100 !== 0) continue;
    const loads = weighed();
    if (loads.every((load, i) => Math.abs(load - last[i]) < 0.002 * wheels[i].shareKg * G_MPS2)) break;
    last = loads;
  }
  const ex = turned(body.rotation(), { x: 1, y: 0, z: 0 });
  const ey = turned(body.rotation(), { x: 0, y: 1, z: 0 });
  const settled = {
    loadN: weighed(),
    pitch: -ex.z / Math.hypot(ex.x, ex.y),
    roll: ey.z / Math.hypot(ey.x, ey.y),
    tipped,
    steps,
    wheelM: wheels.map(({ ring, plate }) => minus(ring.translation(), plate.translation())),
    slidM: Math.max(
      ...wheels.map(({ ring, plate, start }) =>
        Math.hypot(
          ring.translation().x - plate.translation().x - start.x,
          ring.translation().y - plate.translation().y - start.y,
        ),
      ),
    ),
  };
  world.free();
  return settled;
}

/** A plate of the ground under one wheel, free to move up and down only. */
function plateUnder(world: RAPIER.World, features: readonly Feature[], at: V3, R: number) {
  const plate = world.createRigidBody(
    RAPIER.RigidBodyDesc.dynamic()
      .lockRotations()
      .setGravityScale(0)
      .setAdditionalMassProperties(
        PLATE.massKg,
        { x: 0, y: 0, z: 0 },
        { x: 1, y: 1, z: 1 },
        { x: 0, y: 0, z: 0, w: 1 },
      )
      .setCanSleep(false),
  );
  const nx = Math.ceil((2 * (R + 0.1)) / 0.025);
  const ny = Math.ceil(0.34 / 0.025);
  const points = new Float32Array((nx + 1) * (ny + 1) * 3);
  const faces: number[] = [];
  for (let i = 0; i <= nx; i++)
    for (let j = 0; j <= ny; j++) {
      const x = at.x - (nx * 0.025) / 2 + i * 0.025;
      const y = at.y - (ny * 0.025) / 2 + j * 0.025;
      const n = i * (ny + 1) + j;
      points.set([x, y, heightM(features, x, y)], 3 * n);
      if (i < nx && j < ny) faces.push(n, n + ny + 1, n + 1, n + 1, n + ny + 1, n + ny + 2);
    }
  world.createCollider(
    RAPIER.ColliderDesc.trimesh(points, Uint32Array.from(faces))
      .setDensity(0)
      .setFriction(1.2)
      .setRestitution(0),
    plate,
  );
  return plate;
}
