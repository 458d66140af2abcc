import { G_MPS2 } from '../gravity.ts';
import type { Ground } from '../../terrain/ground.ts';
import type { Aids } from '../../vehicle/aids.ts';
import type { VehicleValues } from '../../vehicle/specs.ts';
import { totalMassKg } from '../../vehicle/vehicle.ts';
import type { Coupling } from './differential.ts';
import { axleCoupling, centreCoupling, effort } from './differential.ts';
import type { Corners } from './loads.ts';
import type { Stance } from './stance.ts';
import type { WHEELS } from '../equilibrium.ts';
import { say } from '../../words/words.ts';

/**
 * Greatest drive force T that friction lets a wheel of load V put into ground that climbs at α, and what the climb
 * takes. Along the plane X = T / cos α − V tan α, 0 ≤ T ≤ V μ / (cos α + μ sin α); on the flat T ≤ μ V.
 */
function wheelBoundN(V: number, tan: number, mu: number): number {
  const cos = 1 / Math.sqrt(1 + tan * tan);
  const below = cos + mu * tan * cos;
  return below <= 0 ? Infinity : (V * mu) / below;
}

interface Axle {
  readonly boundN: number;
  /** Greatest sum of T / cos α over the two wheels. */
  readonly alongN: number;
  readonly weakWheel: (typeof WHEELS)[number];
}

function axleOf(
  name: 'front' | 'rear',
  left: [number, number],
  right: [number, number],
  mu: number,
  coupling: Coupling,
): Axle {
  const a = wheelBoundN(left[0], left[1], mu);
  const b = wheelBoundN(right[0], right[1], mu);
  const boundN = effort(a, b, coupling);
  const secant = (Math.sqrt(1 + left[1] ** 2) + Math.sqrt(1 + right[1] ** 2)) / 2;
  const side = a < b ? 'left' : 'right';
  return { boundN, alongN: boundN * secant, weakWheel: `${name} ${side}` };
}

/** Greatest push along the plane over weight, with what the wheels' own climb takes off, and what limits it. */
export function tractiveShare(
  values: VehicleValues,
  aids: Aids,
  ground: Ground,
  loads: Corners,
  stance: Stance,
): { readonly share: number; readonly cause: string } {
  const mu = ground.peakAdhesion;
  const t = stance.climbTan;
  const weightN = totalMassKg(values) * G_MPS2;
  const front = axleOf(
    'front',
    [loads.frontLeft, t.frontLeft],
    [loads.frontRight, t.frontRight],
    mu,
    axleCoupling(values, aids, 'front'),
  );
  const rear = axleOf(
    'rear',
    [loads.rearLeft, t.rearLeft],
    [loads.rearRight, t.rearRight],
    mu,
    axleCoupling(values, aids, 'rear'),
  );
  const centre = centreCoupling(values, aids);
  const driven =
    centre === null
      ? values.drive === 'front'
        ? front.alongN
        : rear.alongN
      : effort(front.alongN, rear.alongN, centre);

  const ratio = aids.lowRange ? values.crawlRatio : values.crawlRatio / values.lowRangeRatio;
  const engineN = (values.engineTorqueNm * ratio) / (values.tyreDiameterM / 2);
  const climbN =
    loads.frontLeft * t.frontLeft +
    loads.frontRight * t.frontRight +
    loads.rearLeft * t.rearLeft +
    loads.rearRight * t.rearRight;
  const share = (Math.min(driven, engineN) - climbN) / weightN;

  const lightest = Math.min(loads.frontLeft, loads.frontRight, loads.rearLeft, loads.rearRight);
  if (engineN < driven) return { share, cause: say.causes.engine };
  const weak = front.boundN < rear.boundN ? front : rear;
  if (lightest < 0.25 * (weightN / 4))
    return { share, cause: say.causes.bounds.liftsAndSpins(say.wheel[weak.weakWheel]) };
  return { share, cause: say.causes.grip };
}
