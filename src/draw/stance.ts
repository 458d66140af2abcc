import type { Feature } from '../terrain/feature.ts';
import { heightM } from '../terrain/feature.ts';
import type { VehicleValues } from '../vehicle/specs.ts';

/**
 * One axle set down on the ground as on a drawing board: both tyres touch, nothing gives, the body stands square to the
 * axle. It shows what was entered; what a vehicle does there is the traverse's business.
 */
export interface Stance {
  readonly axle: 'front' | 'rear';
  readonly trackWidthM: number;
  readonly differentialHeightM: number;
  readonly differentialYM: number;
  /** Ground under the middle between the tyres, and the lean of the axle, left side high positive, both against the plane. */
  readonly heightM: number;
  readonly leanRad: number;
  /** Depth by which the housing is in the ground; 0 where it clears. */
  readonly housingInGroundM: number;
}

/** Ground is sampled this closely across a tyre and a housing. */
const STEP_M = 0.01;

/** Sets down the axle whose differential hangs lower; `offsetM` is the vehicle's middle, left positive. */
export function stanceOf(
  features: readonly Feature[],
  stationM: number,
  offsetM: number,
  v: VehicleValues,
): Stance {
  const axle = v.rearDifferentialHeightM <= v.frontDifferentialHeightM ? 'rear' : 'front';
  const trackWidthM = axle === 'rear' ? v.rearTrackWidthM : v.frontTrackWidthM;
  const differentialHeightM = axle === 'rear' ? v.rearDifferentialHeightM : v.frontDifferentialHeightM;
  const differentialYM = axle === 'rear' ? v.rearDifferentialYM : v.frontDifferentialYM;
  const highestM = (fromY: number, toY: number) => {
    let highest = -Infinity;
    for (let y = fromY; y <= toY + 1e-9; y += STEP_M)
      highest = Math.max(highest, heightM(features, stationM, y));
    return highest;
  };
  const underTyre = (y: number) => highestM(y - v.tyreSectionM / 2, y + v.tyreSectionM / 2);
  const left = underTyre(offsetM + trackWidthM / 2);
  const right = underTyre(offsetM - trackWidthM / 2);
  const leanRad = Math.atan((left - right) / trackWidthM);
  const middle = (left + right) / 2;

  const radius = housingRadiusM(v, differentialHeightM);
  const housingY = offsetM + differentialYM;
  const bottom = middle + (differentialYM * (left - right)) / trackWidthM + differentialHeightM;
  let inGround = 0;
  for (let dy = -radius; dy <= radius; dy += STEP_M) {
    const under = bottom + radius - Math.sqrt(radius * radius - dy * dy);
    inGround = Math.max(inGround, heightM(features, stationM, housingY + dy) - under);
  }
  return {
    axle,
    trackWidthM,
    differentialHeightM,
    differentialYM,
    heightM: middle,
    leanRad,
    housingInGroundM: inGround,
  };
}

/** A housing hangs below the wheel centre by this much, and is drawn as round. */
export function housingRadiusM(v: VehicleValues, differentialHeightM: number): number {
  return Math.max(0.05, v.tyreDiameterM / 2 - differentialHeightM);
}

/** The place along the line where a cut across shows most: through the first shape, or at the pin. */
export function tellingStationM(features: readonly Feature[]): number {
  const first = features.find(({ kind }) => kind !== 'bank' && kind !== 'softPatch');
  if (first === undefined) return 0;
  return 'xM' in first ? first.xM : 'fromM' in first ? (first.fromM + first.toM) / 2 : 0;
}
