import { heightM } from '../../terrain/feature.ts';
import type { Ground } from '../../terrain/ground.ts';
import { rad } from '../../units.ts';
import type { VehicleValues } from '../../vehicle/specs.ts';
import type { Check, CheckName } from '../assess.ts';
import type { Quantity } from '../../units.ts';
import { breakoverAngleRad, tangentAngleRad } from '../../vehicle/angles.ts';
import type { Stance } from './stance.ts';
import { say } from '../../words/words.ts';

/** What a tape under a vehicle and a rigid stance cannot tell from nothing; assumptions. */
const TOLERANCE = { gapM: 0.03, angleRad: rad(1.5) } as const;

/** Half the width and length of a differential housing that can touch. */
const HOUSING_M = 0.12;

/**
 * Part of half the wheelbase, about its middle, where the handbook's rampover angle is tried. Nearer to a wheel the same
 * belly height stands for a larger angle, so there only its height is.
 */
const MIDDLE_SHARE = 0.2;

interface Found {
  have: number;
  need: number;
  stationM: number;
  cause: string;
}

/** Keeps the least margin of one check while the stations go by. */
class Least {
  private found: Found = { have: Infinity, need: 0, stationM: NaN, cause: '' };

  see(have: number, need: number, stationM: number, cause: string): void {
    if (have - need < this.found.have - this.found.need) this.found = { have, need, stationM, cause };
  }

  check(name: CheckName, quantity: Quantity, tolerance: number): Check {
    return { name, quantity, tolerance, margin: this.found.have - this.found.need, ...this.found };
  }
}

/** Approach, rampover and departure angles, belly and both differential housings against the ground at every station. */
export function underbodyChecks(
  values: VehicleValues,
  ground: Ground,
  offsetM: number,
  stances: readonly Stance[],
): Check[] {
  const R = values.tyreDiameterM / 2;
  const halfBase = values.wheelbaseM / 2;
  const innerM = Math.min(values.frontTrackWidthM, values.rearTrackWidthM) / 2 - values.tyreSectionM;
  const approach = new Least();
  const rampover = new Least();
  const departure = new Least();
  const belly = new Least();
  const front = new Least();
  const rear = new Least();
  const across = [-1, -0.5, 0, 0.5, 1].map((share) => share * innerM);

  for (const stance of stances) {
    const { stationM: x, middleM, bottomM } = stance;
    const pitch = Math.tan(stance.pitchRad);
    const roll = Math.tan(stance.rollRad);
    /** Ground above the plane on which the wheels stand. */
    const riseM = (dx: number, y: number) =>
      heightM(ground.features, x + dx, offsetM + y) - (middleM + pitch * dx + roll * y);

    for (const y of across) {
      const ahead = riseM(halfBase + values.frontOverhangM, y);
      approach.see(
        values.approachRad,
        tangentAngleRad(R, values.frontOverhangM, ahead),
        x,
        say.causes.bounds.noseTouches,
      );
      const behind = riseM(-halfBase - values.rearOverhangM, y);
      departure.see(
        values.departureRad,
        tangentAngleRad(R, values.rearOverhangM, behind),
        x,
        say.causes.bounds.tailTouches,
      );
      for (let dx = -halfBase + R; dx <= halfBase - R + 1e-9; dx += 0.15) {
        const rise = riseM(dx, y);
        belly.see(values.bellyHeightM, rise, x, say.causes.touches.belly);
        if (Math.abs(dx) <= MIDDLE_SHARE * halfBase)
          rampover.see(
            values.rampoverRad,
            breakoverAngleRad(R, halfBase - dx, halfBase + dx, rise),
            x,
            say.causes.bounds.bellyHangs,
          );
      }
    }

    const housing = (least: Least, axle: 'front' | 'rear') => {
      const isFront = axle === 'front';
      const dx = isFront ? halfBase : -halfBase;
      const y = isFront ? values.frontDifferentialYM : values.rearDifferentialYM;
      const height = isFront ? values.frontDifferentialHeightM : values.rearDifferentialHeightM;
      const beam = (isFront ? values.frontAxle : values.rearAxle) === 'beam';
      const left = isFront ? bottomM.frontLeft : bottomM.rearLeft;
      const right = isFront ? bottomM.frontRight : bottomM.rearRight;
      const width = isFront ? values.frontTrackWidthM : values.rearTrackWidthM;
      const own = beam ? (left + right) / 2 + ((left - right) * y) / width : middleM + pitch * dx + roll * y;
      for (const ex of [-HOUSING_M, 0, HOUSING_M])
        for (const ey of [-HOUSING_M, 0, HOUSING_M]) {
          const z = heightM(ground.features, x + dx + ex, offsetM + y + ey);
          least.see(height, z - own, x, say.causes.touches[`${axle} differential`]);
        }
    };
    housing(front, 'front');
    housing(rear, 'rear');
  }

  return [
    approach.check('approach', 'angle', TOLERANCE.angleRad),
    rampover.check('rampover', 'angle', TOLERANCE.angleRad),
    departure.check('departure', 'angle', TOLERANCE.angleRad),
    belly.check('belly', 'size', TOLERANCE.gapM),
    front.check('front differential', 'size', TOLERANCE.gapM),
    rear.check('rear differential', 'size', TOLERANCE.gapM),
  ];
}
