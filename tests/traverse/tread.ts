import type { Feature } from '../../src/terrain/feature.ts';
import { heightM } from '../../src/terrain/feature.ts';
import type { Rotation, Vector } from './vector.ts';
import { minus, turned } from './vector.ts';

/** Half of a tread's flat, and the radius of its crown to either side, metres. */
export const TREAD = { halfFlatM: 0.01, crownM: 0.05 };

/** Distance between ground points that a tread is held against, metres. */
const GRID_M = 0.0125;

/** Depth of a tread under its wheel centre at a place along and across the wheel; negative beyond its edge. */
function depthM(radiusM: number, along: number, across: number): number {
  const out = Math.abs(across) - TREAD.halfFlatM;
  if (out > TREAD.crownM) return -Infinity;
  const r = out > 0 ? radiusM - TREAD.crownM + Math.sqrt(TREAD.crownM ** 2 - out * out) : radiusM;
  return Math.abs(along) < r ? Math.sqrt(r * r - along * along) : -Infinity;
}

/** How far a wheel turned like this has to rise to touch the ground just so, metres; negative where it is clear. */
export function toRiseM(
  features: readonly Feature[],
  centre: Vector,
  rotation: Rotation,
  radiusM: number,
): number {
  const back = { x: -rotation.x, y: -rotation.y, z: -rotation.z, w: rotation.w };
  let most = -Infinity;
  for (let u = -radiusM; u <= radiusM; u += GRID_M)
    for (let v = -radiusM / 2; v <= radiusM / 2; v += GRID_M) {
      const [x, y] = [centre.x + u, centre.y + v];
      const local = turned(back, minus({ x, y, z: heightM(features, x, y) }, centre));
      most = Math.max(most, local.z + depthM(radiusM, local.x, local.y));
    }
  return most;
}
