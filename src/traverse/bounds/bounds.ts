import { G_MPS2 } from '../gravity.ts';
import { rad } from '../../units.ts';
import type { Aids } from '../../vehicle/aids.ts';
import type { VehicleValues } from '../../vehicle/specs.ts';
import { loadedMassHeightM, totalMassKg } from '../../vehicle/vehicle.ts';
import type { Ground } from '../../terrain/ground.ts';
import type { Assess, Assessment, Check, CheckName } from '../assess.ts';
import { worstOf } from '../assess.ts';
import type { Quantity } from '../../units.ts';
import { SPEED_CAP_MPS } from '../limits.ts';
import { fitChecks } from './fit.ts';
import { wheelLoads } from './wheelLoads.ts';
import type { Stance } from './stance.ts';
import { stancesAlong } from './stance.ts';
import { endTipRad, sideGrip, sideTipRad } from './stability.ts';
import { tractiveShare } from './tractive.ts';
import { underbodyChecks } from './underbody.ts';
import { say } from '../../words/words.ts';

/** Margins that tape, inclinometer and these rigid forms cannot tell from nothing. Assumptions, stated with the result. */
const TOLERANCE = { tipRad: rad(5), hold: 0.05, brake: 0.05, traction: 0.03 } as const;

/** The worst of one check over the stations. */
function worst(
  name: CheckName,
  quantity: Quantity,
  tolerance: number,
  stances: readonly Stance[],
  at: (stance: Stance) => { have: number; need: number; cause: string },
): Check {
  let found: Check | null = null;
  for (const stance of stances) {
    const { have, need, cause } = at(stance);
    if (found !== null && have - need >= found.margin) continue;
    found = { name, quantity, have, need, margin: have - need, tolerance, stationM: stance.stationM, cause };
  }
  return found!;
}

/**
 * Quick bounds: closed forms for rigid wheels and a body on the plane through them, one assessment for each set of aids.
 * They neglect the suspension's lean, tyre squash and momentum through holes; `../README.md` says what the traverse adds.
 */
export const assessBounds: Assess = (values, grounds, offsetM, aidSets) => {
  const byGround = grounds.map((ground) => boundsOn(values, ground, offsetM, aidSets));
  return aidSets.map((_, set) => worstOf(byGround.map((assessments) => assessments[set])));
};

function boundsOn(
  values: VehicleValues,
  ground: Ground,
  offsetM: number,
  aidSets: readonly Aids[],
): Assessment[] {
  if (ground.features.some((feature) => feature.kind === 'softPatch'))
    return aidSets.map(() => ({ known: false, cause: say.causes.bounds.soft }));
  const stances = stancesAlong(ground, values, offsetM);
  const shared = [
    ...fitChecks(values, ground, offsetM),
    ...underbodyChecks(values, ground, offsetM, stances),
    ...holdChecks(values, ground, stances),
  ];
  return aidSets.map((aids) => {
    const { check, lackJ } = tractionCheck(values, ground, aids, stances);
    const massKg = totalMassKg(values);
    const speedMps = Math.sqrt((2 * lackJ) / massKg);
    return {
      known: true,
      checks: [...shared, check],
      entrySpeedMps: speedMps <= SPEED_CAP_MPS ? speedMps : Infinity,
      pullN: Math.max(0, -check.margin * massKg * G_MPS2),
    };
  });
}

/** Tipping either way, holding sideways, holding on the way down. */
function holdChecks(values: VehicleValues, ground: Ground, stances: readonly Stance[]): Check[] {
  const h = loadedMassHeightM(values);
  const trackWidthM = Math.min(values.frontTrackWidthM, values.rearTrackWidthM);
  const behindFrontM = values.wheelbaseM * (1 - values.frontShare);
  const { slopeRad, camberRad, peakAdhesion } = ground;

  const sideTip = worst('side tip', 'angle', TOLERANCE.tipRad, stances, (stance) => {
    const lean = camberRad + stance.rollRad;
    const cause = say.causes.bounds.leans[lean > 0 ? 'right' : 'left'];
    return { have: sideTipRad(trackWidthM, h), need: Math.abs(lean), cause };
  });
  const endTip = worst('end tip', 'angle', TOLERANCE.tipRad, stances, (stance) => {
    const steep = slopeRad + stance.pitchRad;
    const toLower = steep > 0 ? values.wheelbaseM - behindFrontM : behindFrontM;
    return {
      have: endTipRad(toLower, h),
      need: Math.abs(steep),
      cause: steep > 0 ? say.causes.bounds.noseUp : say.causes.bounds.noseDown,
    };
  });
  const sideHold = worst('side hold', 'share', TOLERANCE.hold, stances, ({ crossTan }) => {
    const front = Math.tan(camberRad) + (crossTan.frontLeft + crossTan.frontRight) / 2;
    const rear = Math.tan(camberRad) + (crossTan.rearLeft + crossTan.rearRight) / 2;
    const lateral = Math.abs(front) > Math.abs(rear) ? front : rear;
    const have = sideGrip(peakAdhesion, Math.sin(slopeRad));
    const end = lateral === front ? 'front' : 'rear';
    return {
      have,
      need: Math.abs(lateral),
      cause: say.causes.bounds.slides[end][lateral > 0 ? 'right' : 'left'],
    };
  });
  const braking = worst('braking', 'share', TOLERANCE.brake, stances, (stance) => ({
    have: peakAdhesion * Math.cos(slopeRad),
    need: Math.max(0, -Math.sin(slopeRad + stance.pitchRad)),
    cause: say.causes.bounds.tooSteepDown,
  }));
  return [sideTip, endTip, sideHold, braking];
}

/** Push that the ground and the driveline allow against what slope and rolling ask; and the energy lacking on the way. */
function tractionCheck(
  values: VehicleValues,
  ground: Ground,
  aids: Aids,
  stances: readonly Stance[],
): { readonly check: Check; readonly lackJ: number } {
  const weightN = totalMassKg(values) * G_MPS2;
  const need = Math.sin(ground.slopeRad) + ground.rollingResistance * Math.cos(ground.slopeRad);
  const stepM = stances[1].stationM - stances[0].stationM;
  let lackJ = 0;
  let worstLackJ = 0;
  const check = worst('traction', 'share', TOLERANCE.traction, stances, (stance) => {
    const found = tractiveShare(values, aids, ground, wheelLoads(values, aids, ground, stance), stance);
    lackJ = Math.max(0, lackJ + (need - found.share) * weightN * stepM);
    worstLackJ = Math.max(worstLackJ, lackJ);
    return { have: found.share, need, cause: found.cause };
  });
  return { check, lackJ: worstLackJ };
}
