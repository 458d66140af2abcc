import RAPIER from '@dimforge/rapier3d-compat';
import type { Chassis } from '../../src/traverse/chassis.ts';
import { G_MPS2 } from '../../src/traverse/gravity.ts';
import { SPRING_BASE } from '../../src/vehicle/assumptions.ts';
import type { Axle } from '../../src/vehicle/axle.ts';
import { Piece } from './piece.ts';
import { TREAD } from './tread.ts';
import type { Rotation, Vector } from './vector.ts';
import { add, dot, minus, times, turned } from './vector.ts';
import { FRICTION, GIVE_M_PER_N } from './weighbridge.ts';

/**
 * Inertia of a wheel's carrier and ring over the sprung mass of their corner: several times what they weigh. Heavier, they
 * swing more slowly, so that a step of 1/200 s follows them, and the engine's contacts, whose stiffness goes by inertia,
 * give by 0.1 mm. Weight stays what it is.
 */
const INERT = { carrier: 0.5, ring: 0.4 };

/** Share of an axle's unsprung mass that is the ring's, the other side of the tyre. */
const RING_SHARE = 0.7;

/** Damping over √(k m): between lively and sluggish, it settles soonest. */
const DAMPING = 1.4;

const { LinX, LinY, AngX, AngY, AngZ } = RAPIER.JointAxesMask;
const ALONG: Vector = { x: 1, y: 0, z: 0 };

/** Where a vehicle is set: turned about the point `hubM` over its middle, which comes to `pivot`. */
export interface Pose {
  readonly pivot: Vector;
  readonly hubM: number;
  readonly rotation: Rotation;
}

export function placed({ pivot, hubM, rotation }: Pose, local: Vector): Vector {
  return add(pivot, turned(rotation, minus(local, { x: 0, y: 0, z: hubM })));
}

/** Pushes `upper` up and `lower` down along the upper piece's own vertical, both at the lower piece's point. */
function push(upper: Piece, lower: Piece, at: Vector, force: number): void {
  const f = times(upper.up, force);
  upper.push(f, at);
  lower.push(times(f, -1), at);
}

/** Height of a point of `lower` over its place on `upper` at rest, along the upper piece's vertical, and how fast it changes. */
function apart(upper: Piece, onUpper: Vector, lower: Piece, onLower: Vector) {
  const at = lower.pointAt(onLower);
  const away = dot(minus(at, upper.pointAt(onUpper)), upper.up);
  const speed = dot(minus(lower.velocityAt(at), upper.velocityAt(at)), upper.up);
  return { at, away, speed };
}

const damping = (k: number, kg: number): number => DAMPING * Math.sqrt(k * kg);

function stopsN(axle: Axle, travelM: number): number {
  if (travelM > axle.bumpM) return axle.bumpStopNPerM * (travelM - axle.bumpM);
  if (travelM < -axle.droopM) return axle.droopStopNPerM * (travelM + axle.droopM);
  return 0;
}

/**
 * A vehicle in the engine: body, hubs or beam axles, and tyre rings as pieces; springs, stops, bars and tyres as forces
 * between them; rings as real cylinders, brakes on.
 */
export class Rig {
  readonly body: Piece;
  /** The part of each wheel that meets the ground. */
  readonly rings: readonly Piece[];
  readonly #world: RAPIER.World;
  readonly #chassis: Chassis;
  readonly #pose: Pose;
  readonly #pieces: Piece[] = [];
  readonly #forces: (() => void)[] = [];

  constructor(world: RAPIER.World, chassis: Chassis, pose: Pose) {
    this.#world = world;
    this.#chassis = chassis;
    this.#pose = pose;
    const m = chassis.sprungKg;
    this.body = this.#piece(this.#centre, m, m, { x: m * 0.4, y: m * 1.5, z: m * 1.6 });
    const rings: Piece[] = [];
    for (const [axle, x] of [
      [chassis.front, chassis.wheelbaseM / 2],
      [chassis.rear, -chassis.wheelbaseM / 2],
    ] as const) {
      const carriers = axle.beam ? this.#beam(axle, x) : this.#hubs(axle, x);
      for (const [i, side] of [1, -1].entries()) rings.push(this.#ring(axle, x, side, carriers[i]));
    }
    this.rings = rings;
  }

  /** Takes every piece's state from the engine. */
  read(): void {
    for (const piece of this.#pieces) piece.read();
  }

  /** Hands springs, stops, bars, tyres and weight under this acceleration over to the engine. */
  load(gravity: Vector): void {
    for (const force of this.#forces) force();
    for (const piece of this.#pieces) piece.give(gravity);
  }

  get #centre(): Vector {
    return { x: this.#chassis.sprungXM, y: 0, z: this.#chassis.sprungHeightM };
  }

  #onBody(local: Vector): Vector {
    return minus(local, this.#centre);
  }

  #piece(local: Vector, weightKg: number, inertKg: number, inertia: Vector): Piece {
    const at = placed(this.#pose, local);
    const piece = new Piece(this.#world, at, this.#pose.rotation, { weightKg, inertKg, inertia });
    this.#pieces.push(piece);
    return piece;
  }

  #join(upper: Piece, onUpper: Vector, lower: Piece, onLower: Vector, locked: number): void {
    const joint = RAPIER.JointData.generic(onUpper, onLower, ALONG, locked);
    this.#world.createImpulseJoint(joint, upper.body, lower.body, true);
  }

  /** One beam that rises and rolls about the roll centre, carrier of both wheels. */
  #beam(axle: Axle, x: number): [Piece, Piece] {
    const { hubHeightM: h0, trackWidthM: t, springNPerM: k, rollCentreM } = axle;
    const { body } = this;
    const cornerKg = axle.wheelKg - axle.unsprungKg;
    const kg = 2 * INERT.carrier * cornerKg;
    const about = kg * (t / 2) ** 2 * 0.5;
    const weightKg = 2 * (1 - RING_SHARE) * axle.unsprungKg;
    const beam = this.#piece({ x, y: 0, z: h0 }, weightKg, kg, { x: about, y: kg * 0.05, z: about });
    const rollCentre = this.#onBody({ x, y: 0, z: rollCentreM });
    this.#join(body, rollCentre, beam, { x: 0, y: 0, z: rollCentreM - h0 }, LinX | LinY | AngY | AngZ);
    const base = (SPRING_BASE.beam * t) / 2;
    // What the springs at their base do not give in roll, the bar does: K_φ = k s²/2 + K.
    const rollNmPerRad = (axle.couplingNPerM + k / 2) * t ** 2;
    const barNmPerRad = rollNmPerRad - 2 * k * base * base;
    this.#forces.push(() => {
      let lean = 0;
      for (const side of [1, -1]) {
        const y = side * base;
        const spring = apart(body, this.#onBody({ x, y, z: h0 }), beam, { x: 0, y, z: 0 });
        const springN = cornerKg * G_MPS2 + k * spring.away + damping(k, cornerKg) * spring.speed;
        push(body, beam, spring.at, springN);
        lean += (side * spring.away) / (2 * base);
        const end = (side * t) / 2;
        const stop = apart(body, this.#onBody({ x, y: end, z: h0 }), beam, { x: 0, y: end, z: 0 });
        push(body, beam, stop.at, stopsN(axle, stop.away));
      }
      const twist = times(body.turned(ALONG), barNmPerRad * lean);
      body.twist(twist);
      beam.twist(times(twist, -1));
    });
    return [beam, beam];
  }

  /** Two hubs that rise along the body, coupled by the bar. */
  #hubs(axle: Axle, x: number): [Piece, Piece] {
    const { hubHeightM: h0, springNPerM: k } = axle;
    const { body } = this;
    const cornerKg = axle.wheelKg - axle.unsprungKg;
    const kg = INERT.carrier * cornerKg;
    const middle: Vector = { x: 0, y: 0, z: 0 };
    const hubAt = (side: number) => {
      const at = { x, y: (side * axle.trackWidthM) / 2, z: h0 };
      const weightKg = (1 - RING_SHARE) * axle.unsprungKg;
      const hub = this.#piece(at, weightKg, kg, { x: kg * 0.03, y: kg * 0.03, z: kg * 0.03 });
      this.#join(body, this.#onBody(at), hub, middle, LinX | LinY | AngX | AngY | AngZ);
      return { hub, onBody: this.#onBody(at) };
    };
    const left = hubAt(1);
    const right = hubAt(-1);
    this.#forces.push(() => {
      const springs = [left, right].map(({ hub, onBody }) => apart(body, onBody, hub, middle));
      for (const [i, { hub }] of [left, right].entries()) {
        const { at, away, speed } = springs[i];
        const coupledN = axle.couplingNPerM * (away - springs[1 - i].away);
        const springN = cornerKg * G_MPS2 + k * away + damping(k, cornerKg) * speed;
        push(body, hub, at, springN + coupledN + stopsN(axle, away));
      }
    });
    return [left.hub, right.hub];
  }

  /** A rigid tread that the tyre holds under its carrier; it may only rise and sink along it. */
  #ring(axle: Axle, x: number, side: number, carrier: Piece): Piece {
    const y = (side * axle.trackWidthM) / 2;
    const { radiusM: R, stiffnessNPerM } = this.#chassis.tyre;
    const weightKg = RING_SHARE * axle.unsprungKg;
    const cornerKg = axle.wheelKg - axle.unsprungKg;
    const kg = INERT.ring * cornerKg;
    const across = kg * R * R * 0.4;
    const ring = this.#piece({ x, y, z: R }, weightKg, kg, { x: across, y: kg * R * R * 0.7, z: across });
    const tread = RAPIER.ColliderDesc.roundCylinder(TREAD.halfFlatM, R - TREAD.crownM, TREAD.crownM);
    this.#world.createCollider(tread.setDensity(0).setFriction(FRICTION).setRestitution(0), ring.body);
    const foot: Vector = { x: 0, y: 0, z: -R };
    const onCarrier: Vector = { x: 0, y: axle.beam ? y : 0, z: -axle.hubHeightM };
    this.#join(carrier, onCarrier, ring, foot, LinX | LinY | AngX | AngY | AngZ);
    // Tyre and weighbridge one on the other give as the tyre alone.
    const k = 1 / (1 / stiffnessNPerM - GIVE_M_PER_N);
    const atRestN = (axle.wheelKg - weightKg) * G_MPS2;
    const bothKg = kg / (1 + INERT.ring / INERT.carrier);
    this.#forces.push(() => {
      const tyre = apart(carrier, onCarrier, ring, foot);
      push(carrier, ring, tyre.at, atRestN + k * tyre.away + damping(k, bothKg) * tyre.speed);
    });
    return ring;
  }
}
