import { heightM } from '../terrain/feature.ts';
import type { Stretch } from '../terrain/obstacle.ts';
import type { System } from '../units.ts';
import { shown } from '../units.ts';
import type { VehicleValues } from '../vehicle/specs.ts';
import type { Point } from './ink.ts';
import { dimension, hatching, n, stroke, text } from './ink.ts';
import type { Stance } from './stance.ts';
import { housingRadiusM, stanceOf } from './stance.ts';

/** What a cut across an obstacle is drawn from. */
export interface SectionView {
  readonly stretch: Stretch;
  /** Where it is cut, along the line from the pin. */
  readonly stationM: number;
  /** The line's place, left of the main line positive; the vehicle's middle stands there. */
  readonly offsetM: number;
  /** Who stands in it; null for the bare ground. */
  readonly vehicle: VehicleValues | null;
  readonly system: System;
  readonly widthPx: number;
}

/** Ground drawn at most this far either side of the main line, and at least this far. */
const MOST_HALF_M = 3.2;
const LEAST_HALF_M = 1.5;
/** Body drawn up to here above the tyres' ground; above it nothing can be misread. */
const BODY_TO_M = 0.95;
const GROUND_STEP_M = 0.01;
/** Ground drawn below its lowest point, to carry the dimensions. */
const UNDER_M = 0.34;

/**
 * A true-to-scale cut across the obstacle as SVG text, seen along the recorded direction: left is left, and the ground
 * leans by its camber. Sizes that were entered are dimensioned; the vehicle is set down stiff (see `Stance`).
 */
export function sectionSvg(view: SectionView): string {
  const { stretch, stationM, offsetM, vehicle } = view;
  const { features, corridor } = stretch;
  const camberRad = stretch.plane.camberRad ?? 0;
  const stance = vehicle && stanceOf(features, stationM, offsetM, vehicle);
  const half = halfWidthM(view);
  const surface: (readonly [number, number])[] = [];
  for (let y = half; y >= -half; y -= GROUND_STEP_M) surface.push([y, heightM(features, stationM, y)]);

  const scale = view.widthPx / (2 * half * Math.cos(camberRad));
  const cos = Math.cos(camberRad);
  const sin = Math.sin(camberRad);
  /** From the plane (y left, z normal to it) to pixels, before the picture is moved into its frame. */
  const turn = (y: number, z: number): Point => [(-y * cos + z * sin) * scale, (-y * sin - z * cos) * scale];

  const topZ = Math.max(
    (stance?.heightM ?? 0) + BODY_TO_M,
    Math.min(1.4, Math.max(...surface.map(([, z]) => z)) + 0.15),
  );
  const lowZ = Math.min(...surface.map(([, z]) => z)) - UNDER_M;
  const topPx = Math.min(turn(half, topZ)[1], turn(-half, topZ)[1], turn(offsetM, topZ)[1]) - 34;
  const lowPx = Math.max(turn(half, lowZ)[1], turn(-half, lowZ)[1]);
  const heightPx = lowPx - topPx;
  const at = (y: number, z: number): Point => {
    const [x, down] = turn(y, z);
    return [x + view.widthPx / 2, down - topPx];
  };

  const line = surface.map(([y, z]) => at(y, z));
  const parts = [
    stroke('ground', [...line, at(-half, lowZ - 2), at(half, lowZ - 2)], true),
    hatching(line, 9, 7),
    waterLevel(view, half, at),
    stroke('plane', [at(half, 0), at(-half, 0)]),
    bound('left', corridor.leftM, corridor.leftBound, half, topZ, at),
    bound('right', corridor.rightM, corridor.rightBound, half, topZ, at),
    stroke('centre', [at(0, lowZ + 0.05), at(0, topZ)]),
    vehicle && stance ? vehicleAt(vehicle, stance, offsetM, topZ, at) : '',
    stroke('surface', line),
    ...featureSizes(view, at),
    corridorSizes(view, half, at),
    camberRad === 0 ? '' : level(view, half, at),
  ];
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" class="drawing section" viewBox="0 0 ${n(view.widthPx)} ${n(heightPx)}" ` +
    `width="${n(view.widthPx)}" height="${n(heightPx)}" fill="none" stroke="none">${parts.join('')}</svg>`
  );
}

type At = (y: number, z: number) => Point;

function halfWidthM({ stretch, offsetM, vehicle }: SectionView): number {
  const { leftM, rightM } = stretch.corridor;
  const vehicleM = vehicle === null ? 0 : Math.abs(offsetM) + vehicle.widthM / 2 + 0.1;
  const room = Math.max(leftM, rightM) + 0.35;
  return Math.max(LEAST_HALF_M, vehicleM, Math.min(MOST_HALF_M, room));
}

/** What stops a mirror or a wheel at the edge of the corridor. */
function bound(side: 'left' | 'right', distanceM: number, kind: string, half: number, topZ: number, at: At) {
  if (distanceM > half) return '';
  const sign = side === 'left' ? 1 : -1;
  const y = sign * distanceM;
  const foot = at(y, 0);
  const top = at(y, topZ);
  const words = text(
    'bound-name',
    [top[0] + (side === 'left' ? 5 : -5), top[1] + 12],
    kind,
    side === 'left' ? 'start' : 'end',
  );
  const post = stroke(kind === 'open' ? 'bound open' : 'bound', [foot, top]);
  const beyond: Point[] = [];
  if (kind === 'bank' || kind === 'rock' || kind === 'trees')
    for (let z = 0.12; z < topZ; z += 0.12) beyond.push(at(y, z));
  const ticks = beyond
    .map(([x, down]) =>
      stroke('bound', [
        [x, down],
        [x - sign * 6, down + (kind === 'trees' ? -4 : 6)],
      ]),
    )
    .join('');
  const drop =
    kind === 'drop'
      ? stroke('bound drop', [
          at(y, 0),
          at(y, -0.3),
          at(y + sign * 0.1, -0.2),
          at(y, -0.3),
          at(y - sign * 0.1, -0.2),
        ])
      : '';
  return post + ticks + drop + words;
}

function vehicleAt(v: VehicleValues, stance: Stance, offsetM: number, topZ: number, at: At): string {
  const cos = Math.cos(stance.leanRad);
  const sin = Math.sin(stance.leanRad);
  /** From the vehicle (y left of its middle, z above the tyres' ground) to pixels. */
  const on = (y: number, z: number): Point =>
    at(offsetM + y * cos - z * sin, stance.heightM + y * sin + z * cos);
  const track = stance.trackWidthM / 2;
  const section = v.tyreSectionM / 2;
  const tyre = (y: number) => {
    const round = Math.min(0.05, section / 2);
    return stroke(
      'tyre',
      [
        on(y - section + round, 0),
        on(y + section - round, 0),
        on(y + section, round),
        on(y + section, v.tyreDiameterM - round),
        on(y + section - round, v.tyreDiameterM),
        on(y - section + round, v.tyreDiameterM),
        on(y - section, v.tyreDiameterM - round),
        on(y - section, round),
      ],
      true,
    );
  };
  const axleZ = v.tyreDiameterM / 2;
  const radius = housingRadiusM(v, stance.differentialHeightM);
  const beam = (stance.axle === 'rear' ? v.rearAxle : v.frontAxle) === 'beam';
  const housing = Array.from({ length: 24 }, (_, i) => {
    const a = (i / 24) * 2 * Math.PI;
    return on(stance.differentialYM + radius * Math.cos(a), axleZ + radius * Math.sin(a));
  });
  const tube = (from: number, to: number) =>
    beam
      ? stroke(
          'axle',
          [on(from, axleZ + 0.045), on(to, axleZ + 0.045), on(to, axleZ - 0.045), on(from, axleZ - 0.045)],
          true,
        )
      : stroke('shaft', [on(from, axleZ), on(to, axleZ)]);
  const out = v.widthM / 2 - 0.1;
  const bodyZ = Math.min(BODY_TO_M, topZ - stance.heightM);
  const inner = Math.max(0.2, track - section - 0.08);
  const body: Point[] = [
    on(out, bodyZ),
    on(out, v.sillHeightM + 0.05),
    on(out - 0.05, v.sillHeightM),
    on(inner, v.sillHeightM),
    on(inner - 0.06, v.bellyHeightM),
    on(-inner + 0.06, v.bellyHeightM),
    on(-inner, v.sillHeightM),
    on(-out + 0.05, v.sillHeightM),
    on(-out, v.sillHeightM + 0.05),
    on(-out, bodyZ),
  ];
  const broken = Array.from({ length: 13 }, (_, i) =>
    on(out - (i / 12) * 2 * out, bodyZ + (i % 2 === 0 ? 0 : 0.035)),
  );
  return (
    `<g class="vehicle">${stroke('body', body)}${stroke('broken', broken)}` +
    tube(-track, track) +
    tyre(track) +
    tyre(-track) +
    stroke(stance.housingInGroundM > 0 ? 'housing touches' : 'housing', housing, true) +
    '</g>'
  );
}

/** Width and depth of what the cut goes through. */
function featureSizes({ stretch, stationM, system }: SectionView, at: At): string[] {
  const size = (valueM: number) => shown(valueM, 'size', system);
  return stretch.features.map((feature) => {
    const cut = (y: number, widthM: number, depthM: number) => {
      const out = y >= 0 ? 1 : -1;
      const bottom = heightM(stretch.features, stationM, y);
      const under = bottom - 0.1;
      const shoulder = y + out * (widthM / 2 + 0.07);
      return (
        stroke('extension', [at(y + widthM / 2, 0), at(y + widthM / 2, under - 0.03)]) +
        stroke('extension', [at(y - widthM / 2, 0), at(y - widthM / 2, under - 0.03)]) +
        dimension(at(y + widthM / 2, under), at(y - widthM / 2, under), size(widthM), 11) +
        stroke('extension', [at(y, bottom), at(shoulder + out * 0.03, bottom)]) +
        dimension(at(shoulder, 0), at(shoulder, bottom), size(depthM), out * 6)
      );
    };
    const within = 'fromM' in feature && stationM >= feature.fromM && stationM <= feature.toM;
    switch (feature.kind) {
      case 'rut':
        return within ? cut(feature.centreYM, feature.widthM, feature.depthM) : '';
      case 'hole':
        return Math.abs(stationM - feature.xM) < feature.lengthM / 2
          ? cut(feature.yM, feature.widthM, feature.depthM)
          : '';
      case 'rock':
        return Math.abs(stationM - feature.xM) < feature.lengthM / 2
          ? dimension(
              at(feature.yM - feature.widthM / 2 - 0.08, 0),
              at(feature.yM - feature.widthM / 2 - 0.08, feature.heightM),
              size(feature.heightM),
              -6,
            )
          : '';
      case 'ditch':
        return Math.abs(stationM - feature.xM) < feature.widthM / 2
          ? dimension(at(0.1, 0), at(0.1, heightM(stretch.features, stationM, 0.1)), size(feature.depthM), -6)
          : '';
      case 'log':
        return Math.abs(stationM - feature.xM) < feature.diameterM / 2
          ? dimension(at(0.1, 0), at(0.1, feature.diameterM), size(feature.diameterM), -6)
          : '';
      default:
        return '';
    }
  });
}

/** Room either side of the main line, and the offset of the line that the vehicle stands on, above everything. */
function corridorSizes({ stretch, offsetM, system }: SectionView, half: number, at: At): string {
  const length = (valueM: number) => shown(valueM, 'length', system);
  const middle = at(0, 0)[0];
  const room = (side: 1 | -1, distanceM: number) => {
    const end = at(side * Math.min(distanceM, half), 0)[0];
    const words = distanceM > half ? `${length(distanceM)} →` : length(distanceM);
    return dimension(
      [middle, 16],
      [end, 16],
      distanceM > half && side > 0 ? `← ${length(distanceM)}` : words,
      -8 * -side,
    );
  };
  const offset =
    offsetM === 0
      ? ''
      : dimension(
          [middle, 30],
          [at(offsetM, 0)[0], 30],
          length(Math.abs(offsetM)),
          12 * (offsetM > 0 ? -1 : 1),
        ) +
        stroke('offset', [
          [at(offsetM, 0)[0], 24],
          [at(offsetM, 0)[0], at(offsetM, 0)[1]],
        ]);
  return room(1, stretch.corridor.leftM) + room(-1, stretch.corridor.rightM) + offset;
}

/** Standing water is level whatever the camber; its depth is measured on the main line. */
function waterLevel({ stretch, stationM, system }: SectionView, half: number, at: At): string {
  return stretch.features
    .map((feature) => {
      if (feature.kind !== 'water' || stationM < feature.fromM || stationM > feature.toM) return '';
      const bed = heightM(stretch.features, stationM, 0);
      const down = at(0, bed + feature.depthM)[1];
      const [left, right] = [at(half, 0)[0], at(-half, 0)[0]];
      const box: Point[] = [[left, down], [right, down], at(-half, bed), at(half, bed)];
      return (
        stroke('water', box, true) +
        stroke('water-level', box.slice(0, 2)) +
        dimension([at(0.12, bed)[0], down], at(0.12, bed), shown(feature.depthM, 'size', system), 6)
      );
    })
    .join('');
}

/** A level through the main line's foot, so that the lean can be read. */
function level({ stretch, system }: SectionView, half: number, at: At): string {
  const [x, y] = at(0, 0);
  const far = half * 0.9 * Math.abs(at(1, 0)[0] - x);
  return (
    stroke('level', [
      [x - far, y],
      [x + far, y],
    ]) +
    text(
      'size',
      [x + far - 2, y - 4],
      `${shown(Math.abs(stretch.plane.camberRad ?? 0), 'angle', system)} camber`,
      'end',
    )
  );
}
