import { BODY_TO_M, bodyAcross } from './body.ts';
import type { Stretch } from '../terrain/obstacle.ts';
import type { System } from '../units.ts';
import type { VehicleValues } from '../vehicle/specs.ts';
import type { At } from './cut.ts';
import { cutSvg, frameOf, halfWidthM, reachOf } from './cut.ts';
import type { Point } from './ink.ts';
import { stroke } from './ink.ts';
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

/**
 * A true-to-scale cut across the obstacle as SVG text, seen along the recorded direction: left is left, and the ground
 * leans by its camber. Sizes that were entered are dimensioned; the vehicle is set down stiff (see `Stance`).
 */
export function sectionSvg(view: SectionView): string {
  const { stretch, stationM, offsetM, vehicle } = view;
  const stance = vehicle && stanceOf(stretch.features, stationM, offsetM, vehicle);
  const halfM = halfWidthM(stretch.corridor, offsetM, vehicle?.widthM ?? 0);
  const { highM, lowM } = reachOf(view, halfM);
  const topM = Math.max((stance?.heightM ?? 0) + BODY_TO_M, Math.min(1.4, highM + 0.15));
  const frame = frameOf(view, halfM, topM, lowM);
  const standing = vehicle && stance ? vehicleAt(vehicle, stance, offsetM, topM, frame.at) : '';
  return cutSvg(view, frame, 'section', standing);
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
  const bodyZ = Math.min(BODY_TO_M, topZ - stance.heightM);
  const inner = Math.max(0.2, track - section - 0.08);
  return (
    `<g class="vehicle">${bodyAcross(v, inner, bodyZ, on)}` +
    tube(-track, track) +
    tyre(track) +
    tyre(-track) +
    stroke(stance.housingInGroundM > 0 ? 'housing touches' : 'housing', housing, true) +
    '</g>'
  );
}
