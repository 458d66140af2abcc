import type { VehicleValues } from '../vehicle/specs.ts';
import type { Point } from './ink.ts';
import { stroke } from './ink.ts';

/** How far up a body is drawn in a section across, before it is broken off, metres. */
export const BODY_TO_M = 0.95;

/** How far the body stands inside the mirrors. */
const MIRROR_M = 0.1;

/** The body in a section across: sills, wheel arches from `innerM` inward, belly, broken off at `topM`. `on` places (y, z). */
export function bodyAcross(
  v: VehicleValues,
  innerM: number,
  topM: number,
  on: (yM: number, zM: number) => Point,
): string {
  const out = v.widthM / 2 - MIRROR_M;
  const outline: Point[] = [
    on(out, topM),
    on(out, v.sillHeightM + 0.05),
    on(out - 0.05, v.sillHeightM),
    on(innerM, v.sillHeightM),
    on(innerM - 0.06, v.bellyHeightM),
    on(-innerM + 0.06, v.bellyHeightM),
    on(-innerM, v.sillHeightM),
    on(-out + 0.05, v.sillHeightM),
    on(-out, v.sillHeightM + 0.05),
    on(-out, topM),
  ];
  const broken = Array.from({ length: 13 }, (_, i) =>
    on(out - (i / 12) * 2 * out, topM + (i % 2 === 0 ? 0 : 0.035)),
  );
  return stroke('body', outline) + stroke('broken', broken);
}
