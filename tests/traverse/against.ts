import { chassisOf } from '../../src/traverse/chassis.ts';
import { Equilibrium } from '../../src/traverse/equilibrium.ts';
import { G_MPS2 } from '../../src/traverse/gravity.ts';
import { BEYOND_M, TIP_RESERVE_RAD } from '../../src/traverse/limits.ts';
import { Relief } from '../../src/traverse/relief.ts';
import { leanedTan } from '../../src/traverse/stability.ts';
import { upOf } from '../../src/traverse/up.ts';
import { wheelPath } from '../../src/traverse/wheel.ts';
import type { Settled } from './engine.ts';
import { levelPlaces, settle } from './engine.ts';
import type { Scene } from './scenes.ts';
import { randomScene } from './scenes.ts';
import { TREAD } from './tread.ts';

const NOTHING = { airedDown: false, barsDisconnected: false };

/** Ground heights and climbs that the model finds under wheels at these places. */
export function groundAt(scene: Scene, places: readonly { readonly x: number; readonly y: number }[]) {
  const { features, lengthM } = scene.ground;
  const relief = new Relief(features, -lengthM / 2 - BEYOND_M, lengthM / 2 + BEYOND_M, 0.0125, 0.0125);
  const radiusM = scene.values.tyreDiameterM / 2;
  const paths = places.map(({ x, y }) =>
    wheelPath(relief, x, 0.05, 1, y, { radiusM, sectionM: 2 * TREAD.halfFlatM }),
  );
  return { bottomM: paths.map((path) => path.bottomM[0]), climbTan: paths.map((path) => path.climbTan[0]) };
}

/** Settles the scene in the engine. */
export function settled(scene: Scene, stepS?: number): Settled {
  const chassis = chassisOf(scene.values, NOTHING);
  return settle(chassis, scene.ground.features, upOf(scene.ground)!, scene.stationM, stepS);
}

/**
 * What the model is asked: each wheel where the engine's came to stand (where it stood level, if that tipped over). A
 * leaning body moves its wheels by centimetres along the plane, which a march along the line passes over anyway.
 */
export function askedOf(scene: Scene, engine: Pick<Settled, 'wheelM' | 'tipped'>) {
  const chassis = chassisOf(scene.values, NOTHING);
  const places = engine.tipped ? levelPlaces(chassis, scene.stationM) : engine.wheelM;
  return { chassis, up: upOf(scene.ground)!, places, ...groundAt(scene, places) };
}

/** One scene settled in the engine and solved by the model. */
export interface Comparison {
  readonly seed: number;
  readonly scene: Scene;
  readonly engine: Settled;
  /** Whether the model has it stand. */
  readonly stands: boolean;
  /** Tilt left towards the lower side by the model; NaN where it does not stand. */
  readonly tiltLeftRad: number;
  /** Load differences over each wheel's static load. */
  readonly errors: readonly number[];
}

export function compared(seed: number): Comparison {
  const scene = randomScene(seed);
  const engine = settled(scene);
  const { chassis, up, bottomM, climbTan } = askedOf(scene, engine);
  const body = new Equilibrium(chassis, up);
  const stands = body.solve(bottomM, climbTan) === 0;
  const errors = [...body.loadN].map((V, i) => {
    const staticN = (i < 2 ? chassis.front : chassis.rear).wheelKg * G_MPS2;
    return Math.abs(V - engine.loadN[i]) / staticN;
  });
  const lower = scene.ground.camberRad > 0 ? 1 : 0;
  const tiltLeftRad = stands ? Math.atan(leanedTan(chassis, up, bottomM, climbTan, lower, 4)) : NaN;
  return { seed, scene, engine, stands, tiltLeftRad, errors };
}

/** How far the engine's body is turned from the plane. */
export const turnRad = ({ engine }: Comparison): number => Math.atan(Math.hypot(engine.pitch, engine.roll));

export const bothStand = ({ stands, engine }: Comparison): boolean => stands && !engine.tipped;

export const agree = ({ stands, engine }: Comparison): boolean => stands !== engine.tipped;

/** The engine's tips although the model has it stand with the tilt in hand that a verdict asks. */
export const wronglyStands = ({ engine, tiltLeftRad }: Comparison): boolean =>
  engine.tipped && tiltLeftRad >= TIP_RESERVE_RAD;

/** The value below which the given share of the numbers lies. */
export function quantile(numbers: readonly number[], share: number): number {
  const sorted = [...numbers].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))];
}
