import { heightM } from '../terrain/feature.ts';
import type { Stretch } from '../terrain/obstacle.ts';
import type { VehicleValues } from '../vehicle/specs.ts';
import type { Point } from './ink.ts';
import { hatching, n, stroke } from './ink.ts';
import { stanceOf } from './stance.ts';

/** What a driver's sketch is drawn from. */
export interface SketchView {
  readonly stretch: Stretch;
  /** Where it is cut, along the line from the pin. */
  readonly stationM: number;
  /** The line's place, left of the main line positive. */
  readonly offsetM: number;
  readonly vehicle: VehicleValues;
  readonly widthPx: number;
}

/** Ground drawn beyond the wider of vehicle and corridor, and at most this far from the main line. */
const BESIDE_M = 0.3;
const MOST_HALF_M = 2.4;
/** The body's top above the tyres' ground, where it does not matter how high it is. */
const HIGH_M = 1.5;
const BELOW_M = 0.18;
/** Kept clear above the body, which leans. */
const ROOF_PX = 6;
/** How far a bank or a drop is followed. */
const EDGE_M = 0.6;
const STEP_M = 0.02;

/**
 * Where the tyres go, at a glance and without a word: the ground cut across to scale, the axle set down on the line, the
 * main line dashed where the line is another, what bounds the way on each side.
 */
export function sketchSvg(view: SketchView): string {
  const { stretch, stationM, offsetM, vehicle, widthPx } = view;
  const { features, corridor } = stretch;
  const stance = stanceOf(features, stationM, offsetM, vehicle);
  const besideM = Math.abs(offsetM) + vehicle.widthM / 2 + BESIDE_M;
  const roomM = Math.max(corridor.leftM, corridor.rightM) + BESIDE_M;
  const half = Math.max(besideM, Math.min(MOST_HALF_M, roomM));
  const camberRad = stretch.plane.camberRad ?? 0;
  const [cos, sin] = [Math.cos(camberRad), Math.sin(camberRad)];
  const scale = widthPx / (2 * half);

  const surface: (readonly [number, number])[] = [];
  for (let y = half; y >= -half; y -= STEP_M) surface.push([y, heightM(features, stationM, y)]);
  const turn = (y: number, z: number): Point => [(-y * cos + z * sin) * scale, (-y * sin - z * cos) * scale];
  const ground = surface.map(([y, z]) => turn(y, z));
  const topPx = Math.min(
    turn(offsetM, stance.heightM + HIGH_M)[1] - ROOF_PX,
    ...ground.map(([, down]) => down - 4),
  );
  const lowPx = Math.max(...ground.map(([, down]) => down)) + BELOW_M * scale;
  const at = (y: number, z: number): Point => {
    const [x, down] = turn(y, z);
    return [x + widthPx / 2, down - topPx];
  };

  const inside = surface.filter(([y]) => y <= corridor.leftM && y >= -corridor.rightM);
  const line = (inside.length > 1 ? inside : surface).map(([y, z]) => at(y, z));
  const parts = [
    hatching(line, 8, 5),
    waterLine(view, half, at),
    offsetM === 0 ? '' : stroke('centre', [at(0, -0.2), at(0, stance.heightM + HIGH_M)]),
    stroke('surface', line),
    edge(corridor.leftBound, corridor.leftM, 1, half, view, at),
    edge(corridor.rightBound, corridor.rightM, -1, half, view, at),
    axle(vehicle, stance.leanRad, stance.heightM, stance.trackWidthM, offsetM, at),
  ];
  const heightPx = lowPx - topPx;
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" class="drawing sketch" viewBox="0 0 ${n(widthPx)} ${n(heightPx)}" ` +
    `width="${n(widthPx)}" height="${n(heightPx)}" fill="none" stroke="none" aria-hidden="true">${parts.join('')}</svg>`
  );
}

type At = (y: number, z: number) => Point;

/** Two tyres, what joins them, and the body seen from behind. */
function axle(
  v: VehicleValues,
  leanRad: number,
  groundM: number,
  trackWidthM: number,
  offsetM: number,
  at: At,
): string {
  const [cos, sin] = [Math.cos(leanRad), Math.sin(leanRad)];
  const on = (y: number, z: number): Point => at(offsetM + y * cos - z * sin, groundM + y * sin + z * cos);
  const [out, wide, high] = [trackWidthM / 2, v.tyreSectionM / 2, v.tyreDiameterM];
  const tyre = (y: number) =>
    stroke('tyre', [on(y - wide, 0), on(y + wide, 0), on(y + wide, high), on(y - wide, high)], true);
  const [side, roof, waist] = [v.widthM / 2 - 0.1, v.widthM / 2 - 0.28, 1];
  const body = [
    on(side, v.sillHeightM),
    on(side, waist),
    on(roof, HIGH_M),
    on(-roof, HIGH_M),
    on(-side, waist),
    on(-side, v.sillHeightM),
  ];
  const beam = stroke('axle', [on(out, high / 2), on(-out, high / 2)]);
  return stroke('body', body, true) + beam + tyre(out) + tyre(-out);
}

/** The ground rises at a bank and falls at a drop; trees and rock stand; an open side just ends. */
function edge(
  kind: Stretch['corridor']['leftBound'],
  distanceM: number,
  sign: 1 | -1,
  half: number,
  { stretch, stationM }: SketchView,
  at: At,
): string {
  if (kind === 'open' || distanceM > half) return '';
  const y = sign * distanceM;
  const z = heightM(stretch.features, stationM, y);
  if (kind === 'drop') return stroke('surface', [at(y, z), at(y + sign * 0.08, z - EDGE_M)]);
  if (kind === 'bank') return stroke('surface', [at(y, z), at(y + sign * 0.2, z + EDGE_M)]);
  const up = [0.15, 0.35, 0.55].map((by) =>
    stroke('bound', [at(y, z + by), at(y + sign * 0.14, z + by + (kind === 'trees' ? 0.12 : -0.12))]),
  );
  return stroke('bound', [at(y, z), at(y, z + EDGE_M + 0.1)]) + up.join('');
}

function waterLine({ stretch, stationM }: SketchView, half: number, at: At): string {
  return stretch.features
    .map((feature) => {
      if (feature.kind !== 'water' || stationM < feature.fromM || stationM > feature.toM) return '';
      const down = at(0, heightM(stretch.features, stationM, 0) + feature.depthM)[1];
      return stroke('water-level', [[at(half, 0)[0], down], [at(-half, 0)[0], down]]); // prettier-ignore
    })
    .join('');
}
