import type { Chassis } from '../../src/traverse/chassis.ts';
import { chassisOf } from '../../src/traverse/chassis.ts';
import { Equilibrium } from '../../src/traverse/equilibrium.ts';
import { G_MPS2 } from '../../src/traverse/gravity.ts';
import { Relief } from '../../src/traverse/relief.ts';
import { leanedTan } from '../../src/traverse/stability.ts';
import { upOf } from '../../src/traverse/up.ts';
import { wheelPath } from '../../src/traverse/wheel.ts';
import type { Settled } from './engine.ts';
import { settle, TREAD } from './engine.ts';
import type { Scene } from './scenes.ts';

const NOTHING = { airedDown: false, barsDisconnected: false };

/** Ground heights and climbs that the model finds under wheels at these places. */
function groundAt(scene: Scene, places: readonly { readonly x: number; readonly y: number }[]) {
  const { features, lengthM } = scene.ground;
  const relief = new Relief(features, lengthM, 0.0125, 0.0125);
  const radiusM = scene.values.tyreDiameterM / 2;
  const paths = places.map(({ x, y }) => wheelPath(relief, x, 0.05, 1, y, radiusM, 2 * TREAD.halfFlatM));
  return { bottomM: paths.map((path) => path.bottomM[0]), climbTan: paths.map((path) => path.climbTan[0]) };
}

/** Where the wheels of a level vehicle stand. */
function levelPlaces(scene: Scene, chassis: Chassis) {
  return [0, 1, 2, 3].map((i) => ({
    x: scene.stationM + ((i < 2 ? 1 : -1) * chassis.wheelbaseM) / 2,
    y: ((i % 2 === 0 ? 1 : -1) * (i < 2 ? chassis.front : chassis.rear).trackWidthM) / 2,
  }));
}

/** Settles the scene in the engine. */
export function settled(scene: Scene): Settled {
  const chassis = chassisOf(scene.values, NOTHING);
  const places = levelPlaces(scene, chassis);
  const { bottomM } = groundAt(scene, places);
  return settle(chassis, scene.ground.features, upOf(scene.ground)!, scene.stationM, 0, bottomM);
}

/**
 * Solves the scene with each wheel where the engine's came to stand (where it stood level, if that tipped over): a leaning body moves its wheels by centimetres along
 * the plane, which a march along the line passes over anyway. `errors` are load differences over each wheel's static
 * load; `tiltLeftRad` is the tilt left towards the lower side.
 */
export function solved(scene: Scene, engine: Pick<Settled, 'loadN' | 'wheelM' | 'tipped'>) {
  const chassis = chassisOf(scene.values, NOTHING);
  const { bottomM, climbTan } = groundAt(scene, engine.tipped ? levelPlaces(scene, chassis) : engine.wheelM);
  const body = new Equilibrium(chassis, upOf(scene.ground)!);
  const standing = body.solve(bottomM, climbTan);
  const errors = [...body.loadN].map((V, i) => {
    const staticN = (i < 2 ? chassis.front : chassis.rear).wheelKg * G_MPS2;
    return Math.abs(V - engine.loadN[i]) / staticN;
  });
  const lower = scene.ground.camberRad > 0 ? 1 : 0;
  const tiltLeftRad =
    standing === 0 ? Math.atan(leanedTan(chassis, upOf(scene.ground)!, bottomM, climbTan, lower, 4)) : NaN;
  return {
    standing,
    tiltLeftRad,
    loadN: [...body.loadN],
    pitch: body.pitch,
    roll: body.roll,
    errors,
    bottomM,
    climbTan,
  };
}

/** The value below which the given share of the numbers lies. */
export function quantile(numbers: readonly number[], share: number): number {
  const sorted = [...numbers].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))];
}
