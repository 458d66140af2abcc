import RAPIER from '@dimforge/rapier3d-compat';
import type { Rotation, Vector } from './vector.ts';
import { add, cross, minus, times, turned } from './vector.ts';

const ZERO: Vector = { x: 0, y: 0, z: 0 };

/**
 * A rigid body of the engine. Crossing into the engine is dear, so its state is read once a step and its forces are handed
 * over once a step. What it weighs and what inertia it has are apart: where things come to rest depends on weight only.
 */
export class Piece {
  readonly body: RAPIER.RigidBody;
  readonly at = { x: 0, y: 0, z: 0 };
  /** Its own vertical. */
  up: Vector = { x: 0, y: 0, z: 1 };
  readonly #turn = { x: 0, y: 0, z: 0, w: 1 };
  readonly #velocity = { x: 0, y: 0, z: 0 };
  readonly #spin = { x: 0, y: 0, z: 0 };
  readonly #weightKg: number;
  #force = ZERO;
  #torque = ZERO;

  /** `inertia` is about the axes of the piece, kg m². */
  constructor(
    world: RAPIER.World,
    at: Vector,
    turn: Rotation,
    { weightKg, inertKg, inertia }: { weightKg: number; inertKg: number; inertia: Vector },
  ) {
    this.body = world.createRigidBody(
      RAPIER.RigidBodyDesc.dynamic()
        .setTranslation(at.x, at.y, at.z)
        .setRotation(turn)
        .setAdditionalMassProperties(inertKg, ZERO, inertia, { x: 0, y: 0, z: 0, w: 1 })
        .setCanSleep(false),
    );
    this.#weightKg = weightKg;
    this.read();
  }

  /** Takes position and motion from the engine. */
  read(): void {
    this.body.translation(this.at);
    this.body.rotation(this.#turn);
    this.body.linvel(this.#velocity);
    this.body.angvel(this.#spin);
    this.up = this.turned({ x: 0, y: 0, z: 1 });
  }

  turned(local: Vector): Vector {
    return turned(this.#turn, local);
  }

  pointAt(local: Vector): Vector {
    return add(this.at, this.turned(local));
  }

  velocityAt(point: Vector): Vector {
    return add(this.#velocity, cross(this.#spin, minus(point, this.at)));
  }

  push(force: Vector, point: Vector): void {
    this.#force = add(this.#force, force);
    this.twist(cross(minus(point, this.at), force));
  }

  twist(torque: Vector): void {
    this.#torque = add(this.#torque, torque);
  }

  /** Hands the forces since the last time over to the engine, with the weight under this acceleration. */
  give(gravity: Vector): void {
    this.body.resetForces(false);
    this.body.addForce(add(this.#force, times(gravity, this.#weightKg)), false);
    this.body.resetTorques(false);
    this.body.addTorque(this.#torque, false);
    this.#force = ZERO;
    this.#torque = ZERO;
  }
}
