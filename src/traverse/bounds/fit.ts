import { coverOf } from '../../terrain/cover.ts';
import type { Ground } from '../../terrain/ground.ts';
import type { VehicleValues } from '../../vehicle/specs.ts';
import { totalMassKg } from '../../vehicle/vehicle.ts';
import type { Check } from '../assess.ts';
import { say } from '../../words/words.ts';

/** A driver's usual error sideways, and what a pole and a stick tell of water. Common practice, no source. */
const TOLERANCE = { sidewaysM: 0.1, depthM: 0.05, depthFlowM2ps: 0.05 } as const;

/** Kept between a vehicle's side and the edge of a drop. Common practice, no source. */
const EDGE_M = 0.3;

/**
 * Depth of water flowing at 1 m/s that moved vehicles in full-scale tests (UNSW Water Research Laboratory; published by
 * VICSES, "15 to float"): mass, depth.
 */
const MOVED: readonly (readonly [massKg: number, depthM: number])[] = [
  [1050, 0.15],
  [1500, 0.3],
  [2500, 0.45],
];

/** Part of the depth that moved a vehicle which is let stand as a limit; an assumption on the safe side. */
const SAFE_SHARE = 2 / 3;

/** Greatest depth × flow, m²/s, before water carries a vehicle of this mass: linear between the tests, level beyond. */
export function depthFlowLimit(massKg: number): number {
  const first = MOVED[0];
  const last = MOVED[MOVED.length - 1];
  if (massKg <= first[0]) return first[1] * SAFE_SHARE;
  for (let i = 1; i < MOVED.length; i++) {
    const [m1, d1] = MOVED[i];
    const [m0, d0] = MOVED[i - 1];
    if (massKg <= m1) return (d0 + ((d1 - d0) * (massKg - m0)) / (m1 - m0)) * SAFE_SHARE;
  }
  return last[1] * SAFE_SHARE;
}

/** Does it fit between the sides, under the branches, through the water. */
export function fitChecks(values: VehicleValues, ground: Ground, offsetM: number): Check[] {
  const { leftM, leftBound, rightM, rightBound, headroomM } = ground.corridor;
  const half = values.widthM / 2;
  const edge = (bound: string) => (bound === 'drop' ? half + EDGE_M : half);
  const left = { side: 'left' as const, have: leftM - offsetM, need: edge(leftBound) };
  const right = { side: 'right' as const, have: rightM + offsetM, need: edge(rightBound) };
  const tight = left.have - left.need < right.have - right.need ? left : right;
  const checks: Check[] = [
    {
      name: 'width',
      quantity: 'size',
      have: tight.have,
      need: tight.need,
      margin: tight.have - tight.need,
      tolerance: TOLERANCE.sidewaysM,
      stationM: NaN,
      cause: say.causes.noRoom[tight.side],
    },
    {
      name: 'headroom',
      quantity: 'size',
      have: headroomM,
      need: values.heightM,
      margin: headroomM - values.heightM,
      tolerance: TOLERANCE.depthM,
      stationM: NaN,
      cause: say.causes.tooTall,
    },
  ];
  for (const water of coverOf(ground).waters) {
    const stationM = (water.fromM + water.toM) / 2;
    checks.push({
      name: 'water depth',
      quantity: 'size',
      have: values.wadingDepthM,
      need: water.depthM,
      margin: values.wadingDepthM - water.depthM,
      tolerance: TOLERANCE.depthM,
      stationM,
      cause: say.causes.overWading,
    });
    const floorIn = water.depthM > values.floorHeightM;
    const have = floorIn ? 0 : depthFlowLimit(totalMassKg(values));
    const need = water.depthM * water.flowMps;
    if (need > 0)
      checks.push({
        name: 'depth × flow',
        quantity: 'depthFlow',
        have,
        need,
        margin: have - need,
        tolerance: TOLERANCE.depthFlowM2ps,
        stationM,
        cause: floorIn ? say.causes.flowCarries : say.causes.flowPushes,
      });
  }
  return checks;
}
