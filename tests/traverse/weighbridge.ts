import RAPIER from '@dimforge/rapier3d-compat';
import type { Feature } from '../../src/terrain/feature.ts';
import { heightM } from '../../src/terrain/feature.ts';
import { G_MPS2 } from '../../src/traverse/gravity.ts';
import type { Up } from '../../src/traverse/up.ts';
import type { Vector } from './vector.ts';

/** Of tyres on ground, so great that nothing slides off. */
export const FRICTION = 1.2;

/** The plate, its spring, and how it gives along the plane: by a metre under thrice its load. */
const PLATE = { inertKg: 400, springNPerM: 5e6, damperNsPerM: 4e4, softPerM: 3, widthM: 0.34, beyondM: 0.1 };

/** How far a weighbridge sinks for each newton on it. */
export const GIVE_M_PER_N = 1 / PLATE.springNPerM;

/** Distance between the plate's points, metres. */
const GRID_M = 0.025;

/**
 * The ground under one wheel, cut out and set on a stiff spring, so that loads are weighed and not read out of a solver.
 * Along the plane it bears its share of the slope and gives softly, so that scrub while settling locks no forces in.
 */
export class Weighbridge {
  /** How far it has moved. */
  readonly at = { x: 0, y: 0, z: 0 };
  readonly #velocity = { x: 0, y: 0, z: 0 };
  readonly #plate: RAPIER.RigidBody;
  readonly #shareN: number;

  /** Under a wheel of this radius that should bear `shareKg` on level ground. */
  constructor(
    world: RAPIER.World,
    features: readonly Feature[],
    under: Vector,
    radiusM: number,
    shareKg: number,
  ) {
    this.#shareN = shareKg * G_MPS2;
    this.#plate = world.createRigidBody(
      RAPIER.RigidBodyDesc.dynamic()
        .lockRotations()
        .setAdditionalMassProperties(
          PLATE.inertKg,
          { x: 0, y: 0, z: 0 },
          { x: 1, y: 1, z: 1 },
          { x: 0, y: 0, z: 0, w: 1 },
        )
        .setCanSleep(false),
    );
    world.createCollider(
      plateOf(features, under, radiusM).setDensity(0).setFriction(FRICTION).setRestitution(0),
      this.#plate,
    );
  }

  /** Takes place and motion from the engine. */
  read(): void {
    this.#plate.translation(this.at);
    this.#plate.linvel(this.#velocity);
  }

  get loadN(): number {
    return -PLATE.springNPerM * this.at.z;
  }

  /** Load over what it should bear on level ground. */
  get load(): number {
    return this.loadN / this.#shareN;
  }

  /** Bears the slope under this vertical by its share of load, or, `lively`, by the load that it has at the moment. */
  bear(up: Up, lively: boolean): void {
    const bearsN = lively ? this.loadN : this.#shareN * up.z;
    const soft = PLATE.softPerM * this.#shareN;
    const slow = 2 * this.#shareN * Math.sqrt(PLATE.softPerM / G_MPS2);
    const v = this.#velocity;
    this.#plate.resetForces(false);
    this.#plate.addForce(
      {
        x: (bearsN * up.x) / up.z - soft * this.at.x - slow * v.x,
        y: (bearsN * up.y) / up.z - soft * this.at.y - slow * v.y,
        z: this.loadN - PLATE.damperNsPerM * v.z,
      },
      false,
    );
  }
}

/**
 * Ground around a wheel as triangles. The engine's way of smoothing the edges between them, `FIX_INTERNAL_EDGES`, is three
 * times as quick, but lets wheels sink through the walls of a narrow rut.
 */
function plateOf(features: readonly Feature[], under: Vector, radiusM: number): RAPIER.ColliderDesc {
  const nx = Math.ceil((2 * (radiusM + PLATE.beyondM)) / GRID_M);
  const ny = Math.ceil(PLATE.widthM / GRID_M);
  const points = new Float32Array((nx + 1) * (ny + 1) * 3);
  const faces: number[] = [];
  for (let i = 0; i <= nx; i++)
    for (let j = 0; j <= ny; j++) {
      const x = under.x + (i - nx / 2) * GRID_M;
      const y = under.y + (j - ny / 2) * GRID_M;
      const n = i * (ny + 1) + j;
      points.set([x, y, heightM(features, x, y)], 3 * n);
      if (i < nx && j < ny) faces.push(n, n + ny + 1, n + 1, n + 1, n + ny + 1, n + ny + 2);
    }
  return RAPIER.ColliderDesc.trimesh(points, Uint32Array.from(faces));
}
